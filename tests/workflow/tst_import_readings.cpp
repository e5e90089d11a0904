#include "demo_catalogue.h"
#include "reference_table.h"

#include <catalog/bench_writer.h>
#include <fmt/format.h>
#include <workflow/curves.h>
#include <workflow/import_readings.h>
#include <workflow/match.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <fstream>

using namespace ohmkin;
using workflow::ImportAsked;
using workflow::ReadingsFile;

namespace {

std::string decimalComma(double value) {
  std::string text = fmt::format("{}", value);
  std::replace(text.begin(), text.end(), '.', ',');
  return text;
}

/// The published table of a 10 kΩ NTC (tests/data/ntc-rt-table.csv), from 0 to 100 °C, as a logger of another country
/// would write it.
ReadingsFile publishedNtc(const std::string& name = "bath.csv") {
  const test::ReferenceTable table("ntc-rt-table.csv");
  std::string text = "Bench log\r\nprobe 3\r\n\r\nTemp. [°C];R [kΩ]\r\n";
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double at = table.number(i, "t_degc");
    if (at < 0 || at > 100) continue;
    text += fmt::format("{};{}\r\n", decimalComma(at), decimalComma(table.number(i, "R_ohm") / 1000));
  }
  return {name, {}, text};
}

/// A part that lies by `factor` off a curve: invented data.
std::string linesOf(const curve::Curve& curve, double factor = 1) {
  std::string text = "temperature_c,ohms\n";
  for (double t = 45; t <= 100; t += 5)
    text += fmt::format("{},{:.2f}\n", t, factor * inOhms(*curve.resistance(celsius(t))));
  return text;
}

}  // namespace

