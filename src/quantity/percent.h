#pragma once
#include <string>

namespace ohmkin {

/// A part as signed percent with a true minus: "+3.5 %", "−41 %", and "0 %" for what rounds to nothing.
std::string signedPercent(double part, int digits);

}  // namespace ohmkin
