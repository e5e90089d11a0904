#include "small_catalogue.h"

#include <catalog/engines.h>
#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/joints.h>
#include <catalog/layouts.h>
#include <catalog/senders.h>
#include <catalog/shop.h>
#include <catalog/vehicles.h>
#include <QtTest>

using namespace ohmkin;
using namespace ohmkin::catalog;

/// What comes out is compared with the rows written by hand in small_catalogue.h.
class QueriesTest : public QObject {
  Q_OBJECT
 private slots:
  void initTestCase();
  void aLineIsFoundByAnyOfItsNames_data();
  void aLineIsFoundByAnyOfItsNames();
  void aLineComesWithAllThatIsKnownOfIt();
  void clustersOfAModelYearAreHalfOpen_data();
  void clustersOfAModelYearAreHalfOpen();
  void aClusterCarriesItsBuildDatesAndWire();
  void aGaugeComesWhole();
  void aFamilyComesWithItsCurveAndTwoNumbers();
  void aBenchCurveBelongsToALot();
  void originalEnginesOfAYear();
  void aCastingIsFoundWhateverTheSigns_data();
  void aCastingIsFoundWhateverTheSigns();
  void portsOfACasting();
  void sendersByThreadFamilyAndNumber();
  void originalSendersOfAYear();
  void theChainOfReplacementsEndsWhereItBitesItsTail();
  void adaptersAndPigtailsAreAskedForFromTheEngineSide();
  void dateLayoutsComeWithTheirFieldsInOrder();
  void stockFullestBinFirst();
  void aValueTheRulesDoNotAllowIsDamage();

 private:
  std::unique_ptr<test::Folder> folder_;
  std::optional<Catalogue> catalogue_;
};

void QueriesTest::initTestCase() {
  folder_ = std::make_unique<test::Folder>();
  test::smallCatalogue(folder_->path("a.ohmkin"));
  catalogue_.emplace(Catalogue::open(folder_->path("a.ohmkin"), Access::readOnly));
}

void QueriesTest::aLineIsFoundByAnyOfItsNames_data() {
  QTest::addColumn<QString>("name");
  QTest::addColumn<QString>("found");
  QTest::newRow("shared name") << "ridge"
                               << "l1 l2";
  QTest::newRow("make and name") << " VELL Ridge "
                                 << "l2";
  QTest::newRow("id") << "L1"
                      << "l1";
  QTest::newRow("first other name") << "ridge half-ton"
                                    << "l1";
  QTest::newRow("other name") << "r10"
                              << "l1";
  QTest::newRow("other name after blanks") << "old ridge"
                                           << "l1";
  QTest::newRow("make and other name") << "tarn r10"
                                       << "l1";
  QTest::newRow("other make's") << "vell r10"
                                << "";
  QTest::newRow("part of a name") << "half-ton"
                                  << "";
  QTest::newRow("nothing") << ""
                           << "";
  QTest::newRow("two other names at once") << "ridge half-ton;r10"
                                           << "";
  QTest::newRow("quotes") << "' OR 1=1 --"
                          << "";
}

void QueriesTest::aLineIsFoundByAnyOfItsNames() {
  QFETCH(QString, name);
  QFETCH(QString, found);
  QStringList ids;
  for (const auto& line : linesNamed(*catalogue_, name.toStdString())) ids << QString::fromStdString(line.id.text);
  QCOMPARE(ids.join(' '), found);
}

void QueriesTest::aLineComesWithAllThatIsKnownOfIt() {
  const auto l = line(*catalogue_, LineKey{"l2"});
  QVERIFY(l);
  QCOMPARE(l->makeName, std::string("Vell"));
  QCOMPARE(l->years.from.value, 1955);
  QCOMPARE(l->years.until.value, 1960);
  QCOMPARE(inVolts(l->volts), 6.0);
  QVERIFY(l->groundedPole == GroundedPole::positive);
  QVERIFY(l->source.kind == SourceKind::demo);
  QCOMPARE(cite(l->source), std::string("demo: made up"));
  QVERIFY(!line(*catalogue_, LineKey{"nope"}));
  QVERIFY((lines(*catalogue_)[0].also == std::vector<std::string>{"Ridge Half-Ton", "R10", "Old Ridge"}));
  QCOMPARE(lineNames(*catalogue_).size(), std::size_t{12});
}

void QueriesTest::clustersOfAModelYearAreHalfOpen_data() {
  QTest::addColumn<int>("year");
  QTest::addColumn<QString>("found");
  QTest::newRow("before") << 1959 << "";
  QTest::newRow("first year") << 1960 << "c1";
  QTest::newRow("mid-year change") << 1967 << "c3 c2 c1";
  QTest::newRow("until is out") << 1968 << "c3";
  QTest::newRow("after") << 1971 << "";
}

