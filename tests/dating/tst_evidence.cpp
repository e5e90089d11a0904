#include <dating/evidence.h>
#include <rapidcheck.h>
#include <QTest>
#include <cmath>
#include <numeric>
#include <sstream>

#include "reference_table.h"
#include "usual_layouts.h"

using namespace ohmkin;
using namespace ohmkin::dating;
using std::chrono::days;

namespace {

QString q(const std::string& text) { return QString::fromStdString(text); }

DatedCasting cast(std::string name, Date day, CastingRole role = CastingRole::head) {
  return {std::move(name), role, {}, {knownDay(day)}};
}

AssemblyStamp stamped(Date day, bool recut = false) { return {{knownDay(day)}, recut}; }

const Finding* find(const Posterior& p, std::string_view code) {
  const auto f = std::ranges::find(p.findings, code, &Finding::code);
  return f == p.findings.end() ? nullptr : &*f;
}

QString sentence(const Posterior& p, std::string_view code) {
  const Finding* f = find(p, code);
  return f == nullptr ? QString() : q(f->sentence);
}

Posterior solved(const Evidence& evidence) {
  const auto p = posterior(evidence);
  if (!p) throw std::runtime_error(p.error().sentence());
  return *p;
}

double total(const DayDistribution& d) { return std::accumulate(d.probability.begin(), d.probability.end(), 0.0); }

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) parts.push_back(part);
  return parts;
}

std::vector<Reading> readingsOf(const std::string& text) {
  std::vector<Reading> readings;
  for (const std::string& one : split(text, '|')) {
    const auto ends = split(split(one, '*').at(0), '/');
    Reading r;
    r.from = *parseDate(ends.at(0));
    r.until = *parseDate(ends.at(1));
    r.weight = std::stod(split(one, '*').at(1));
    readings.push_back(r);
  }
  return readings;
}

std::optional<Date> dayOrNone(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(*parseDate(text));
}

/// The beliefs of posterior_reference.py, set here so that neither follows the other's defaults.
Beliefs referenceBeliefs() {
  Beliefs b;
  b.castingToAssembly = {12, 0.9, 180, "reference"};
  b.assemblyToVehicle = {10, 0.91, 180, "reference"};
  b.firstEngine = 0.7;
  b.headStays = 0.97;
  b.blockStays = 0.995;
  b.stampTrue = 0.95;
  b.recutStampTrue = 0.4;
  return b;
}

Evidence scenario(const ohmkin::test::ReferenceTable& table, std::size_t row) {
  const auto text = [&](const std::string& column) { return table.text(row, column); };
  Evidence e;
  e.beliefs = referenceBeliefs();
  e.window = {*parseDate(text("window_from")), *parseDate(text("window_until"))};
  for (const std::string c : {"c1", "c2"}) {
    if (text(c + "_role").empty()) continue;
    e.castings.push_back({c,
                          text(c + "_role") == "block" ? CastingRole::block : CastingRole::head,
                          {dayOrNone(text(c + "_from")), dayOrNone(text(c + "_until"))},
                          readingsOf(text(c + "_readings"))});
  }
  if (!text("stamp_readings").empty())
    e.stamp = AssemblyStamp{readingsOf(text("stamp_readings")), text("pad_recut") == "1"};
  if (!text("vehicle_from").empty())
    e.vehicle.yearProduced = DateSpan{*parseDate(text("vehicle_from")), *parseDate(text("vehicle_until"))};
  return e;
}

bool close(double value, double expected) { return std::abs(value - expected) <= 1e-11 + 1e-8 * std::abs(expected); }

}  // namespace

