#pragma once
#include <workflow/import_readings.h>
#include <workflow/import_runs.h>
#include <istream>
#include <memory>
#include <optional>
#include <string>

/// What is known of a file of readings before its rows are read.
namespace ohmkin::workflow {

std::unique_ptr<std::istream> opened(const ReadingsFile& file);

/// How the file is read: proposed, remembered of such files, put right.
struct HowRead {
  exchange::Proposal proposal;
  exchange::ReadingPlan plan;
  std::optional<catalog::ReadingHabit> remembered;
  std::vector<Finding> findings;
};

struct Beginning {
  std::uint64_t size = 0;
  std::string hash;
  HowRead how;
  FileInstruments instruments;
};

/// Refuses a file that is not there, what is no file of readings, a correction that is none, unknown instruments.
Expected<Beginning> beginningOf(const catalog::Catalogue& catalogue, const ReadingsFile& file,
                                const ImportAsked& asked);

/// What the file leaves open, where it is to be asked first and nobody has answered.
std::optional<Refusal> openQuestion(const ReadingsFile& file, const HowRead& how, const ImportAsked& asked);

}  // namespace ohmkin::workflow
