#pragma once
#include <catalog/layouts.h>
#include <dating/layout.h>

namespace ohmkin::workflow {

/// From the catalogue's rows to a layout that can be read by.
dating::Layout layoutOf(const catalog::DateLayoutRecord& record);

}  // namespace ohmkin::workflow