void QueriesTest::clustersOfAModelYearAreHalfOpen() {
  QFETCH(int, year);
  QFETCH(QString, found);
  QStringList ids;
  for (const auto& cluster : clusters(*catalogue_, LineKey{"l1"}, ModelYear{year}))
    ids << QString::fromStdString(cluster.id.text);
  ids.sort();
  QStringList expected = found.split(' ', Qt::SkipEmptyParts);
  expected.sort();
  QCOMPARE(ids, expected);
}

void QueriesTest::aClusterCarriesItsBuildDatesAndWire() {
  const auto all = clusters(*catalogue_, LineKey{"l1"}, ModelYear{1967});
  QCOMPARE(all[0].id.text, std::string("c2"));  // by option, then first build date, open ones first
  QVERIFY(!all[0].built.from);
  QVERIFY(all[0].built.until == date(1967, 2, 1));
  QVERIFY(all[1].built.holds(date(1967, 2, 1)));
  QVERIFY(all[0].serials.holds(41199) && !all[0].serials.holds(41200));
  QVERIFY(all[1].serials.holds(41200) && all[1].serials.told());
  QVERIFY(!all[1].built.holds(date(1967, 1, 31)));
  QCOMPARE(all[0].gauge->text, std::string("g1"));
  QCOMPARE(*all[0].leadAwg, 18);
  QCOMPARE(inMillimetres(*all[0].leadLength), 2400.0);
  QVERIFY(!all[2].gauge);
  QVERIFY(!all[2].terminal);
  QCOMPARE(clusterOptions(*catalogue_).size(), std::size_t{2});
}

void QueriesTest::aGaugeComesWhole() {
  const auto g = gauge(*catalogue_, GaugeKey{"g1"});
  QVERIFY(g);
  QVERIFY(g->movement == MovementKind::crossedCoil);
  QCOMPARE(g->sweep->degrees, -100.0);
  QCOMPARE(inOhms(*g->half), 120.0);
  QVERIFY(!g->groundCoil);
  QVERIFY(!g->tolerance);
  QCOMPARE(g->lowStop.degrees, -55.0);
  QCOMPARE(g->marks.size(), std::size_t{2});
  QVERIFY(g->marks[0].kind == DialMarkKind::cold);
  QCOMPARE(inCelsius(*g->marks[1].at), 120.0);
  QCOMPARE(g->points.size(), std::size_t{1});
  QVERIFY(g->magnet.has_value());
  QCOMPARE(g->magnet->strength, 0.02);
  QCOMPARE(g->magnet->pull.degrees, -60.0);
  QCOMPARE(inOhms(g->magnet->weakening), 90.0);
  QCOMPARE(gaugesNamed(*catalogue_, "gauge ONE").size(), std::size_t{1});
  QCOMPARE(gaugesOfFamily(*catalogue_, FamilyKey{"fa"}).size(), std::size_t{1});
  QCOMPARE(gauges(*catalogue_).size(), std::size_t{1});
}

void QueriesTest::aFamilyComesWithItsCurveAndTwoNumbers() {
  const auto f = family(*catalogue_, FamilyKey{"fa"});
  QVERIFY(f && f->coldHot);
  QVERIFY(f->falling);
  QCOMPARE(*f->tolerance, 0.08);
  QCOMPARE(inOhms(f->coldHot->cold), 700.0);
  QCOMPARE(inCelsius(f->coldHot->hotAt.high), 120.0);
  QCOMPARE(cite(f->source), std::string("common practice, no source"));
  QCOMPARE(f->curves.size(), std::size_t{1});
  QVERIFY(f->curves[0].model == CurveModel::table);
  QCOMPARE(f->curves[0].samples.size(), std::size_t{2});
  QCOMPARE(inOhms(f->curves[0].samples[0].ohms), 700.0);
  QVERIFY(f->curves[0].samples[1].direction == RunDirection::cooling);
  const auto rising = familiesNamed(*catalogue_, "FAMILY B");
  QCOMPARE(rising.size(), std::size_t{1});
  QVERIFY(!rising[0].falling && !rising[0].coldHot && !rising[0].tolerance && rising[0].curves.empty());
  QCOMPARE(families(*catalogue_).size(), std::size_t{2});
}

