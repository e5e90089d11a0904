#include <dating/calendar.h>
#include <dating/model_year.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::dating {
namespace {

DateSpan overlap(const DateSpan& a, const DateSpan& b) {
  DateSpan both = a;
  if (b.from && (!both.from || *both.from < *b.from)) both.from = b.from;
  if (b.until && (!both.until || *b.until < *both.until)) both.until = b.until;
  return both;
}

/// Days in a span that is closed at both ends.
double days(const DateSpan& span) {
  return span.from && span.until ? std::max(0.0, static_cast<double>((*span.until - *span.from).count())) : 0;
}

std::string plainDays(Date from, Date until) {
  const Date last = until - std::chrono::days{1};
  return from == last ? plainDate(from) : fmt::format("{} to {}", plainDate(from), plainDate(last));
}

}  // namespace

DateSpan usualProduction(ModelYear year) { return {date(year.value - 1, 7, 1), date(year.value, 9, 1)}; }

std::vector<ModelYear> modelYearsBuiltOn(Date day) {
  const int year = parts(day).year;
  std::vector<ModelYear> built;
  for (const int candidate : {year, year + 1})
    if (usualProduction(ModelYear{candidate}).holds(day)) built.push_back(ModelYear{candidate});
  return built;
}

std::vector<VariantShare> variantsOf(std::span<const DateSpan> variants, const DateSpan& produced,
                                     std::optional<Date> built) {
  std::vector<VariantShare> shares;
  double total = 0;
  for (std::size_t i = 0; i < variants.size(); ++i) {
    const double weight = built ? (variants[i].holds(*built) ? 1 : 0) : days(overlap(variants[i], produced));
    if (weight > 0) shares.push_back({i, weight});
    total += weight;
  }
  for (VariantShare& share : shares) share.probability /= total;
  return shares;
}

std::optional<Date> changeover(const DateSpan& earlier, const DateSpan& later) {
  if (!earlier.until || !later.from || *earlier.until != *later.from) return {};
  return later.from;
}

std::vector<Finding> coverage(std::span<const DateSpan> variants, const DateSpan& produced) {
  std::vector<DateSpan> spans;
  for (const DateSpan& variant : variants)
    if (const DateSpan within = overlap(variant, produced); days(within) > 0) spans.push_back(within);
  std::ranges::sort(spans, {}, [](const DateSpan& span) { return *span.from; });
  std::vector<Finding> findings;
  if (!produced.from || !produced.until) return findings;
  Date covered = *produced.from;
  const auto gap = [&](Date from, Date until) {
    findings.push_back({"model-year-gap", Severity::caution,
                        fmt::format("Nothing is recorded for vehicles built {}.", plainDays(from, until)),
                        "build-date spans of the variants", "your catalogue"});
  };
  for (const DateSpan& span : spans) {
    if (covered < *span.from) gap(covered, *span.from);
    if (*span.from < covered)
      findings.push_back(
          {"model-year-overlap", Severity::caution,
           fmt::format("Two variants claim vehicles built {}.", plainDays(*span.from, std::min(covered, *span.until))),
           "build-date spans of the variants", "your catalogue"});
    covered = std::max(covered, *span.until);
  }
  if (covered < *produced.until) gap(covered, *produced.until);
  return findings;
}

}  // namespace ohmkin::dating
