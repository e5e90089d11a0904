#pragma once
#include <dating/code_search.h>

/// From the numbers in a code to days. Inner header of the room.
namespace ohmkin::dating {

/// First day and the day after the last, both known.
struct Days {
  Date from;
  Date until;
};

/// Window with its open ends filled in, or why not.
Expected<Days> closedWindow(const DateSpan& window);

/// Years from first to last that the year field of the layout can mean when it shows `value`.
std::vector<int> yearsShown(const Layout& layout, int value, int first, int last);

/// Days in the window that the path names: runs of days, in order. Empty where no such day exists in it.
std::vector<Days> daysNamed(const Layout& layout, const Path& path, const Days& window);

}  // namespace ohmkin::dating