void QueriesTest::aBenchCurveBelongsToALot() {
  const auto curves = benchCurves(*catalogue_, SenderKey{"SN-102"});
  QCOMPARE(curves.size(), std::size_t{1});
  QCOMPARE(curves[0].lot, std::string("lot 7"));
  QCOMPARE(curves[0].coefficients, std::string("0.0012 2.4e-4 1E-7"));
  QCOMPARE(curves[0].covariance.size(), std::size_t{9});
  QCOMPARE(benchCurves(*catalogue_, SenderKey{"SN-102"}, "lot 7").size(), std::size_t{1});
  QCOMPARE(benchCurves(*catalogue_, SenderKey{"SN-102"}, "lot 8").size(), std::size_t{0});
}

void QueriesTest::originalEnginesOfAYear() {
  QCOMPARE(originalEngines(*catalogue_, LineKey{"l1"}, ModelYear{1966}).size(), std::size_t{0});
  const auto engines = originalEngines(*catalogue_, LineKey{"l1"}, ModelYear{1965});
  QCOMPARE(engines.size(), std::size_t{1});
  QCOMPARE(inCelsius(engines[0].engine.thermostat), 82.0);
  QCOMPARE(inKilopascals(engines[0].engine.cap), 90.0);
  QVERIFY(engines[0].source.kind == SourceKind::commonPractice);
  QVERIFY(engines[0].engine.source.kind == SourceKind::demo);
  QCOMPARE(engineFamiliesNamed(*catalogue_, "Tarn INLINE six").size(), std::size_t{1});
  QVERIFY(engineFamily(*catalogue_, EngineKey{"e1"}));
  QCOMPARE(engineFamilies(*catalogue_).size(), std::size_t{1});
}

void QueriesTest::aCastingIsFoundWhateverTheSigns_data() {
  QTest::addColumn<QString>("number");
  QTest::addColumn<int>("count");
  QTest::newRow("as written") << "30-418 A" << 1;
  QTest::newRow("plain") << "30418a" << 1;
  QTest::newRow("dots and strokes") << "30.4/18-A" << 1;
  QTest::newRow("a digit short") << "3041A" << 0;
  QTest::newRow("nothing") << "" << 0;
}

void QueriesTest::aCastingIsFoundWhateverTheSigns() {
  QFETCH(QString, number);
  QFETCH(int, count);
  const auto found = castingsNumbered(*catalogue_, number.toStdString());
  QCOMPARE(static_cast<int>(found.size()), count);
  if (count == 0) return;
  QCOMPARE(found[0].layout->text, std::string("dl"));
  QVERIFY(found[0].cast.until == date(1971, 7, 1));
  QVERIFY(found[0].role == CastingRole::head && found[0].side == CastingSide::only);
}

void QueriesTest::portsOfACasting() {
  const auto all = ports(*catalogue_, CastingKey{"30-418 A"});
  QCOMPARE(all.size(), std::size_t{2});
  QCOMPARE(all[0].location, std::string("back of the head"));
  QVERIFY(all[0].usedBy == PortUse::plug && !all[0].offset);
  QCOMPARE(inKelvin(*all[1].offset), -2.5);
  QCOMPARE(inMillimetres(*all[1].longestReach), 14.0);
  QCOMPARE(castingsOf(*catalogue_, EngineKey{"e1"}).front().id.text, std::string("99"));
  QCOMPARE(castingNumbers(*catalogue_).size(), std::size_t{2});
  QCOMPARE(portLocations(*catalogue_).size(), std::size_t{2});
}

void QueriesTest::sendersByThreadFamilyAndNumber() {
  const std::vector<ThreadKey> one{ThreadKey{"M12x1.5"}};
  const std::vector<ThreadKey> both{ThreadKey{"M12x1.5"}, ThreadKey{"1/4-18 NPT"}, ThreadKey{"M12x1.5"}};
  QCOMPARE(sendersWithThreads(*catalogue_, one).size(), std::size_t{1});
  QCOMPARE(sendersWithThreads(*catalogue_, both).size(), std::size_t{4});
  QCOMPARE(sendersOfFamily(*catalogue_, FamilyKey{"fa"}).size(), std::size_t{3});
  QCOMPARE(sendersNumbered(*catalogue_, "sn101").front().id.text, std::string("SN-10.1"));
  QCOMPARE(partNumbers(*catalogue_).size(), std::size_t{4});
  const auto s = catalog::sender(*catalogue_, SenderKey{"SN-10.1"});
  QVERIFY(s);
  QCOMPARE(inMillimetres(*s->reach), 11.0);
  QCOMPARE(inNewtonMetres(*s->torqueHigh), 13.0);
  QCOMPARE(*s->fittedNew.until, 1970);
  const auto w = catalog::sender(*catalogue_, SenderKey{"SW-1"});
  QVERIFY(w && w->kind == SenderKind::warningSwitch && !w->family && !w->reach && !w->fittedNew.from);
  QVERIFY(catalog::sender(*catalogue_, SenderKey{"SN-102"})->grounding == Grounding::twoWire);
  QCOMPARE(senders(*catalogue_).size(), std::size_t{4});
}

