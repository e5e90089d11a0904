#pragma once
#include <quantity/date.h>

/// A model year is not a calendar year.
namespace ohmkin::dating {

/// Days on which a model year is usually built: from 1 July of the year before up to 1 September of the year itself, so
/// that neighbours overlap by two months. Common practice, no source; where a maker's own dates are known, use those.
DateSpan usualProduction(ModelYear year);

}  // namespace ohmkin::dating
