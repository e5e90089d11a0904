#include "small_catalogue.h"

#include <catalog/bench_writer.h>
#include <catalog/snapshot.h>
#include <rapidcheck.h>
#include <sys/wait.h>
#include <unistd.h>
#include <QtTest>
#include <algorithm>
#include <cmath>
#include <csignal>
#include <random>

using namespace ohmkin;
using namespace ohmkin::catalog;

namespace {

const std::string kHash(64, 'a');
const BenchProvenance kAnn{"Ann", "shop meter", "stirred kettle"};

BenchFile file(const std::string& hash = kHash) {
  return {"ramp.csv", hash, 1234, "temperature=1:C, resistance=2:ohm"};
}

BenchCurve table() {
  BenchCurve curve;
  curve.model = CurveModel::table;
  curve.valid = {celsius(20.1), celsius(95.3)};
  curve.floor = 0.01;
  curve.samples = {{celsius(20.1), ohms(700), RunDirection::heating}, {celsius(95.3), ohms(95), RunDirection::cooling}};
  return curve;
}

/// All rows of all tables of the bench and of what it makes, as text.
std::string everything(const Catalogue& catalogue) {
  std::string all;
  for (const char* name :
       {"source", "curve", "sample", "bench_import", "bench_run", "bench_reading", "reading_habit", "change_log"}) {
    SQLite::Statement asked(catalogue.connection().database(), std::string("SELECT * FROM ") + name);
    while (asked.executeStep())
      for (int c = 0; c < asked.getColumnCount(); ++c) all += asked.getColumn(c).getString() + "|";
    all += "\n";
  }
  return all;
}

std::int64_t count(const Catalogue& catalogue, const std::string& table) {
  return catalogue.connection().database().execAndGet("SELECT count(*) FROM " + table).getInt64();
}

ImportRecord importTwoRuns(Catalogue& catalogue, const std::string& hash = kHash) {
  auto writer = BenchWriter::begin(catalogue, file(hash), kAnn);
  if (!writer) qFatal("%s", writer.error().sentence().c_str());
  const RunNumber heating = writer->beginRun({"SN-102", "lot 9", "fa", RunDirection::heating, "A", ""});
  const RunNumber nameless = writer->beginRun({});
  writer->add(heating, {20.1, 700});
  writer->add(nameless, {25, kNotSaid, 3.5});
  writer->add(heating, {95.3, 95, 60, 0.1, 0.01, RunDirection::cooling});
  const auto curve = writer->addCurve(heating, table());
  if (!curve) qFatal("%s", curve.error().sentence().c_str());
  return writer->keep();
}

}  // namespace

class BenchWriterTest : public QObject {
  Q_OBJECT
 private slots:
  void aFileComesInWithItsRunsReadingsAndCurve();
  void aCurveIsUsedAtOnceAndSaysWhereItComesFrom();
  void theSameFileAgainIsRefusedAndChangesNothing();
  void whatIsNotKeptIsNotThere();
  void aProcessKilledMeanwhileLeavesNothing();
  void undoTakesAllOutButTheRecord();
  void anUndoneFileMayComeInAgain();
  void mixedRunsComeOutAsTheyWentIn();
  void severalCurvesForAPartAndLot();
  void aRunOfAnUnknownPartKeepsItsReadingsButHasNoCurve();
  void aCurveThatBreaksARuleLeavesNothingOfItself();
  void readingsByHand();
  void aReaderIsRefused();
  void numbersOutOfRangeAreTheCallersMistake();
  void howAFileIsReadIsRememberedWithTheFileOrNotAtAll();
};