void QueriesTest::originalSendersOfAYear() {
  QCOMPARE(originalSenders(*catalogue_, LineKey{"l1"}, EngineKey{"e1"}, ModelYear{1965}).size(), std::size_t{1});
  QCOMPARE(originalSenders(*catalogue_, LineKey{"l1"}, EngineKey{"e1"}, ModelYear{1966}).size(), std::size_t{0});
  QCOMPARE(originalUses(*catalogue_, SenderKey{"SN-10.1"}).front().years.from.value, 1960);
}

void QueriesTest::theChainOfReplacementsEndsWhereItBitesItsTail() {
  const auto newer = replacements(*catalogue_, SenderKey{"SN-10.1"});
  QCOMPARE(newer.size(), std::size_t{2});
  QCOMPARE(newer[0].sender.text, std::string("SN-102"));
  QCOMPARE(newer[1].sender.text, std::string("SN-103"));
  QCOMPARE(newer[1].since, std::string("1980"));
  const auto older = replacedParts(*catalogue_, SenderKey{"SN-102"});
  QCOMPARE(older.size(), std::size_t{2});
  QCOMPARE(older[0].replaces.text, std::string("SN-10.1"));
  QCOMPARE(replacements(*catalogue_, SenderKey{"SW-1"}).size(), std::size_t{0});
}

void QueriesTest::adaptersAndPigtailsAreAskedForFromTheEngineSide() {
  const auto adapters = adaptersInto(*catalogue_, ThreadKey{"1/4-18 NPT"});
  QCOMPARE(adapters.size(), std::size_t{1});
  QCOMPARE(inMillimetres(adapters[0].immersionLost), 6.5);
  QCOMPARE(adaptersInto(*catalogue_, ThreadKey{"M12x1.5"}).size(), std::size_t{0});
  QCOMPARE(pigtailsFor(*catalogue_, TerminalKey{"blade"}).front().sender.text, std::string("stud"));
  QCOMPARE(threads(*catalogue_).size(), std::size_t{2});
  QVERIFY(catalog::thread(*catalogue_, ThreadKey{"1/4-18 NPT"})->tapered);
  QVERIFY(!terminal(*catalogue_, TerminalKey{"stud"})->size);
  QCOMPARE(terminalsNamed(*catalogue_, "Blade 6.3 MM").size(), std::size_t{1});
  QCOMPARE(terminals(*catalogue_).size(), std::size_t{2});
}

void QueriesTest::dateLayoutsComeWithTheirFieldsInOrder() {
  const auto layout = dateLayout(*catalogue_, LayoutKey{"dl"});
  QVERIFY(layout);
  QVERIFY(layout->exampleDate == date(1971, 8, 22));
  QCOMPARE(layout->fields.size(), std::size_t{3});
  QVERIFY(layout->fields[0].kind == DateFieldKind::monthLetter);
  QVERIFY(layout->fields[1].optional);
  QCOMPARE(layout->fields[1].text, std::string(" "));
  QCOMPARE(dateLayouts(*catalogue_).size(), std::size_t{1});
}

void QueriesTest::stockFullestBinFirst() {
  const auto bins = stock(*catalogue_, SenderKey{"SN-10.1"});
  QCOMPARE(bins.size(), std::size_t{2});
  QCOMPARE(bins[0].bin, std::string("B4"));
  QCOMPARE(bins[0].quantity, 5);
}

void QueriesTest::aValueTheRulesDoNotAllowIsDamage() {
  const test::Folder folder;
  const Catalogue catalogue = test::smallCatalogue(folder.path("b.ohmkin"));
  catalogue.connection().database().exec(
      "PRAGMA ignore_check_constraints = ON; UPDATE sender SET kind = 'toaster' WHERE id = 'SW-1'");
  QVERIFY_THROWS_EXCEPTION(CatalogueError, senders(catalogue));
  QVERIFY(catalog::sender(catalogue, SenderKey{"SN-102"}));  // and the statement is fit for use again
  catalogue.connection().database().exec("UPDATE curve SET covariance = '1 two 3' WHERE id = 'cl'");
  QVERIFY_THROWS_EXCEPTION(CatalogueError, benchCurves(catalogue, SenderKey{"SN-102"}));
}

QTEST_APPLESS_MAIN(QueriesTest)
#include "tst_queries.moc"