class TestEvidence : public QObject {
  Q_OBJECT
 private slots:
  /// SciPy: every combination of casting fitted or changed, stamp true or false, engine first or not, enumerated one by
  /// one with dense lag matrices (tests/dating/posterior_reference.py, values in tests/data/dating-posterior.csv).
  void the_posterior_is_that_of_a_full_enumeration_data() {
    QTest::addColumn<int>("row");
    const ohmkin::test::ReferenceTable table("dating-posterior.csv");
    for (std::size_t i = 0; i < table.size(); ++i) QTest::newRow(table.text(i, "name").c_str()) << int(i);
  }
  void the_posterior_is_that_of_a_full_enumeration() {
    QFETCH(int, row);
    const ohmkin::test::ReferenceTable table("dating-posterior.csv");
    const auto i = static_cast<std::size_t>(row);
    const Posterior p = solved(scenario(table, i));
    const Date probe = *parseDate(table.text(i, "probe"));
    QCOMPARE(q(isoDate(p.assembly.mostProbable())), q(table.text(i, "assembly_mode")));
    QVERIFY(close(p.assembly.at(p.assembly.mostProbable()), table.number(i, "assembly_mode_p")));
    QVERIFY(close(p.assembly.at(probe), table.number(i, "assembly_probe_p")));
    QCOMPARE(p.firstEngine.has_value(), !table.blank(i, "first_engine"));
    if (p.firstEngine) QVERIFY(close(*p.firstEngine, table.number(i, "first_engine")));
    QVERIFY(close(p.castings.at(0).days.at(probe), table.number(i, "c1_probe_p")));
    for (std::size_t c = 0; c < p.castings.size(); ++c) {
      const std::string name = c == 0 ? "c1" : "c2";
      const DayDistribution& cast = p.castings[c].days;
      QCOMPARE(q(isoDate(cast.mostProbable())), q(table.text(i, name + "_mode")));
      QVERIFY(close(cast.at(cast.mostProbable()), table.number(i, name + "_mode_p")));
      QVERIFY(close(p.castings[c].fittedAtAssembly, table.number(i, name + "_fitted")));
    }
  }
  /// Hand-worked: one head of known day, nothing else. Assembly k days later has probability stays·lag(k) + (1 −
  /// stays)/N.
  void one_known_casting_is_followed_by_its_lag() {
    Evidence e;
    e.window = {date(1960, 1, 1), date(1970, 1, 1)};
    e.castings = {cast("head", date(1964, 2, 29))};
    const Posterior p = solved(e);
    const std::vector<double> lag = dayProbabilities(e.beliefs.castingToAssembly);
    const double everywhere = 0.03 / 3653;
    for (const int k : {0, 1, 12, 55, 180})
      QVERIFY(close(p.assembly.at(date(1964, 2, 29) + days{k}), 0.97 * lag[static_cast<std::size_t>(k)] + everywhere));
    QVERIFY(close(p.assembly.at(date(1964, 2, 28)), everywhere));
    QVERIFY(close(p.assembly.at(date(1964, 2, 29) + days{181}), everywhere));
  }
  /// General trade knowledge from memory, no source: median 12 days, 5 % by 3, 95 % by 55; median 10, 5 % by 2, 95 %
  /// by 45.
  void usual_lags_are_those_of_the_trade() {
    const auto quantile = [](const Lag& lag, double q) {
      double passed = 0;
      int k = -1;
      for (const double p : dayProbabilities(lag))
        if (++k, passed += p; passed >= q) break;
      return k;
    };
    const Beliefs b;
    QCOMPARE(quantile(b.castingToAssembly, 0.5), 12);
    QVERIFY(std::abs(quantile(b.castingToAssembly, 0.05) - 3) <= 1);
    QVERIFY(std::abs(quantile(b.castingToAssembly, 0.95) - 55) <= 3);
    QCOMPARE(quantile(b.assemblyToVehicle, 0.5), 10);
    QVERIFY(std::abs(quantile(b.assemblyToVehicle, 0.05) - 2) <= 1);
    QVERIFY(std::abs(quantile(b.assemblyToVehicle, 0.95) - 45) <= 2);
    QVERIFY(q(b.source).contains("from memory, no source"));
  }