void BenchWriterTest::aFileComesInWithItsRunsReadingsAndCurve() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  const ImportRecord kept = importTwoRuns(catalogue);
  QCOMPARE(kept.rows, std::int64_t{3});
  QCOMPARE(kept.curves, std::int64_t{1});

  const auto all = imports(catalogue);
  QCOMPARE(all.size(), std::size_t{1});
  QCOMPARE(all.front().file, std::string("ramp.csv"));
  QCOMPARE(all.front().hash, kHash);
  QCOMPARE(all.front().bytes, std::int64_t{1234});
  QCOMPARE(all.front().who, std::string("Ann"));
  QCOMPARE(all.front().plan, file().plan);
  QCOMPARE(all.front().rows, std::int64_t{3});
  QCOMPARE(all.front().at, kept.at);
  QVERIFY(all.front().stands());

  const auto both = runsOfImport(catalogue, kept.id);
  QCOMPARE(both.size(), std::size_t{2});
  QCOMPARE(both[0].said.part, std::string("SN-102"));
  QVERIFY(both[0].said.direction == RunDirection::heating);
  QCOMPARE(both[0].rows, std::int64_t{2});
  QVERIFY(both[0].curve.has_value());
  QVERIFY(!both[1].curve && both[1].said.part.empty() && !both[1].said.direction);

  const auto readings = readingsOf(catalogue, both[0].id);
  QCOMPARE(readings.size(), std::size_t{2});
  QCOMPARE(readings[0].celsius, 20.1);
  QVERIFY(std::isnan(readings[0].seconds) && !readings[0].direction);
  QCOMPARE(readings[1].uLnOhms, 0.01);
  QVERIFY(readings[1].direction == RunDirection::cooling);
  const auto overload = readingsOf(catalogue, both[1].id);
  QVERIFY(overload.size() == 1 && std::isnan(overload[0].ohms) && overload[0].seconds == 3.5);
  QCOMPARE(count(catalogue, "pragma_foreign_key_check"), std::int64_t{0});
  QCOMPARE(catalogue.connection().database().execAndGet("PRAGMA foreign_keys").getInt(), 1);
  QCOMPARE(runs(catalogue).size(), std::size_t{2});
}

void BenchWriterTest::aCurveIsUsedAtOnceAndSaysWhereItComesFrom() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  const ImportRecord kept = importTwoRuns(catalogue);
  const auto curves = benchCurves(catalogue, SenderKey{"SN-102"}, "lot 9");
  QCOMPARE(curves.size(), std::size_t{1});
  QCOMPARE(curves[0].samples.size(), std::size_t{2});
  QVERIFY(curves[0].source.kind == SourceKind::bench);
  const std::string& said = curves[0].source.citation;
  for (const std::string& part : {std::string("ramp.csv"), std::string("Ann"), std::string("shop meter"),
                                  std::string("stirred kettle"), kHash.substr(0, 16), kept.at.substr(0, 10)})
    QVERIFY2(said.find(part) != std::string::npos, said.c_str());
  const auto run = runOfCurve(catalogue, curves[0].id);
  QVERIFY(run && run->ofImport == kept.id);
  // Written with one decimal and kept so, though a temperature is in kelvin inside.
  QCOMPARE(catalogue.connection().database().execAndGet("SELECT valid_low FROM curve WHERE lot = 'lot 9'").getDouble(),
           20.1);
}

void BenchWriterTest::theSameFileAgainIsRefusedAndChangesNothing() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  const ImportRecord kept = importTwoRuns(catalogue);
  const std::string before = everything(catalogue);
  const auto again = BenchWriter::begin(catalogue, {"copy of ramp.csv", kHash, 1234, ""}, {"Bert", "", ""});
  QVERIFY(!again);
  QCOMPARE(again.error().code, std::string("import-again"));
  QCOMPARE(again.error().sentence(), "copy of ramp.csv: found a file already imported on " + kept.at +
                                         " by Ann as ramp.csv, expected another one; nothing was changed");
  QCOMPARE(everything(catalogue), before);
  QVERIFY(standingImport(catalogue, kHash).has_value());
}

