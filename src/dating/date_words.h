#pragma once
#include <cstdint>
#include <string>

/// Spans of time and probabilities as a person says them. Inner header of the room.
namespace ohmkin::dating {

/// "eleven years", "five months", "40 days": rounded to what matters.
std::string plainInterval(std::int64_t interval);

/// "97 %", "over 99 %", "under 1 %".
std::string percent(double probability);

}  // namespace ohmkin::dating
