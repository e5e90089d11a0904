#pragma once
#include <dating/conflicts.h>

/// The posterior in sentences. Inner header of the room; each adds to the posterior's findings.
namespace ohmkin::dating {

void findConflicts(const Evidence& evidence, const Days& window, Posterior& posterior);
void findHeadsApart(const Evidence& evidence, const Days& window, Posterior& posterior);
void findEras(const Evidence& evidence, Posterior& posterior);
void findModelYear(const Evidence& evidence, Posterior& posterior);
void findFirstEngine(const Evidence& evidence, const Days& window, Posterior& posterior);

}  // namespace ohmkin::dating