void BenchWriterTest::whatIsNotKeptIsNotThere() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  const std::string before = everything(catalogue);
  {
    auto writer = BenchWriter::begin(catalogue, file(), kAnn);
    QVERIFY(writer);
    const RunNumber run = writer->beginRun({"SN-102", "", "", {}, "", ""});
    for (int i = 0; i < 900'000; ++i) writer->add(run, {20.0 + i * 1e-5, 700});  // more than a batch
    QVERIFY(writer->addCurve(run, table()));
    writer->remember("shape", "");
  }
  QCOMPARE(everything(catalogue), before);
  QCOMPARE(catalogue.connection().database().execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
}

void BenchWriterTest::aProcessKilledMeanwhileLeavesNothing() {
  const test::Folder folder;
  const auto path = folder.path("a");
  std::string before;
  {
    const Catalogue catalogue = test::smallCatalogue(path);
    before = everything(catalogue);
  }
  std::array<int, 2> pipe{};
  QCOMPARE(::pipe(pipe.data()), 0);
  const pid_t child = fork();
  QVERIFY(child >= 0);
  if (child == 0) {
    Catalogue catalogue = Catalogue::open(path, Access::readWrite);
    auto writer = BenchWriter::begin(catalogue, file(), kAnn);
    const RunNumber run = writer->beginRun({});
    for (int i = 0;; ++i) {
      writer->add(run, {20, 700});
      if (i == 5'000'000 && write(pipe[1], "x", 1) == 1)  // more than the cache holds: some of it is in the log
        while (true) pause();
    }
  }
  char mark = 0;
  QCOMPARE(read(pipe[0], &mark, 1), ssize_t{1});
  kill(child, SIGKILL);
  int status = 0;
  QCOMPARE(waitpid(child, &status, 0), child);
  QVERIFY(WIFSIGNALED(status));
  close(pipe[0]);
  close(pipe[1]);
  const auto underWay = QFileInfo(QString::fromStdString(path.string() + "-wal")).size();
  QVERIFY2(underWay > 10'000'000, std::to_string(underWay).c_str());
  Catalogue catalogue = Catalogue::open(path, Access::readWrite);
  QCOMPARE(everything(catalogue), before);
  QCOMPARE(catalogue.connection().database().execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
  importTwoRuns(catalogue);
}

void BenchWriterTest::undoTakesAllOutButTheRecord() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  const ImportRecord other = importTwoRuns(catalogue, std::string(64, 'b'));
  const auto counts = [&] {
    return std::array{count(catalogue, "source"), count(catalogue, "curve"), count(catalogue, "sample"),
                      count(catalogue, "bench_run"), count(catalogue, "bench_reading")};
  };
  const auto before = counts();
  const ImportRecord kept = importTwoRuns(catalogue);
  QVERIFY(counts() != before);
  const auto undone = undoImport(catalogue, kept.id, "Bert");
  if (!undone) QFAIL(undone.error().sentence().c_str());
  QVERIFY(!undone->stands() && undone->undoneBy == "Bert");
  QVERIFY(counts() == before);
  QCOMPARE(imports(catalogue).size(), std::size_t{2});
  QCOMPARE(undoImport(catalogue, kept.id, "Bert").error().code, std::string("import-undone"));
  QCOMPARE(undoImport(catalogue, {77}, "Bert").error().code, std::string("import-unknown"));
  QVERIFY(importNumbered(catalogue, other.id)->stands());
  QCOMPARE(count(catalogue, "pragma_foreign_key_check"), std::int64_t{0});
  QCOMPARE(catalogue.connection()
               .database()
               .execAndGet("SELECT who || ' ' || what || ' ' || before FROM change_log ORDER BY id DESC")
               .getString(),
           std::string("Bert bench import undone ramp.csv, 3 rows, 1 curves"));
}

void BenchWriterTest::anUndoneFileMayComeInAgain() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  const ImportRecord first = importTwoRuns(catalogue);
  QVERIFY(undoImport(catalogue, first.id, "Bert"));
  const ImportRecord second = importTwoRuns(catalogue);
  QVERIFY(second.id != first.id);
  QCOMPARE(benchCurves(catalogue, SenderKey{"SN-102"}, "lot 9").size(), std::size_t{1});
  QCOMPARE(standingImport(catalogue, kHash)->id.value, second.id.value);
}

