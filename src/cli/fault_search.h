#pragma once
#include <cli/command.h>
#include <workflow/fault_document.h>

/// A search for a fault as the terminal holds it: from the options, or from a file and the options.
namespace ohmkin::cli {

struct FaultSearch {
  workflow::FaultFinder finder;
  workflow::FaultSession session;
  std::string file;  ///< where the session is kept; empty: nowhere
};

/// Options that say what is searched. A session's file that exists has the gauge and the circuit; naming them again
/// beside it is refused.
Expected<FaultSearch> faultSearch(const Arguments& arguments);

/// "unplug=stays" into the session, in place of an earlier answer to the same test. Refuses as FaultFinder::read does.
Expected<void> answer(FaultSearch& search, const std::string& saw, const std::string& where);

/// Replaces the file as a whole; nothing where none was named. Refuses a place that cannot be written.
Expected<void> keep(const FaultSearch& search);

}  // namespace ohmkin::cli
