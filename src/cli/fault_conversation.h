#pragma once
#include <cli/fault_search.h>
#include <iosfwd>

namespace ohmkin::cli {

/// Asks in a plain terminal until a repair has helped, nothing is left to ask, or the input ends; the session is kept
/// after every line.
Expected<Exit> converse(FaultSearch search, std::istream& in, Streams streams);

}  // namespace ohmkin::cli
