#pragma once
#include <array>
#include <string_view>

/// Inside this room only: rows that mean nothing without the row they are a part of.
namespace ohmkin::catalog {

struct Part {
  std::string_view table;
  std::string_view column;
  std::string_view whole;
};

inline constexpr std::array<Part, 4> kParts{{{"sample", "curve", "curve"},
                                             {"dial_mark", "gauge", "gauge"},
                                             {"movement_point", "gauge", "gauge"},
                                             {"date_field", "layout", "date_layout"}}};

}  // namespace ohmkin::catalog