  void the_decade_comes_from_the_production_span() {
    Evidence e;
    e.window = {date(1950, 1, 1), date(2000, 1, 1)};
    const auto code = decode(dating::test::usualLayout("letter-day-digit"), "C145", {e.window});
    QVERIFY(code);
    e.castings = {{"left head", CastingRole::head, {date(1972, 8, 1), date(1979, 1, 1)}, code->readings}};
    const Posterior p = solved(e);
    QCOMPARE(p.castings[0].days.mostProbable(), date(1975, 3, 14));
    QCOMPARE(p.castings[0].decades.front().decade, 1970);
    QVERIFY(p.castings[0].decades.front().probability > 0.999);
    QVERIFY(q(eraSummary(p.castings[0].days)).startsWith("1970s (over 99 %), most probably 14 Mar 1975"));
    QVERIFY(!p.conflict && !p.firstEngine);
    // Without the span every decade remains, alike for the plain reading.
    e.castings[0].produced = {};
    const Posterior open = solved(e);
    QCOMPARE(open.castings[0].decades.size(), std::size_t(5));
    QVERIFY(open.castings[0].decades.front().probability < 0.3);
    // The vehicle settles it too.
    e.vehicle.built = date(1965, 4, 20);
    QCOMPARE(solved(e).castings[0].days.mostProbable(), date(1965, 3, 14));
    QVERIFY(*solved(e).firstEngine > 0.9);
  }

  /// Common practice, no source: a vehicle of one year with an engine eleven years younger.
  void an_engine_eleven_years_younger_is_a_later_one() {
    Evidence e;
    e.vehicle.built = date(1970, 4, 2);
    e.castings = {cast("left head", date(1981, 3, 20)), cast("right head", date(1981, 3, 22))};
    const Posterior p = solved(e);
    QVERIFY(*p.firstEngine < 0.005);
    QVERIFY2(sentence(p, "later-engine")
                 .contains("head was cast eleven years after the vehicle was built: the engine is a later one (chance"),
             qPrintable(sentence(p, "later-engine")));
    QCOMPARE(p.decades.front().decade, 1980);
    QVERIFY(!p.conflict);  // nothing disagrees: the engine simply came later
  }
  void a_year_digit_alone_does_not_tell_older_from_younger() {
    Evidence e;
    e.window = {date(1950, 1, 1), date(2000, 1, 1)};
    e.vehicle.built = date(1970, 4, 2);
    e.castings = {{"left head",
                   CastingRole::head,
                   {},
                   decode(dating::test::usualLayout("letter-day-digit"), "H225", {e.window})->readings}};
    const Posterior p = solved(e);
    QVERIFY(
        sentence(p, "another-engine").contains("whether this one is older or younger than the vehicle is not settled"));
    QVERIFY(sentence(p, "casting-era").endsWith("not settled."));
    e.castings[0].produced = {date(1972, 1, 1), date(1990, 1, 1)};  // 1975 or 1985: later, whichever
    const Posterior later = solved(e);
    QVERIFY2(sentence(later, "later-engine")
                 .startsWith("The left head was cast after the vehicle was built: the engine is a later one"),
             qPrintable(sentence(later, "later-engine")));
  }
  void an_engine_from_an_older_vehicle_is_told() {
    Evidence e;
    e.vehicle.year = ModelYear{1977};
    e.castings = {cast("block", date(1969, 11, 3), CastingRole::block)};
    const Posterior p = solved(e);
    QVERIFY(*p.firstEngine < 0.02);
    QVERIFY2(
        sentence(p, "earlier-engine")
            .startsWith(
                "The block was cast seven years before the vehicle was built: the engine came out of an older one"),
        qPrintable(sentence(p, "earlier-engine")));
  }
  void a_matching_engine_is_very_likely_the_first() {
    Evidence e;
    e.vehicle.built = date(1971, 8, 22);
    e.castings = {cast("left head", date(1971, 7, 20)), cast("right head", date(1971, 7, 26)),
                  cast("block", date(1971, 7, 1), CastingRole::block)};
    e.stamp = stamped(date(1971, 8, 9));
    const Posterior p = solved(e);
    QVERIFY(*p.firstEngine > 0.99);
    QVERIFY(sentence(p, "first-engine").contains("very likely the vehicle's first engine"));
    QVERIFY(!p.conflict);
    QVERIFY(find(p, "heads-apart") == nullptr);
    QCOMPARE(p.assembly.mostProbable(), date(1971, 8, 9));
  }
  void one_changed_head_does_not_make_another_engine() {
    Evidence e;
    e.vehicle.built = date(1971, 8, 22);
    e.castings = {cast("left head", date(1971, 7, 20)), cast("right head", date(1980, 1, 15)),
                  cast("block", date(1971, 7, 1), CastingRole::block)};
    e.stamp = stamped(date(1971, 8, 9));
    const Posterior p = solved(e);
    QVERIFY(*p.firstEngine > 0.9);
    QVERIFY(p.castings[1].fittedAtAssembly < 0.01);
    QVERIFY2(sentence(p, "heads-apart")
                 .contains("The heads were cast eight years apart: one was changed, more likely the right head"),
             qPrintable(sentence(p, "heads-apart")));
    QVERIFY(sentence(p, "casting-changed")
                .startsWith("The right head was cast eight years after the vehicle was built: it was changed"));
    QCOMPARE(p.castings[1].days.mostProbable(), date(1980, 1, 15));  // the sender's thread goes by this head's own date
  }

