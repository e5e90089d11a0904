#include "demo_catalogue.h"

#include <catalog/engines.h>
#include <catalog/sender_groups.h>
#include <catalog/vehicles.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <workflow/match.h>
#include <QTest>
#include <limits>
#include <random>

using namespace ohmkin;
using workflow::Answer;
using workflow::Branch;
using workflow::Candidate;
using workflow::MatchOptions;
using workflow::Question;

namespace {

constexpr std::size_t kAll = std::numeric_limits<int>::max();

/// The demo catalogue with many more parts: drawn kinds, families, joints and lengths, so few of each that there are
/// groups of one and of dozens; superseded, on the shelf, measured and original ones among them.
class Crowded {
 public:
  Crowded(const std::filesystem::path& file, unsigned seed, int parts) : random_(seed) {
    sqlite3_open(file.c_str(), &handle_);
    run("BEGIN");
    const auto families = column("SELECT id FROM family");
    const auto threads = column("SELECT id FROM thread");
    const auto terminals = column("SELECT id FROM terminal");
    const auto lines = column("SELECT id FROM vehicle_line");
    const auto engines = column("SELECT id FROM engine_family");
    const std::vector<std::string> kinds{"variable sender", "variable sender",         "variable sender",
                                         "fan switch",      "sender with lamp switch", "pulsing contact"};
    const std::vector<std::string> lengths{"NULL", "12.5", "24", "61"};
    for (int i = 0; i < parts; ++i) {
      const std::string number =
          fmt::format("{}-{:05}", static_cast<char>('A' + below(26)), below(90'000) * 10 + i % 10);
      const std::string kind = of(kinds);
      const bool without = kind == "fan switch" || kind == "pulsing contact" || below(30) == 0;
      run(
          fmt::format("INSERT OR IGNORE INTO sender SELECT '{}', 'drawn', '{}', {}, '{}', '{}', {}, 19, {}, '{}', {}, "
                      "{}, id, 'shop' FROM source LIMIT 1",
                      number, kind, without ? "NULL" : "'" + of(families) + "'", of(threads), of(terminals),
                      of(lengths), below(2) == 0 ? "NULL, NULL" : "15, 20", below(9) == 0 ? "two-wire" : "case",
                      1940 + below(20), 1961 + below(30)));
      if (below(3) == 0)
        run(fmt::format("INSERT OR IGNORE INTO stock VALUES ('{}', 'B{}', {}, 0, 'shop')", number, below(9), below(3)));
      if (below(40) == 0 && kind == "variable sender")
        run(
            fmt::format("INSERT INTO curve SELECT 'drawn {0}', NULL, '{1}', 'L{0}', model, coefficients, covariance, "
                        "floor, valid_low, valid_high, source, 'shop' FROM curve WHERE model <> 'table' AND family IS "
                        "NOT NULL LIMIT 1 OFFSET {2}",
                        i, number, below(3)));
      if (below(6) == 0) {
        const int year = 1955 + below(35);
        run(
            fmt::format("INSERT OR IGNORE INTO original_sender (sender, line, engine, year_from, year_until, source, "
                        "pack) SELECT '{}', '{}', '{}', {}, {}, id, 'shop' FROM source LIMIT 1",
                        number, of(lines), of(engines), year, year + 1 + below(5)));
      }
      if (below(4) == 0 && !last_.empty() && last_ < number)
        run(fmt::format("INSERT OR IGNORE INTO stands_in_for SELECT '{}', '{}', '1980', id, 'shop' FROM source LIMIT 1",
                        number, last_));
      last_ = number;
    }
    run("COMMIT");
  }
  ~Crowded() { sqlite3_close(handle_); }
  Crowded(const Crowded&) = delete;
  Crowded& operator=(const Crowded&) = delete;

  std::vector<std::string> column(const char* sql) {
    std::vector<std::string> all;
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(handle_, sql, -1, &statement, nullptr) != SQLITE_OK) qFatal("%s", sqlite3_errmsg(handle_));
    while (sqlite3_step(statement) == SQLITE_ROW)
      all.emplace_back(reinterpret_cast<const char*>(sqlite3_column_text(statement, 0)));
    sqlite3_finalize(statement);
    return all;
  }
  int below(int n) { return std::uniform_int_distribution(0, n - 1)(random_); }
  const std::string& of(const std::vector<std::string>& all) {
    return all[static_cast<std::size_t>(below(static_cast<int>(all.size())))];
  }

 private:
  void run(const std::string& sql) {
    if (sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK)
      qFatal("%s: %s", sql.c_str(), sqlite3_errmsg(handle_));
  }
  std::mt19937 random_;
  sqlite3* handle_ = nullptr;
  std::string last_;
};

/// All that is said of a candidate and orders it.
std::string said(const Candidate& c) {
  std::string text = fmt::format("{} lot {} rank {} {} {} {} {} {} parts {} replaced {} shelf {} fitted {} | {} |",
                                 c.part, c.lot, static_cast<int>(c.rank), c.kind, c.family, c.thread, c.terminal,
                                 c.measured, fmt::format("{}", fmt::join(c.partsNeeded, ",")), c.replacedBy,
                                 c.shelf.size(), c.fittedNow, c.sentence);
  for (const auto* words : {&c.electrical.words, &c.plug.words, &c.screw.words, &c.link.basisText})
    text += *words + "|";
  for (const Finding& finding : c.findings) text += finding.code + ": " + finding.sentence + "|";
  return text;
}

}  // namespace

/// Where very many senders could go there the best are found by groups judged alike. Held against judging every one of
/// them, on catalogues drawn at random.
class TestMatchMany : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

