#pragma once
#include <finding/finding.h>
#include <quantity/date.h>
#include <span>
#include <string>
#include <vector>

/// A model year is not a calendar year.
namespace ohmkin::dating {

/// Days on which a model year is usually built: from 1 July of the year before up to 1 September of the year itself, so
/// that neighbours overlap by two months. Common practice, no source; where a maker's own dates are known, use those.
DateSpan usualProduction(ModelYear year);

/// Model years that may have been built on this day, earlier first: one, or two in late summer.
std::vector<ModelYear> modelYearsBuiltOn(Date day);

/// One of several variants of a model year, by build date: "before 1 Feb 1974", "from then on".
struct VariantShare {
  std::size_t variant = 0;  ///< index into the spans given
  double probability = 0;   ///< share of the days left; 1 where it is certain
};

/// Which of the variants a vehicle has. With a build date: that one (none where the date falls in a gap). Without: each
/// by its share of the days on which the model year was built, those with no such day left out.
std::vector<VariantShare> variantsOf(std::span<const DateSpan> variants, const DateSpan& produced,
                                     std::optional<Date> built = {});

/// The day that decides between two variants of one model year: built before it, the earlier; none where the spans
/// overlap or do not meet.
std::optional<Date> changeover(const DateSpan& earlier, const DateSpan& later);

/// Days of production that no variant covers, and days that two cover: model-year-gap and model-year-overlap, with the
/// days.
std::vector<Finding> coverage(std::span<const DateSpan> variants, const DateSpan& produced);

}  // namespace ohmkin::dating