/// A file comes in: as proposed, as put right, whole or not at all.
class TestImportReadings : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  int copies_ = 0;

  catalog::Catalogue fresh() {
    const auto file = demo_.beside(fmt::format("import-{}.ohmkin", ++copies_).c_str());
    std::filesystem::copy_file(demo_.file(), file, std::filesystem::copy_options::overwrite_existing);
    return catalog::Catalogue::open(file, catalog::Access::readWrite);
  }

 private slots:
  void thePreviewSaysHowAPublishedTableWasReadAndWritesNothing() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto preview = workflow::previewImport(catalogue, families, publishedNtc(), {});
    QVERIFY2(preview, preview ? "" : preview.error().sentence().c_str());
    QCOMPARE(preview->tally.rows, std::uint64_t{21});
    QCOMPARE(preview->plan.decimal, ',');
    QCOMPARE(preview->plan.separator, ';');
    QVERIFY(preview->plan.columns.at(1).unit == exchange::ColumnUnit::kilohm);
    QVERIFY(!preview->proposal.columns.at(0).reason.empty());
    QCOMPARE(preview->runs.size(), std::size_t{1});
    const auto& run = preview->runs.front();
    QVERIFY(run.fit && run.fit->outliers.empty());
    // The table's own comment: a least-squares Steinhart–Hart fit over 0…100 °C reproduces it to 0.018 K at worst.
    for (const auto& residual : run.fit->residuals) QVERIFY(std::abs(inKelvin(residual)) <= 0.0185);
    QVERIFY(catalog::imports(catalogue).empty());
  }

  void theCalibrationOf2017ComesOutWithinItsResiduals() {
    // Possolo and Iyer, Rev. Sci. Instrum. 88, 011301 (2017), Table II: a cubic with a residual standard deviation of
    // 0.012 °C, its values computed by another program beside the data. Over so few kelvins the form chosen here has
    // fewer numbers: it stays within two of those standard deviations of that cubic. The indication, in kelvins,
    // stands in the place of ohms.
    const test::ReferenceTable table("thermistor-calibration.csv");
    std::string text = "PRT °C\tindication\n";
    for (std::size_t i = 0; i < table.size(); ++i)
      text += table.text(i, "prt_degc") + "\t" + fmt::format("{:.2f}\n", 273.15 + table.number(i, "thermistor_degc"));
    auto catalogue = fresh();
    ImportAsked asked;
    asked.correction = "temperature=1:C, resistance=2:ohm";
    asked.part = "BR-2215";
    const auto families = workflow::benchFamilies(catalogue);
    const auto imported = workflow::importFile(catalogue, families, {"prt.tsv", {}, text}, asked, "Ann");
    QVERIFY2(imported, imported ? "" : imported.error().sentence().c_str());
    const auto& seen = imported->runs.at(0).seen;
    QVERIFY2(seen.fit, seen.noFit ? seen.noFit->sentence().c_str() : "");
    const auto& fit = *seen.fit;
    for (std::size_t i = 0; i < table.size(); ++i) {
      const double cubic = 273.15 + table.number(i, "fit_degc_computed");
      const double chosen = inOhms(*fit.curve.resistance(celsius(table.number(i, "prt_degc"))));
      QVERIFY2(std::abs(chosen - cubic) <= 0.024, fmt::format("{}: {}, {}", cubic, chosen, fit.reason).c_str());
    }
    // And what was kept answers as what was fitted.
    const auto kept = catalog::benchCurves(catalogue, catalog::SenderKey("BR-2215"));
    const auto curve = workflow::curveOf(kept.at(0));
    QVERIFY2(curve, curve ? "" : curve.error().sentence().c_str());
    for (std::size_t i = 0; i < table.size(); ++i) {
      const Temperature at = celsius(table.number(i, "prt_degc"));
      if (!curve->curve.valid().holds(at)) continue;
      QVERIFY(std::abs(inOhms(*curve->curve.resistance(at)) - inOhms(*fit.curve.resistance(at))) < 1e-9);
    }
  }

  void aBenchCurveIsPartOfMatchingAtOnceAndSaysSo() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    ImportAsked asked;
    asked.part = "br 2215";
    asked.lot = "3";
    const auto imported = workflow::importFile(catalogue, families, publishedNtc(), asked, "Ann");
    QVERIFY(imported);
    QCOMPARE(imported->record.curves, std::int64_t{1});
    QCOMPARE(imported->runs.at(0).seen.said.part, std::string("BR-2215"));
    const auto& findings = imported->runs.at(0).seen.findings;
    QVERIFY(std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
      return f.severity == Severity::warning;  // 10 kΩ is no gauge sender's family: a part number is not a curve
    }));

    workflow::Question question;
    question.line = "ridgeway utility";
    question.year = ModelYear{1968};
    question.cluster = "gauge package";
    question.casting = "30418";
    const auto answer = workflow::match(catalogue, question);
    QVERIFY(answer);
    bool found = false;
    for (const auto& candidate : answer->branches.at(0).ranked) {
      if (candidate.part != "BR-2215" || candidate.lot != "3") continue;
      found = true;
      QCOMPARE(candidate.rank, pairing::Rank::refused);
      QVERIFY(candidate.errors != nullptr);
      QVERIFY(candidate.measured.starts_with("bench curve of 20"));
      QVERIFY(candidate.measured.ends_with(", lot 3, by Ann"));
      QVERIFY(candidate.sentence.find("Judged by its own bench curve of 20") != std::string::npos);
      QVERIFY(std::any_of(candidate.findings.begin(), candidate.findings.end(),
                          [](const Finding& f) { return f.code == "bench-curve-off-family"; }));
    }
    QVERIFY(found);
  }

  void aLotThatFollowsItsFamilyIsNotWarnedOf() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    ImportAsked asked;
    asked.part = "BR-2217";
    asked.meter = "0.8 %";
    const ReadingsFile file{"good.csv", {}, linesOf(families.curves[*a].curve, 1.02)};
    QVERIFY(workflow::importFile(catalogue, families, file, asked, "Ann"));
    workflow::Question question;
    question.line = "ridgeway utility";
    question.year = ModelYear{1968};
    question.cluster = "gauge package";
    question.casting = "30418";
    const auto answer = workflow::match(catalogue, question);
    QVERIFY(answer);
    std::size_t judged = 0;
    for (const auto& candidate : answer->branches.at(0).ranked) {
      if (candidate.part != "BR-2217" || candidate.measured.empty()) continue;
      ++judged;
      QVERIFY(candidate.recommended());
      QCOMPARE(candidate.lot, std::string("not named"));
      QVERIFY(std::none_of(candidate.findings.begin(), candidate.findings.end(),
                           [](const Finding& f) { return f.code == "bench-curve-off-family"; }));
    }
    QCOMPARE(judged, std::size_t{1});
  }

  void theSameFileAgainIsRefusedAndSaysWhenAndByWhom() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    QVERIFY(workflow::importFile(catalogue, families, publishedNtc(), {}, "Ann"));
    const auto again = workflow::importFile(catalogue, families, publishedNtc("another name.csv"), {}, "Bert");
    QVERIFY(!again);
    QCOMPARE(again.error().code, std::string("import-again"));
    QVERIFY(again.error().sentence().find("Ann") != std::string::npos);
    QCOMPARE(catalog::imports(catalogue).size(), std::size_t{1});
    const auto preview = workflow::previewImport(catalogue, families, publishedNtc(), {});
    QVERIFY(preview && preview->already && preview->already->who == "Ann");
  }

  void undoneItIsGoneAndMayComeInAgain() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    ImportAsked asked;
    asked.part = "BR-2215";
    const auto imported = workflow::importFile(catalogue, families, publishedNtc(), asked, "Ann");
    QVERIFY(imported);
    QCOMPARE(catalog::benchCurves(catalogue, catalog::SenderKey("BR-2215")).size(), std::size_t{1});
    QVERIFY(catalog::undoImport(catalogue, imported->record.id, "Ann"));
    QVERIFY(catalog::benchCurves(catalogue, catalog::SenderKey("BR-2215")).empty());
    QVERIFY(workflow::importFile(catalogue, families, publishedNtc(), asked, "Ann"));
  }

  void aCancelledImportLeavesNothing() {
    std::string text = "temperature_c,ohms\n";
    for (int i = 0; i < 400'000; ++i) text += fmt::format("{:.3f},{:.2f}\n", 20 + i * 2e-4, 500 - i * 1e-3);
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    int told = 0;
    const auto stopped = workflow::importFile(catalogue, families, {"long.csv", {}, text}, {}, "Ann",
                                              [&](const workflow::ImportProgress& p) {
                                                Q_ASSERT(p.bytes <= p.ofBytes);
                                                return ++told < 1;
                                              });
    QVERIFY(!stopped);
    QCOMPARE(stopped.error().code, std::string("import-cancelled"));
    QVERIFY(told >= 1);
    QVERIFY(catalog::imports(catalogue).empty() && catalog::runs(catalogue).empty());
    const auto previewStopped = workflow::previewImport(catalogue, families, {"long.csv", {}, text}, {},
                                                        [](const workflow::ImportProgress&) { return false; });
    QVERIFY(!previewStopped);
  }

  void aPutRightReadingIsRemembered() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    // Fahrenheit that nothing in the file tells.
    const auto lines = [](double step) {
      std::string text = "reading,value\n";
      for (int i = 0; i < 12; ++i) text += fmt::format("{},{:.1f}\n", 70 + step * i, 900 * std::exp(-0.02 * step * i));
      return text;
    };
    ImportAsked asked;
    asked.correction = "temperature=1:F, resistance=2:ohm";
    const auto imported = workflow::importFile(catalogue, families, {"one.csv", {}, lines(9)}, asked, "Ann");
    QVERIFY2(imported, imported ? "" : imported.error().sentence().c_str());
    QVERIFY(imported->remembers);
    const auto preview = workflow::previewImport(catalogue, families, {"two.csv", {}, lines(8)}, {});
    QVERIFY(preview && preview->remembered);
    QVERIFY(preview->plan.columns.at(0).unit == exchange::ColumnUnit::fahrenheit);
    QVERIFY(std::abs(inCelsius(preview->runs.at(0).span.low) - inCelsius(fahrenheit(70))) < 1e-9);
    ImportAsked forget;
    forget.asProposed = true;
    const auto plain = workflow::previewImport(catalogue, families, {"two.csv", {}, lines(8)}, forget);
    QVERIFY(!plain || !plain->remembered);
  }

  void partNumbersAndLotsInTheFileNameTheirCurves() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    QVERIFY(a);
    std::string text = "part;temperature_c;ohms\n";
    for (const char* name : {"BR-2215 lot R7", "br2207", "unknown probe"}) {
      for (double t = 45; t <= 115; t += 7)
        text += fmt::format("{};{};{:.2f}\n", name, t, inOhms(*families.curves[*a].curve.resistance(celsius(t))));
    }
    const auto imported = workflow::importFile(catalogue, families, {"three.csv", {}, text}, {}, "Ann");
    QVERIFY2(imported, imported ? "" : imported.error().sentence().c_str());
    QCOMPARE(imported->runs.size(), std::size_t{3});
    QCOMPARE(imported->runs[0].seen.said.part, std::string("BR-2215"));
    QCOMPARE(imported->runs[0].seen.said.lot, std::string("R7"));
    QVERIFY(imported->runs[0].curve.has_value());
    QVERIFY(imported->runs[0].seen.claimed == a);
    QCOMPARE(imported->runs[0].seen.whose->suspects.front().family, *a);
    QCOMPARE(imported->runs[1].seen.said.part, std::string("BR-2207"));
    QVERIFY(imported->runs[2].seen.said.part.empty() && !imported->runs[2].curve);
    QVERIFY(workflow::provenance(catalogue, *imported->runs[0].curve).find("three.csv") != std::string::npos);
  }

  void aCurveIsLeftOutOrSaidToBeAnother() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    std::string text = "probe;temperature_c;ohms\n";
    for (const char* name : {"first", "second"})
      for (double t = 45; t <= 115; t += 7)
        text += fmt::format("{};{};{:.2f}\n", name, t, inOhms(*families.curves[*a].curve.resistance(celsius(t))));
    ImportAsked asked;
    asked.runs = {
        {"first", true, "", "", ""}, {"second", false, "BR-2217", "9", "Family B"}, {"secnd", false, "", "", ""}};
    asked.meter = "0.8 %";
    const auto imported = workflow::importFile(catalogue, families, {"two.csv", {}, text}, asked, "Ann");
    QVERIFY2(imported, imported ? "" : imported.error().sentence().c_str());
    QCOMPARE(imported->runs.size(), std::size_t{1});
    QCOMPARE(imported->record.rows, std::int64_t{11});
    const auto& run = imported->runs[0].seen;
    QVERIFY(run.said.part == "BR-2217" && run.said.lot == "9" && run.claimed == families.at(catalog::FamilyKey("B")));
    QVERIFY(run.fit->stated);
    QVERIFY(run.findings.front().severity == Severity::warning);  // it reads as Family A
    QVERIFY(std::any_of(imported->findings.begin(), imported->findings.end(),
                        [](const Finding& f) { return f.code == "curve-not-in-file"; }));
    QVERIFY(imported->record.meter.find("0.8") != std::string::npos && imported->record.bath.empty());
  }

  void anOpenQuestionIsAskedBeforeAnythingIsWritten() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    // 1,234 may be one thousand two hundred and thirty-four, or one and a bit.
    const ReadingsFile file{"open.csv", {}, "t °C;R\n20;1,234\n40;0,712\n60;0,401\n80;0,233\n95;0,155\n"};
    ReadingsFile thousands{"open.csv", {}, "t °C;R\n20;9,234\n40;5,712\n60;3,401\n80;2,233\n95;1,155\n"};
    const auto preview = workflow::previewImport(catalogue, families, thousands, {});
    QVERIFY2(preview, preview ? "" : preview.error().sentence().c_str());
    QVERIFY(!preview->proposal.questions.empty());
    ImportAsked asked;
    asked.askFirst = true;
    const auto refused = workflow::importFile(catalogue, families, thousands, asked, "Ann");
    QVERIFY(!refused && refused.error().code == "import-question");
    QVERIFY(catalog::imports(catalogue).empty());
    asked.correction = preview->proposal.questions.front().answers.front();
    QVERIFY(workflow::importFile(catalogue, families, thousands, asked, "Ann"));
    QVERIFY(workflow::previewImport(catalogue, families, file, {}));
  }

  void everyRejectedCellIsNamed() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const std::string text = "temperature_c,ohms\n20,500\n30,abc\n40,230\n-300,10\n60,120\n80,OL\n95,47\n";
    const auto preview = workflow::previewImport(catalogue, families, {"bad.csv", {}, text}, {});
    QVERIFY2(preview, preview ? "" : preview.error().sentence().c_str());
    QCOMPARE(preview->tally.rows, std::uint64_t{5});
    QCOMPARE(preview->tally.overloads, std::uint64_t{1});
    QCOMPARE(preview->rejected.size(), std::size_t{2});
    QCOMPARE(preview->rejected[0].line, std::uint64_t{3});
    QCOMPARE(preview->rejected[0].column, std::size_t{2});
    QCOMPARE(preview->rejected[0].text, std::string("'abc'"));
    QVERIFY(!preview->rejected[0].expected.empty());
    QCOMPARE(preview->rejected[1].line, std::uint64_t{5});
  }

  void anOutlierIsNamed() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    std::string text = linesOf(families.curves[*a].curve);
    const auto line = text.find("\n70,");
    text.insert(line + 4, "1");  // a slipped key
    const auto preview = workflow::previewImport(catalogue, families, {"slip.csv", {}, text}, {});
    QVERIFY(preview && preview->runs.at(0).fit);
    QCOMPARE(preview->runs[0].fit->outliers.size(), std::size_t{1});
    const auto& findings = preview->runs[0].findings;
    QVERIFY(std::any_of(findings.begin(), findings.end(),
                        [](const Finding& f) { return f.code == "reading-does-not-belong"; }));
    QCOMPARE(preview->runs[0].whose->suspects.front().family, *a);
  }

  void aLogIsFittedWhereItStoodStill() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    const auto& curve = families.curves[*a].curve;
    std::string text = "seconds,temperature_c,ohms\n";
    int second = 0;
    for (double plateau = 50; plateau <= 110; plateau += 10) {
      for (int i = 0; i < 120; ++i, second += 2)
        text += fmt::format("{},{},{:.3f}\n", second, plateau, inOhms(*curve.resistance(celsius(plateau))));
      for (int i = 1; i < 30 && plateau < 110; ++i, second += 2) {
        const double bath = plateau + i / 3.0;
        text += fmt::format("{},{:.2f},{:.3f}\n", second, bath, inOhms(*curve.resistance(celsius(bath - 3))));
      }
    }
    const auto preview = workflow::previewImport(catalogue, families, {"log.csv", {}, text}, {});
    QVERIFY2(preview, preview ? "" : preview.error().sentence().c_str());
    const auto& run = preview->runs.at(0);
    QVERIFY(run.log);
    QVERIFY(run.reduction == workflow::Reduction::steady);
    QCOMPARE(run.points.size(), std::size_t{7});
    QVERIFY(run.fit);
    for (const auto& residual : run.fit->residuals) QVERIFY(std::abs(inKelvin(residual)) < 0.1);
  }

  void manyReadingsAreReducedAndTheCurveIsTheSame() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    const auto& curve = families.curves[*a].curve;
    std::string text = "temperature_c,ohms\n";
    for (int i = 0; i < 30'000; ++i) {
      const double t = 45 + (i * 7919 % 30'000) * 0.0025;
      text += fmt::format("{:.4f},{:.4f}\n", t, inOhms(*curve.resistance(celsius(t))));
    }
    const auto preview = workflow::previewImport(catalogue, families, {"many.csv", {}, text}, {});
    QVERIFY(preview);
    const auto& run = preview->runs.at(0);
    QVERIFY(run.reduction == workflow::Reduction::binned);
    QVERIFY(run.points.size() <= workflow::kMostPoints && !run.reducedBy.empty());
    QVERIFY2(run.fit, run.noFit ? run.noFit->sentence().c_str() : "");
    for (double t = 46; t < 119; t += 1)
      QVERIFY(std::abs(run.fit->curve.lnOhms(inKelvin(celsius(t))) - curve.lnOhms(inKelvin(celsius(t)))) < 2e-3);
  }

  void hostileFilesAreRefusedWithASentence_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::newRow("empty") << QByteArray();
    QTest::newRow("one line feed") << QByteArray("\n");
    QTest::newRow("NUL bytes") << QByteArray("temperature_c,ohms\n20,500\n30,\0,1\n", 32);
    QTest::newRow("a picture") << QByteArray("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16);
    QTest::newRow("a quote never closed") << QByteArray("temperature_c,ohms\n20,500\n\"30,400\n40,300\n50,200\n");
    QTest::newRow("prose") << QByteArray("Dear Sirs,\nthe sender reads low.\n");
    QTest::newRow("a quarter megabyte without a break") << QByteArray(300'000, '1');
    QTest::newRow("no row that can be read") << QByteArray("temperature_c,ohms\n-400,1\n-500,2\n-600,3\n");
    QByteArray curves("curve,temperature_c,ohms\n");
    for (int i = 0; i < 1200; ++i) curves += "c" + QByteArray::number(i) + ",20,500\n";
    QTest::newRow("a curve a row") << curves;
  }
  void hostileFilesAreRefusedWithASentence() {
    QFETCH(QByteArray, text);
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto imported = workflow::importFile(catalogue, families, {"hostile.csv", {}, text.toStdString()}, {}, "Ann");
    QVERIFY(!imported);
    QVERIFY(!imported.error().sentence().empty());
    QVERIFY(catalog::imports(catalogue).empty() && catalog::runs(catalogue).empty());
  }

  void namesThatTheCatalogueDoesNotHaveAreRefused() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    ImportAsked asked;
    asked.part = "BR-2251";
    const auto part = workflow::importFile(catalogue, families, publishedNtc(), asked, "Ann");
    QVERIFY(!part && part.error().code == "part-unknown");
    QVERIFY(part.error().expected.find("BR-2215") != std::string::npos);
    ImportAsked family;
    family.family = "Famly A";
    QVERIFY(!workflow::importFile(catalogue, families, publishedNtc(), family, "Ann"));
    ImportAsked meter;
    meter.meter = "the blue one";
    QVERIFY(!workflow::importFile(catalogue, families, publishedNtc(), meter, "Ann"));
    QVERIFY(catalog::imports(catalogue).empty());
  }

  void aFileThatIsNotThereIsRefused() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto imported =
        workflow::importFile(catalogue, families, workflow::readingsFile("/nowhere/at all.csv"), {}, "Ann");
    QVERIFY(!imported);
    QCOMPARE(imported.error().code, std::string("file-missing"));
  }

  void fromAPathAsFromBytes() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto path = demo_.beside("bath on disk.csv");
    std::ofstream(path, std::ios::binary) << publishedNtc().bytes;
    const auto imported = workflow::importFile(catalogue, families, workflow::readingsFile(path), {}, "Ann");
    QVERIFY(imported);
    QCOMPARE(imported->record.file, std::string("bath on disk.csv"));
    QCOMPARE(imported->record.rows, std::int64_t{21});
  }
};

QTEST_APPLESS_MAIN(TestImportReadings)
#include "tst_import_readings.moc"