void BenchWriterTest::mixedRunsComeOutAsTheyWentIn() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  int files = 0;
  const auto holds = rc::check("whatever the order of the runs", [&] {
    const int runCount = *rc::gen::inRange(1, 8);
    const auto order = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, runCount));
    const std::string number = std::to_string(++files);
    auto writer = BenchWriter::begin(catalogue, file(std::string(64 - number.size(), 'd') + number), kAnn);
    std::vector<RunNumber> runs;
    runs.reserve(static_cast<std::size_t>(runCount));
    for (int i = 0; i < runCount; ++i) runs.push_back(writer->beginRun({}));
    std::vector<std::vector<double>> expected(runs.size());
    double next = 1;
    for (const int which : order) {
      const auto at = static_cast<std::size_t>(which);
      writer->add(runs[at], {20, next});
      expected[at].push_back(next++);
    }
    writer->keep();
    for (std::size_t i = 0; i < runs.size(); ++i) {
      std::vector<double> found;
      for (const RawReading& reading : readingsOf(catalogue, runs[i])) found.push_back(reading.ohms);
      RC_ASSERT(found == expected[i]);
      RC_ASSERT(run(catalogue, runs[i])->rows == static_cast<std::int64_t>(found.size()));
    }
  });
  QVERIFY(holds);

  // And over several batches.
  auto writer = BenchWriter::begin(catalogue, file(), kAnn);
  std::vector<RunNumber> runs;
  runs.reserve(300);
  for (int i = 0; i < 300; ++i) runs.push_back(writer->beginRun({}));
  std::mt19937 random(7);
  std::vector<std::int64_t> counts(runs.size());
  for (int i = 0; i < 1'200'000; ++i) {
    const std::size_t at = random() % runs.size();
    writer->add(runs[at], {20, static_cast<double>(++counts[at])});
  }
  writer->keep();
  for (std::size_t i = 0; i < runs.size(); ++i) {
    std::int64_t expected = 0;
    readingsOf(catalogue, runs[i],
               [&](const RawReading& reading) { return reading.ohms == static_cast<double>(++expected); });
    QCOMPARE(expected, counts[i]);
  }
}

void BenchWriterTest::severalCurvesForAPartAndLot() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  importTwoRuns(catalogue);
  importTwoRuns(catalogue, std::string(64, 'c'));
  QCOMPARE(benchCurves(catalogue, SenderKey{"SN-102"}, "lot 9").size(), std::size_t{2});
  QCOMPARE(benchCurves(catalogue, SenderKey{"SN-102"}).size(), std::size_t{3});
}

void BenchWriterTest::aRunOfAnUnknownPartKeepsItsReadingsButHasNoCurve() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  auto writer = BenchWriter::begin(catalogue, file(), kAnn);
  const RunNumber run = writer->beginRun({"XX-9", "", "", {}, "", ""});
  const RunNumber spelt = writer->beginRun({"sn 102", "", "", {}, "", ""});
  const RunNumber none = writer->beginRun({});
  writer->add(run, {20, 700});
  QCOMPARE(writer->addCurve(run, table()).error().code, std::string("part-unknown"));
  QCOMPARE(writer->addCurve(none, table()).error().code, std::string("part-not-said"));
  QVERIFY(writer->addCurve(spelt, table()));
  writer->keep();
  QCOMPARE(readingsOf(catalogue, run).size(), std::size_t{1});
  QCOMPARE(benchCurves(catalogue, SenderKey{"SN-102"}, "").size(), std::size_t{1});
}

void BenchWriterTest::aCurveThatBreaksARuleLeavesNothingOfItself() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  auto writer = BenchWriter::begin(catalogue, file(), kAnn);
  const RunNumber run = writer->beginRun({"SN-102", "lot 9", "", {}, "", ""});
  writer->add(run, {20, 700});
  BenchCurve wrong = table();
  wrong.samples[1].ohms = ohms(0);
  QCOMPARE(writer->addCurve(run, wrong).error().code, std::string("curve-refused"));
  writer->keep();
  QVERIFY(!catalog::run(catalogue, run)->curve);
  QCOMPARE(benchCurves(catalogue, SenderKey{"SN-102"}, "lot 9").size(), std::size_t{0});
  QCOMPARE(catalogue.connection().database().execAndGet("SELECT count(*) FROM source WHERE kind = 'bench'").getInt(),
           0);
}

