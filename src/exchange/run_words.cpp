#include <exchange/run_words.h>
#include <quantity/near_miss.h>
#include <algorithm>
#include <array>

namespace ohmkin::exchange {

std::optional<Run> runWord(std::string_view word) {
  constexpr std::array<std::string_view, 8> heating{"heating", "heat", "up", "rising", "rise", "warming", "h", "↑"};
  constexpr std::array<std::string_view, 8> cooling{"cooling", "cool",        "down", "falling",
                                                    "fall",    "coolingdown", "c",    "↓"};
  const std::string key = folded(word);
  if (std::find(heating.begin(), heating.end(), key) != heating.end()) return Run::heating;
  if (std::find(cooling.begin(), cooling.end(), key) != cooling.end()) return Run::cooling;
  return {};
}

}  // namespace ohmkin::exchange
