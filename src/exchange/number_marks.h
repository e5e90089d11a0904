#pragma once
#include <exchange/reading_cell.h>
#include <span>
#include <vector>

namespace ohmkin::exchange {

/// What the numbers of a file say about their marks.
struct MarksTold {
  Marks marks;
  std::string reason;
  std::string example;  ///< a cell that could be read both ways, where any could
  bool open = false;    ///< nothing decides: `other` is the second way
  bool mixed = false;   ///< some cells contradict the rest
  Marks other;
};

/// From all cells that look like numbers. `semicolons`: the separator is one, as where the comma is the decimal mark.
MarksTold numberMarks(std::span<const std::string_view> cells, bool semicolons);

}  // namespace ohmkin::exchange
