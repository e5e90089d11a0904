#include <quantity/decimal_mark.h>
#include <quantity/percent.h>
#include <cmath>

namespace ohmkin {

std::string signedPercent(double part, int digits) {
  const std::string size = fixedDecimals(std::abs(100 * part), digits);
  const bool nothing = size.find_first_not_of("0.,") == std::string::npos;
  return (nothing ? "" : part < 0 ? "−" : "+") + size + " %";
}

}  // namespace ohmkin