void BenchWriterTest::readingsByHand() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  BenchWriter writer = BenchWriter::byHand(catalogue, kAnn);
  const RunNumber run = writer.beginRun({"SN-102", "lot 9", "", {}, "", "three points"});
  writer.add(run, {0, 1500, kNotSaid, 0.05, 0.01, {}});
  QVERIFY(writer.addCurve(run, table()));
  QCOMPARE(writer.keep().id.value, std::int64_t{0});
  QVERIFY(imports(catalogue).empty());
  QVERIFY(!runs(catalogue).front().ofImport);
  QVERIFY(benchCurves(catalogue, SenderKey{"SN-102"}, "lot 9").front().source.citation.ends_with("entered by hand"));
  QVERIFY(removeRun(catalogue, run, "Ann"));
  QCOMPARE(benchCurves(catalogue, SenderKey{"SN-102"}, "lot 9").size(), std::size_t{0});
  QCOMPARE(count(catalogue, "bench_reading"), std::int64_t{0});
  const ImportRecord kept = importTwoRuns(catalogue);
  QCOMPARE(removeRun(catalogue, runsOfImport(catalogue, kept.id)[0].id, "Ann").error().code,
           std::string("run-of-import"));
}

void BenchWriterTest::aReaderIsRefused() {
  const test::Folder folder;
  test::smallCatalogue(folder.path("a"));
  Catalogue reader = Catalogue::open(folder.path("a"), Access::readOnly);
  QVERIFY_THROWS_EXCEPTION(CatalogueError, (void)BenchWriter::begin(reader, file(), kAnn));
  QVERIFY_THROWS_EXCEPTION(CatalogueError, (void)BenchWriter::byHand(reader, kAnn));
}

void BenchWriterTest::numbersOutOfRangeAreTheCallersMistake() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  auto writer = BenchWriter::begin(catalogue, file(), kAnn);
  const RunNumber run = writer->beginRun({});
  for (const RawReading& wrong : {RawReading{}, RawReading{-300, 5}, RawReading{20, 0}, RawReading{20, INFINITY},
                                  RawReading{20, 5, INFINITY}, RawReading{20, 5, 0, -1}})
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, writer->add(run, wrong));
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, writer->add({run.value + 1}, {20, 5}));
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, (void)BenchWriter::begin(catalogue, file("ABC"), kAnn));
}

void BenchWriterTest::howAFileIsReadIsRememberedWithTheFileOrNotAtAll() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a"));
  {
    auto writer = BenchWriter::begin(catalogue, file(), kAnn);
    writer->remember("3 columns; t,r,n", "the grey logger");
    writer->keep();
  }
  QCOMPARE(readingHabit(catalogue, "3 columns; t,r,n")->plan, file().plan);
  QCOMPARE(readingHabit(catalogue, "3 columns; t,r,n")->logger, std::string("the grey logger"));
  {
    BenchFile other = file(std::string(64, 'b'));
    other.plan = "other";
    auto writer = BenchWriter::begin(catalogue, other, kAnn);
    writer->remember("3 columns; t,r,n", "the blue logger");
    writer->keep();
  }
  QCOMPARE(readingHabit(catalogue, "3 columns; t,r,n")->plan, std::string("other"));
  {
    BenchFile left = file(std::string(64, 'c'));
    left.plan = "left";
    auto writer = BenchWriter::begin(catalogue, left, kAnn);
    writer->remember("3 columns; t,r,n", "nobody's");
  }
  QCOMPARE(readingHabit(catalogue, "3 columns; t,r,n")->plan, std::string("other"));
}

QTEST_APPLESS_MAIN(BenchWriterTest)
#include "tst_bench_writer.moc"
