#pragma once
#include <exchange/package.h>

namespace ohmkin::exchange {

/// Complains of what does not hold between the cells of the table's last row.
void checkRowRules(const Table& table, Complaints& complaints);

}  // namespace ohmkin::exchange
