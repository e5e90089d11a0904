#include "bench_files.h"

#include <catalog/bench_writer.h>
#include <workflow/match.h>
#include <QTest>
#include <fstream>
#include <random>

using namespace ohmkin;
using test::linesOf;
using test::publishedNtc;
using workflow::ImportAsked;
using workflow::ReadingsFile;

/// A file comes in whole or not at all, is part of matching at once, and goes out again.
class TestImportKept : public QObject {
  Q_OBJECT
  test::WritableDemos demos_;

 private slots:
  void aBenchCurveIsPartOfMatchingAtOnceAndSaysSo() {
    auto catalogue = demos_.fresh();
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

  // A lot with six tenths of its family's ohms reads high: safe, and still not what its part number promises.
  void aLotThatWasMeasuredToReadHighIsNamedBesideItsPartWhichThenComesLater() {
    auto catalogue = demos_.fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    workflow::Question question;
    question.line = "ridgeway utility";
    question.year = ModelYear{1968};
    question.cluster = "gauge package";
    question.casting = "30418";
    const auto before = workflow::match(catalogue, question);
    QVERIFY(before);
    QCOMPARE(before->branches.at(0).ranked.at(0).part, std::string("BR-2217"));
    ImportAsked asked;
    asked.part = "BR-2217";
    asked.lot = "7";
    asked.meter = "0.8 %";
    QVERIFY(workflow::importFile(catalogue, families, {"low.csv", {}, linesOf(families.curves[*a].curve, 0.6)}, asked,
                                 "Ann"));
    const auto answer = workflow::match(catalogue, question);
    QVERIFY(answer);
    QVERIFY(answer->branches.at(0).ranked.at(0).part != "BR-2217");
    for (const auto& candidate : answer->branches.at(0).ranked) {
      if (candidate.part != "BR-2217" || !candidate.measured.empty()) continue;
      QVERIFY2(candidate.sentence.find("Lot 7 was measured and misreads") != std::string::npos,
               candidate.sentence.c_str());
    }
  }

  void aLotThatFollowsItsFamilyIsNotWarnedOf() {
    auto catalogue = demos_.fresh();
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
    auto catalogue = demos_.fresh();
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
    auto catalogue = demos_.fresh();
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
    auto catalogue = demos_.fresh();
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

  void aCurveIsLeftOutOrSaidToBeAnother() {
    auto catalogue = demos_.fresh();
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
    auto catalogue = demos_.fresh();
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
    auto catalogue = demos_.fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto imported = workflow::importFile(catalogue, families, {"hostile.csv", {}, text.toStdString()}, {}, "Ann");
    QVERIFY(!imported);
    QVERIFY(!imported.error().sentence().empty());
    QVERIFY(catalog::imports(catalogue).empty() && catalog::runs(catalogue).empty());
  }

  void spoiltFilesComeInOrAreRefusedAndNothingElse() {
    auto catalogue = demos_.fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const std::string sound =
        "probe;temperature_c;ohms;time\nBR-2215 lot 1;45;265,1;0\nBR-2215 lot 1;65;139,5;60\n"
        "BR-2207;75;104,3;120\nBR-2207;95;61,3;180\nBR-2207;105;48,1;240\n";
    std::mt19937 random(1959);
    ImportAsked asked;
    asked.part = "BR-2216";
    std::size_t in = 0;
    for (int i = 0; i < 400; ++i) {
      std::string text = sound;
      for (auto changes = 1 + random() % 6; changes-- > 0;) {
        const std::size_t at = random() % text.size();
        switch (random() % 3) {
          case 0:
            text[at] = static_cast<char>(random() % 256);
            break;
          case 1:
            text.erase(at, 1 + random() % 8);
            break;
          default:
            text.insert(at, sound.substr(random() % sound.size(), random() % 20));
            break;
        }
      }
      const std::size_t before = catalog::imports(catalogue).size();
      const auto imported = workflow::importFile(catalogue, families, {"spoilt.csv", {}, text}, asked, "Ann");
      if (imported) ++in;
      else QVERIFY(!imported.error().sentence().empty());
      QCOMPARE(catalog::imports(catalogue).size(), before + (imported ? 1 : 0));
    }
    QVERIFY(in > 50 && in < 400);  // both ways were taken
  }

  void namesThatTheCatalogueDoesNotHaveAreRefused() {
    auto catalogue = demos_.fresh();
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
    auto catalogue = demos_.fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto imported =
        workflow::importFile(catalogue, families, workflow::readingsFile("/nowhere/at all.csv"), {}, "Ann");
    QVERIFY(!imported);
    QCOMPARE(imported.error().code, std::string("file-missing"));
  }

  void fromAPathAsFromBytes() {
    auto catalogue = demos_.fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto path = demos_.beside("bath on disk.csv");
    std::ofstream(path, std::ios::binary) << publishedNtc().bytes;
    const auto imported = workflow::importFile(catalogue, families, workflow::readingsFile(path), {}, "Ann");
    QVERIFY(imported);
    QCOMPARE(imported->record.file, std::string("bath on disk.csv"));
    QCOMPARE(imported->record.rows, std::int64_t{21});
  }
};

QTEST_APPLESS_MAIN(TestImportKept)
#include "tst_import_kept.moc"
