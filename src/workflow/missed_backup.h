#pragma once
#include <finding/finding.h>
#include <vector>

namespace ohmkin::workflow {

/// Today's backups that failed while the change they were to precede went ahead (backup-missed), each told once a day
/// of a program: the terminal asks after every command, a window after every change.
std::vector<Finding> missedBackups();

}  // namespace ohmkin::workflow
