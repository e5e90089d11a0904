#pragma once
#include <sheet/paper.h>

/// What stands on a bin.
namespace ohmkin::sheet {

struct ShelfLabel {
  std::string part;
  std::string family;  ///< resistance family, or the kind of what has none
  std::string ohms;    ///< "700 Ω cold, 95 Ω hot"
  std::string thread;
  std::string terminal;
  std::string bin;
};

/// Labels of 62 mm × 29 mm, three beside one another with lines to cut along; as many pages as it takes.
Pages drawShelfLabels(const std::vector<ShelfLabel>& labels, Paper paper);
/// One a page of that size, for a label printer.
Pages drawSmallLabels(const std::vector<ShelfLabel>& labels);

}  // namespace ohmkin::sheet
