#pragma once
#include <exchange/column_facts.h>
#include <exchange/reading_proposal.h>

namespace ohmkin::exchange {

/// The unit a column would have in a role, and whether heading, unit row or cells state it.
struct UnitTold {
  ColumnUnit unit;
  bool stated;
};
UnitTold unitAs(const ColumnFacts& column, Role role, TemperatureUnit bare);

/// Gives the columns that have a role their units, adds them to the reasons, and asks where a unit that is not stated
/// would change what is read.
void giveUnits(const std::vector<ColumnFacts>& facts, TemperatureUnit bare, Proposal& into);

}  // namespace ohmkin::exchange
