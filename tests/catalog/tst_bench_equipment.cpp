#include "small_catalogue.h"

#include <catalog/bench_equipment.h>
#include <QtTest>

using namespace ohmkin;
using namespace ohmkin::catalog;

class BenchEquipmentTest : public QObject {
  Q_OBJECT
 private slots:
  void aMeterComesBackAsItWasKept();
  void aMeterKeptAgainReplacesItself();
  void thermometersAndBathsComeBack();
  void whatBreaksARuleIsRefusedWhole();
  void whatIsInUseStays();
};

namespace {

MeterRecord meterWithTwoRanges() {
  MeterRecord m;
  m.name = MeterKey{"grey one"};
  m.leads = ohms(0.2);
  m.leadsStandardUncertainty = ohms(0.05);
  m.note = "compared in spring";
  m.ranges.push_back({ohms(2000), ohms(1), 0.008, 3, 0.4});
  m.ranges.push_back({ohms(200), ohms(0.1), 0.008, 5, std::nullopt, volts(1.5), ohms(20)});
  return m;
}

}  // namespace

void BenchEquipmentTest::aMeterComesBackAsItWasKept() {
  const test::Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  QVERIFY(keepMeter(catalogue, meterWithTwoRanges(), "Ann"));
  const auto found = meter(catalogue, MeterKey{"grey one"});
  QVERIFY(found.has_value());
  QCOMPARE(inOhms(*found->leads), 0.2);
  QCOMPARE(inOhms(*found->leadsStandardUncertainty), 0.05);
  QCOMPARE(found->ranges.size(), std::size_t{2});
  QCOMPARE(inOhms(found->ranges[0].fullScale), 200.0);
  QCOMPARE(inVolts(*found->ranges[0].cell), 1.5);
  QVERIFY(!found->ranges[0].milliamperes);
  QCOMPARE(*found->ranges[1].milliamperes, 0.4);
  QCOMPARE(found->ranges[1].counts, 3.0);
}

void BenchEquipmentTest::aMeterKeptAgainReplacesItself() {
  const test::Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  QVERIFY(keepMeter(catalogue, meterWithTwoRanges(), "Ann"));
  MeterRecord changed = meterWithTwoRanges();
  changed.leads = changed.leadsStandardUncertainty = std::nullopt;
  changed.ranges.pop_back();
  QVERIFY(keepMeter(catalogue, changed, "Ann"));
  QCOMPARE(meters(catalogue).size(), std::size_t{1});
  QCOMPARE(meters(catalogue)[0].ranges.size(), std::size_t{1});
  QVERIFY(!meters(catalogue)[0].leads);
}

void BenchEquipmentTest::thermometersAndBathsComeBack() {
  const test::Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  QVERIFY(keepThermometer(catalogue, {ThermometerKey{"probe"}, kelvins(0.5), AccuracyStated::standardUncertainty, ""},
                          "Ann"));
  QVERIFY(thermometer(catalogue, ThermometerKey{"probe"})->stated == AccuracyStated::standardUncertainty);
  BathRecord kettle;
  kettle.name = BathKey{"kettle"};
  kettle.kind = BathKind::boilingWater;
  kettle.altitude = millimetres(1.6e6);
  kettle.altitudeU = millimetres(3e4);
  kettle.barometerU = kilopascals(0.1);
  kettle.reduced = BarometerReduced::toSeaLevel;
  QVERIFY(keepBath(catalogue, kettle, "Ann"));
  BathRecord oil;
  oil.name = BathKey{"oil pot"};
  oil.kind = BathKind::thermometer;
  oil.thermometer = ThermometerKey{"probe"};
  QVERIFY(keepBath(catalogue, oil, "Ann"));
  const auto found = baths(catalogue);
  QCOMPARE(found.size(), std::size_t{2});
  QCOMPARE(inMillimetres(*found[0].altitude), 1.6e6);
  QCOMPARE(inKilopascals(*found[0].barometerU), 0.1);
  QVERIFY(found[0].reduced == BarometerReduced::toSeaLevel && !found[0].thermometer);
  QVERIFY(found[1].thermometer == ThermometerKey{"probe"} && !found[1].altitude);
}

void BenchEquipmentTest::whatBreaksARuleIsRefusedWhole() {
  const test::Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  QVERIFY(keepMeter(catalogue, meterWithTwoRanges(), "Ann"));
  MeterRecord wrong = meterWithTwoRanges();
  wrong.note = "changed";
  wrong.ranges[1].resolution = ohms(500);
  QCOMPARE(keepMeter(catalogue, wrong, "Ann").error().code, std::string("row-refused"));
  QCOMPARE(meters(catalogue)[0].note, std::string("compared in spring"));
  QCOMPARE(meters(catalogue)[0].ranges.size(), std::size_t{2});
  BathRecord bath;
  bath.name = BathKey{"nothing in it"};
  bath.kind = BathKind::thermometer;
  QCOMPARE(keepBath(catalogue, bath, "Ann").error().code, std::string("row-refused"));
}

void BenchEquipmentTest::whatIsInUseStays() {
  const test::Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  QVERIFY(keepThermometer(catalogue, {ThermometerKey{"probe"}, kelvins(0.5), AccuracyStated::limits, ""}, "Ann"));
  BathRecord oil;
  oil.name = BathKey{"oil pot"};
  oil.kind = BathKind::thermometer;
  oil.thermometer = ThermometerKey{"probe"};
  QVERIFY(keepBath(catalogue, oil, "Ann"));
  QCOMPARE(removeThermometer(catalogue, ThermometerKey{"probe"}, "Ann").error().code, std::string("row-refused"));
  QVERIFY(removeBath(catalogue, oil.name, "Ann"));
  QVERIFY(removeThermometer(catalogue, ThermometerKey{"probe"}, "Ann"));
  QCOMPARE(removeMeter(catalogue, MeterKey{"none"}, "Ann").error().code, std::string("equipment-unknown"));
}

QTEST_APPLESS_MAIN(BenchEquipmentTest)
#include "tst_bench_equipment.moc"