  std::filesystem::path crowded(unsigned seed, int parts, std::vector<Question>* questions) {
    const auto file = demo_.beside(fmt::format("{}.ohmkin", seed).c_str());
    std::filesystem::copy_file(demo_.file(), file, std::filesystem::copy_options::overwrite_existing);
    Crowded crowd(file, seed, parts);
    const auto castings = crowd.column("SELECT DISTINCT casting FROM port");
    const auto gauges = crowd.column("SELECT id FROM gauge");
    const auto threads = crowd.column("SELECT id FROM thread");
    const auto terminals = crowd.column("SELECT id FROM terminal");
    const auto senders = crowd.column("SELECT id FROM sender");
    const auto engines = crowd.column("SELECT id FROM engine_family");
    for (int i = 0; i < 24; ++i) {
      Question question;
      if (i % 3 == 0) {
        question.line = "ridgeway utility";
        question.year = ModelYear{1967 + crowd.below(5)};
      } else if (i % 8 != 1) {
        question.gauge = crowd.of(gauges);
      }
      if (i % 4 == 1) question.portThread = crowd.of(threads);
      else if (i % 4 == 2) question.engine = crowd.of(engines);
      else if (i % 4 == 3) question.casting = crowd.of(castings);
      if (crowd.below(3) == 0) question.terminal = crowd.of(terminals);
      if (crowd.below(5) == 0) question.fitted = crowd.of(senders);
      questions->push_back(question);
    }
    return file;
  }

 private slots:
  void the_list_is_the_beginning_of_the_whole_list_data() {
    QTest::addColumn<unsigned>("seed");
    QTest::addColumn<int>("parts");
    QTest::newRow("few of each") << 1U << 400;
    QTest::newRow("some of each") << 2U << 1500;
    QTest::newRow("many of each") << 3U << 6000;
  }
  void the_list_is_the_beginning_of_the_whole_list() {
    QFETCH(unsigned, seed);
    QFETCH(int, parts);
    std::vector<Question> questions;
    const auto file = crowded(seed, parts, &questions);
    const auto catalogue = catalog::Catalogue::openToRead(file);
    std::size_t cut = 0;
    for (const Question& question : questions) {
      const auto whole =
          workflow::match(catalogue, question, MatchOptions{.limits = {}, .units = {}, .mostListed = kAll});
      for (const std::size_t most : {1U, 9U, 100U, 700U}) {
        const auto some =
            workflow::match(catalogue, question, MatchOptions{.limits = {}, .units = {}, .mostListed = most});
        QCOMPARE(some.has_value(), whole.has_value());
        if (!some) continue;
        QCOMPARE(some->answered(), whole->answered());
        QCOMPARE(some->look.has_value(), whole->look.has_value());
        if (some->look) {
          QCOMPARE(some->look->what, whole->look->what);
          QCOMPARE(QString::fromStdString(some->look->because), QString::fromStdString(whole->look->because));
          QVERIFY(std::abs(some->look->gain - whole->look->gain) < 1e-9);
        }
        QCOMPARE(some->branches.size(), whole->branches.size());
        for (std::size_t b = 0; b < whole->branches.size(); ++b) {
          const Branch& short_ = some->branches[b];
          const Branch& long_ = whole->branches[b];
          QCOMPARE(short_.considered, long_.considered);
          QCOMPARE(long_.notListed, std::size_t{0});
          QCOMPARE(short_.ranked.size() + short_.notListed, long_.ranked.size());
          if (short_.notListed > 0) ++cut;
          std::size_t in = 0;
          for (const Candidate& candidate : short_.ranked) {
            if (in < most || short_.notListed == 0) QCOMPARE(said(candidate), said(long_.ranked[in]));
            else QVERIFY(candidate.fittedNow);
            ++in;
          }
          const auto fitted = [](const Branch& branch) {
            std::vector<std::string> all;
            for (const Candidate& candidate : branch.ranked)
              if (candidate.fittedNow) all.push_back(said(candidate));
            return all;
          };
          QCOMPARE(fitted(short_), fitted(long_));
        }
      }
    }
    QVERIFY(cut > questions.size());
  }

  /// Numbers counted by SQLite itself.
  void groups_are_every_sender_once() {
    std::vector<Question> questions;
    const auto file = crowded(4, 3000, &questions);
    const auto catalogue = catalog::Catalogue::openToRead(file);
    Crowded look(file, 0, 0);
    std::size_t senders = 0, groups = 0;
    for (const std::string& thread : look.column("SELECT id FROM thread"))
      for (const auto& group : catalog::senderGroups(catalogue, catalog::ThreadKey{thread})) {
        senders += group.senders;
        ++groups;
      }
    QCOMPARE(std::to_string(senders), look.column("SELECT count(*) FROM sender").front());
    QCOMPARE(std::to_string(groups),
             look.column("SELECT count(*) FROM (SELECT DISTINCT thread, family, kind, terminal, grounding, reach, hex, "
                         "torque_low, torque_high FROM sender)")
                 .front());
  }
};

QTEST_APPLESS_MAIN(TestMatchMany)
#include "tst_match_many.moc"
