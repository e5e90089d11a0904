#include <dating/conflicts.h>
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <limits>

namespace ohmkin::dating {

using std::chrono::days;

namespace {

/// Runs that touch made one; they come in order.
std::vector<Days> joined(const std::vector<Days>& runs) {
  std::vector<Days> fewer;
  for (const Days& run : runs) {
    if (!fewer.empty() && run.from <= fewer.back().until) fewer.back().until = std::max(fewer.back().until, run.until);
    else fewer.push_back(run);
  }
  return fewer;
}

/// Readings at least half as likely as the best.
std::vector<Days> likelyDays(const std::vector<Reading>& readings) {
  double best = 0;
  for (const Reading& reading : readings) best = std::max(best, reading.weight);
  std::vector<Days> likely;
  for (const Reading& reading : readings)
    if (reading.weight > 0 && reading.weight >= best / 2) likely.push_back({reading.from, reading.until});
  std::ranges::sort(likely, {}, &Days::from);
  return joined(likely);
}

std::vector<Days> inside(const std::vector<Days>& spans, const DateSpan& limit) {
  std::vector<Days> kept;
  for (Days span : spans) {
    if (limit.from) span.from = std::max(span.from, *limit.from);
    if (limit.until) span.until = std::min(span.until, *limit.until);
    if (span.from < span.until) kept.push_back(span);
  }
  return kept;
}

/// Assembly days the fact allows.
std::vector<Days> assemblyDays(const Fact& fact) {
  std::vector<Days> runs = fact.said;
  for (Days& run : runs) run.until += days{fact.lag};
  return joined(runs);
}

std::vector<Days> common(const std::vector<Days>& one, const std::vector<Days>& other) {
  std::vector<Days> both;
  for (std::size_t i = 0, j = 0; i < one.size() && j < other.size();) {
    const Days shared{std::max(one[i].from, other[j].from), std::min(one[i].until, other[j].until)};
    if (shared.from < shared.until) both.push_back(shared);
    one[i].until < other[j].until ? ++i : ++j;
  }
  return both;
}

long count(const std::vector<Days>& spans) {
  long total = 0;
  for (const Days& span : spans) total += (span.until - span.from).count();
  return total;
}

}  // namespace

bool codeOutsideSpan(const DatedCasting& casting) {
  return !casting.readings.empty() && inside(likelyDays(casting.readings), casting.produced).empty();
}

std::vector<Fact> factsOf(const Evidence& evidence, const Days& window) {
  std::vector<Fact> facts;
  const DateSpan all{window.from, window.until};
  const auto add = [&](Fact fact) {
    fact.said = inside(fact.said, all);
    if (!fact.said.empty()) facts.push_back(std::move(fact));
  };
  for (std::size_t i = 0; i < evidence.castings.size(); ++i) {
    const DatedCasting& casting = evidence.castings[i];
    Fact fact{casting.name, i, {}, evidence.beliefs.castingToAssembly.longest};
    if (!casting.readings.empty()) fact.said = inside(likelyDays(casting.readings), casting.produced);
    else if (casting.produced != DateSpan{}) fact.said = inside({window}, casting.produced);
    add(std::move(fact));
  }
  if (evidence.stamp) add({"assembly stamp", {}, likelyDays(evidence.stamp->readings), 0});
  return facts;
}

NearestDays nearest(const Fact& one, const Fact& other, Date about) {
  const auto apart = [](const NearestDays& pair) { return std::abs(std::int64_t{(pair.one - pair.other).count()}); };
  std::vector<NearestDays> pairs;
  // Both in order: of two runs, the one that ends first can come no nearer to what follows the other.
  for (std::size_t i = 0, j = 0; i < one.said.size() && j < other.said.size();) {
    const Days& a = one.said[i];
    const Days& b = other.said[j];
    const Date start = std::max(a.from, b.from);
    pairs.push_back({std::min(start, a.until - days{1}), std::min(start, b.until - days{1})});
    a.until < b.until ? ++i : ++j;
  }
  const std::int64_t least = apart(*std::ranges::min_element(pairs, {}, apart));
  // A leap day between them makes the same two codes a day further apart in some decades.
  std::erase_if(pairs, [&](const NearestDays& pair) { return apart(pair) > least + 1; });
  return *std::ranges::min_element(pairs, {},
                                   [&](const NearestDays& pair) { return std::abs((pair.one - about).count()); });
}

std::vector<std::pair<std::size_t, std::size_t>> disagreements(const std::vector<Fact>& facts) {
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  std::vector<std::vector<Days>> allowed;
  allowed.reserve(facts.size());
  for (const Fact& fact : facts) allowed.push_back(assemblyDays(fact));
  std::pair<std::size_t, std::size_t> tightest{0, 0};
  long fewest = std::numeric_limits<long>::max();
  for (std::size_t i = 0; i < facts.size(); ++i)
    for (std::size_t j = i + 1; j < facts.size(); ++j) {
      const long agreed = count(common(allowed[i], allowed[j]));
      if (agreed == 0) pairs.emplace_back(i, j);
      if (agreed < fewest) {
        fewest = agreed;
        tightest = {i, j};
      }
    }
  if (!pairs.empty() || facts.size() < 3) return pairs;
  std::vector<Days> joint = allowed.front();
  for (const std::vector<Days>& runs : allowed) joint = common(joint, runs);
  if (joint.empty()) pairs.push_back(tightest);
  return pairs;
}

}  // namespace ohmkin::dating
