#include <dating/model_year.h>

namespace ohmkin::dating {

DateSpan usualProduction(ModelYear year) { return {date(year.value - 1, 7, 1), date(year.value, 9, 1)}; }

}  // namespace ohmkin::dating
