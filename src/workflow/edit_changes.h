#pragma once
#include <catalog/change_log.h>
#include <quantity/print.h>
#include <string>
#include <vector>

/// The change log, for good, as a person reads it. Lines and paging: <catalog/change_log.h>.
namespace ohmkin::workflow {

/// One field before and after; an empty text: no value.
struct FieldChange {
  std::string where;  ///< "torque_low", "dial_mark[3].angle"
  std::string label;  ///< "Torque, least", "Marks 3: Angle"
  std::string before;
  std::string after;
};

struct ChangeShown {
  catalog::ChangeLine line;
  std::string sentence;             ///< "sender SN-1 changed: name, reach"
  std::vector<FieldChange> fields;  ///< those that differ; empty for a line that holds no before and after as such
};

/// What a line of the log says, field by field.
ChangeShown shownChange(const catalog::ChangeLine& line, const DisplayUnits& units = {});

}  // namespace ohmkin::workflow
