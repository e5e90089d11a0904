#pragma once
#include <desk/page.h>

namespace ohmkin::app {

/// The pages of the window, in the order of the rail. A new page adds its line in pages.cpp and nothing else.
const std::vector<desk::PageEntry>& pages();

}  // namespace ohmkin::app
