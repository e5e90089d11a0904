#include <catalog/backup.h>
#include <fmt/format.h>
#include <workflow/missed_backup.h>

namespace ohmkin::workflow {

std::vector<Finding> missedBackups() {
  std::vector<Finding> findings;
  for (const Refusal& why : catalog::takeMissedBackups())
    findings.push_back({"backup-missed", Severity::warning,
                        fmt::format("There is no backup of {} for today: found {}. Changes are kept all the same; once "
                                    "that is mended, 'ohmkin backup make' makes one.",
                                    why.where, why.found),
                        catalog::backupFolder(why.where).string(), "what the disk answered"});
  return findings;
}

}  // namespace ohmkin::workflow
