#pragma once
#include <dating/possible_days.h>

/// Why a text cannot be a date under a layout, in words. Inner header of the room.
namespace ohmkin::dating {

/// `paths` are the plain ones, upright and without look-alikes, none of which names a day in the window.
Finding whyImpossible(const Layout& layout, const SeenText& text, const PathsFound& plain, const Days& window);

}  // namespace ohmkin::dating