  void heads_more_than_sixty_days_apart_are_not_a_pair() {
    const auto apart = [](int n) {
      Evidence e;
      e.castings = {cast("left head", date(1972, 1, 1)), cast("right head", date(1972, 1, 1) + days{n})};
      return solved(e);
    };
    QVERIFY(find(apart(60), "heads-apart") == nullptr);
    QVERIFY(find(apart(61), "heads-apart") != nullptr);
    QVERIFY(find(apart(-61), "heads-apart") != nullptr);
    QVERIFY(sentence(apart(61), "heads-apart").contains("the dates do not say which"));
    // A block so far from a head is nothing unusual.
    Evidence e;
    e.castings = {cast("left head", date(1972, 1, 1)), cast("block", date(1972, 3, 20), CastingRole::block)};
    QVERIFY(find(solved(e), "heads-apart") == nullptr);
  }
  void heads_are_compared_in_the_same_decade() {
    Evidence e;
    e.window = {date(1950, 1, 1), date(2000, 1, 1)};
    const auto layout = dating::test::usualLayout("letter-day-digit");
    e.castings = {{"left head", CastingRole::head, {}, decode(layout, "L289", {e.window})->readings},
                  {"right head", CastingRole::head, {}, decode(layout, "A40", {e.window})->readings}};
    QVERIFY(find(solved(e), "heads-apart") == nullptr);  // 28 Dec 19x9 and 4 Jan of the next year
  }

