#pragma once
#include <exchange/package.h>
#include <set>
#include <string>

namespace ohmkin::exchange {

/// Complains of keys that come twice and of references that lead nowhere. `unread` are tables whose rows are not known
/// because their file could not be read: what refers to them is let pass, there is a complaint already.
void checkKeysAndReferences(const std::vector<Table>& tables, const std::set<std::string, std::less<>>& unread,
                            const KnownElsewhere& known, Complaints& complaints);

}  // namespace ohmkin::exchange
