#pragma once
#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

/// Inside this room only: what a table of enumerators calls each of them, in their order.
namespace ohmkin::circuit {

struct Named {
  std::string_view code;
  std::string_view name;
};

template <class Enumerator, std::size_t Count>
std::optional<Enumerator> calledBy(const std::array<Named, Count>& names, std::string_view code) {
  const auto* found = std::find_if(names.begin(), names.end(), [&](const Named& each) { return each.code == code; });
  if (found == names.end()) return std::nullopt;
  return static_cast<Enumerator>(found - names.begin());
}

}  // namespace ohmkin::circuit