  void a_casting_after_the_stamp_is_a_conflict() {
    Evidence e;
    e.castings = {cast("left head", date(1972, 2, 13))};
    e.stamp = stamped(date(1972, 2, 12));
    const Posterior p = solved(e);
    QVERIFY(p.conflict);
    QCOMPARE(q(p.conflict->one), QString("left head"));
    QCOMPARE(q(p.conflict->other), QString("assembly stamp"));
    QVERIFY(sentence(p, "casting-after-assembly")
                .startsWith("The left head was cast one day after the engine was assembled."));
    QCOMPARE(sentence(p, "dates-conflict"), QString("No date fits both the left head and the assembly stamp."));
    e.stamp = stamped(date(1972, 2, 13));
    QVERIFY(!solved(e).conflict);
    // At the other end: as long as castings lie about, and a day longer.
    e.stamp = stamped(date(1972, 2, 13) + days{180});
    QVERIFY(!solved(e).conflict);
    e.stamp = stamped(date(1972, 2, 13) + days{181});
    QVERIFY(find(solved(e), "casting-long-before-assembly") != nullptr);
  }
  void the_two_facts_that_disagree_are_named() {
    Evidence e;
    e.castings = {cast("left head", date(1972, 1, 20)), cast("block", date(1965, 5, 5), CastingRole::block)};
    e.stamp = stamped(date(1972, 2, 12));
    const Posterior p = solved(e);
    QVERIFY(p.conflict);
    QCOMPARE(q(p.conflict->one), QString("left head"));
    QCOMPARE(q(p.conflict->other), QString("block"));
    QVERIFY(find(p, "castings-disagree") != nullptr);
    QVERIFY(p.castings[1].fittedAtAssembly < 0.01);
  }
  void a_code_outside_its_casting_numbers_span_is_a_conflict() {
    Evidence e;
    e.castings = {cast("left head", date(1972, 1, 20))};
    e.castings[0].produced = {date(1974, 1, 1), date(1979, 1, 1)};
    const Posterior p = solved(e);
    QVERIFY(p.conflict);
    QCOMPARE(q(p.conflict->one), QString("date code of the left head"));
    QCOMPARE(q(p.conflict->other), QString("production span of the left head"));
    QVERIFY(p.castings[0].days.empty() && p.assembly.empty());
    e.castings[0].produced.from = date(1972, 1, 20);
    QVERIFY(!solved(e).conflict);
    e.castings[0].produced = {{}, date(1972, 1, 20)};  // half-open: the last day is the one before
    QVERIFY(solved(e).conflict);
  }
  /// Common practice, no source: castings outrank stamps, and a re-cut pad weighs less still.
  void a_recut_pad_weighs_less_than_a_casting() {
    Evidence e;
    e.castings = {cast("head", date(1976, 5, 1))};
    e.stamp = stamped(date(1971, 3, 1));
    const DateSpan byCasting{date(1976, 5, 1), date(1977, 1, 1)};
    const double sound = solved(e).assembly.within(byCasting);
    e.stamp->padRecut = true;
    const Posterior recut = solved(e);
    QVERIFY(recut.assembly.within(byCasting) > 0.9);
    QVERIFY(recut.assembly.within(byCasting) > sound);
    QVERIFY(sound > 0.5);
    QVERIFY(sentence(recut, "casting-after-assembly").contains("The pad was re-cut, so the casting counts for more."));
  }
  void a_casting_before_the_model_year_is_normal() {
    Evidence e;
    e.vehicle.year = ModelYear{1970};
    e.castings = {cast("left head", date(1969, 6, 10))};
    QVERIFY(sentence(solved(e), "casting-before-model-year").contains("normal for early ones"));
    QVERIFY(*solved(e).firstEngine > 0.9);
    e.castings = {cast("left head", date(1969, 7, 1) - days{150})};
    QVERIFY(find(solved(e), "casting-before-model-year") != nullptr);
    e.castings = {cast("left head", date(1969, 7, 1) - days{151})};
    QVERIFY(find(solved(e), "casting-before-model-year") == nullptr);
    QVERIFY(find(solved(e), "casting-well-before-model-year") != nullptr);
    e.castings = {cast("left head", date(1969, 7, 1))};
    QVERIFY(find(solved(e), "casting-before-model-year") == nullptr);
    e.vehicle.built = date(1971, 3, 1);
    QVERIFY(find(solved(e), "built-outside-model-year") != nullptr);
  }
  void nothing_known_gives_nothing() {
    const Posterior p = solved({});
    QVERIFY(p.assembly.empty() && p.decades.empty() && !p.firstEngine && !p.conflict && p.findings.empty());
    Evidence vehicleOnly;
    vehicleOnly.vehicle.built = date(1971, 8, 22);
    const Posterior v = solved(vehicleOnly);
    QVERIFY(!v.firstEngine && !v.assembly.empty());
    Evidence unread;
    unread.castings = {{"left head", CastingRole::head, {}, {}}};
    QVERIFY(solved(unread).castings[0].days.empty());
  }
  void shares_and_decades_sum_to_one() {
    QVERIFY(rc::check("probabilities sum to 1", [] {
      const auto day = [] { return date(1950, 1, 1) + days{*rc::gen::inRange(0, 18000)}; };
      Evidence e;
      e.window = {date(1949, 1, 1), date(2001, 1, 1)};
      for (int i = *rc::gen::inRange(0, 4); i > 0; --i) {
        DatedCasting c =
            cast("casting " + std::to_string(i), day(), *rc::gen::element(CastingRole::head, CastingRole::block));
        if (*rc::gen::arbitrary<bool>()) c.readings.push_back(knownDay(day()));
        e.castings.push_back(std::move(c));
      }
      if (*rc::gen::arbitrary<bool>()) e.stamp = stamped(day(), *rc::gen::arbitrary<bool>());
      if (*rc::gen::arbitrary<bool>()) e.vehicle.built = day();
      const Posterior p = solved(e);
      if (!p.assembly.empty()) RC_ASSERT(std::abs(total(p.assembly) - 1) < 1e-9);
      double decades = 0;
      for (const DecadeShare& d : p.decades) decades += d.probability;
      if (!p.assembly.empty()) RC_ASSERT(std::abs(decades - 1) < 1e-6);
      for (const CastingPosterior& c : p.castings) {
        RC_ASSERT(std::abs(total(c.days) - 1) < 1e-9);
        RC_ASSERT(c.fittedAtAssembly >= 0 && c.fittedAtAssembly <= 1);
      }
      if (p.firstEngine) RC_ASSERT(*p.firstEngine >= 0 && *p.firstEngine <= 1);
    }));
  }
  void malformed_evidence_is_refused() {
    const auto code = [](const Evidence& e) {
      const auto p = posterior(e);
      return p ? QString("taken") : q(p.error().code);
    };
    Evidence e;
    e.beliefs.headStays = 1.2;
    QCOMPARE(code(e), QString("share-out-of-range"));
    e.beliefs.headStays = std::nan("");
    QCOMPARE(code(e), QString("share-out-of-range"));
    e = {};
    e.beliefs.castingToAssembly.median = 0;
    QCOMPARE(code(e), QString("lag-out-of-range"));
    e = {};
    e.beliefs.assemblyToVehicle.longest = 1 << 30;
    QCOMPARE(code(e), QString("lag-out-of-range"));
    e = {};
    e.castings = {cast("head", date(1972, 1, 1))};
    e.castings[0].readings[0].weight = -1;
    QCOMPARE(code(e), QString("reading-malformed"));
    e = {};
    e.castings = {{"head", CastingRole::head, {date(1975, 1, 1), date(1970, 1, 1)}, {}}};
    QCOMPARE(code(e), QString("dates-reversed"));
    e = {};
    e.castings.assign(33, cast("head", date(1972, 1, 1)));
    QCOMPARE(code(e), QString("castings-too-many"));
    e = {};
    e.vehicle.year = ModelYear{2'000'000'000};
    QCOMPARE(code(e), QString("year-out-of-range"));
    e.vehicle.year = ModelYear{1850};
    QCOMPARE(code(e), QString("vehicle-outside-dates"));
    e = {};
    e.window = {date(1980, 1, 1), date(1970, 1, 1)};
    QCOMPARE(code(e), QString("dates-reversed"));
  }
};

QTEST_APPLESS_MAIN(TestEvidence)
#include "tst_evidence.moc"
