#pragma once
#include <dating/glyphs.h>
#include <dating/written_field.h>

/// Every way a layout's fields can explain the characters seen. Inner header of the room.
namespace ohmkin::dating {

/// One way: a value for each part of the date, and what had to be assumed.
struct Path {
  std::array<int, 7> values{};  ///< by Part; meaningful for those in `said`
  std::array<bool, 7> said{};
  int swapped = 0;
  int filled = 0;
  bool spacing = false;
  int beyond = 0;  ///< values no date has
  std::string taken;

  [[nodiscard]] bool says(Part part) const { return said[static_cast<std::size_t>(part)]; }
  [[nodiscard]] int value(Part part) const { return values[static_cast<std::size_t>(part)]; }
};

/// A layout made ready to be looked for: the forms of every field.
struct Template {
  Layout layout;
  std::vector<std::vector<WrittenForm>> forms;  ///< one list a field
};
Template templateOf(const Layout& layout, int firstYear, int lastYear, bool beyond);

struct PathsFound {
  std::vector<Path> paths;
  bool tooMany = false;           ///< stopped at kMostPaths
  std::size_t furthestField = 0;  ///< where nothing fits: the first field that found no place …
  std::size_t furthestPlace = 0;  ///< … and the character it met
};
inline constexpr std::size_t kMostPaths = 200'000;

/// Backward reachability first, so that every step taken forward ends in a path: the work is that of writing the paths
/// down.
PathsFound pathsThrough(const Template& layout, const Sight& sight, int mostSwapped);

}  // namespace ohmkin::dating
