#pragma once
#include <bench/steady.h>
#include <catalog/bench_writer.h>
#include <curve/fit.h>
#include <exchange/reading_proposal.h>
#include <exchange/reading_rows.h>
#include <workflow/bench_equipment.h>
#include <workflow/bench_families.h>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

/// Bringing in a file of bench readings: proposed, shown, put right, and only then written, whole or not at all.
namespace ohmkin::workflow {

struct ReadingsFile {
  std::string name;            ///< without folder, as it is recorded
  std::filesystem::path path;  ///< empty: `bytes` are the file
  std::string bytes;
};
ReadingsFile readingsFile(const std::filesystem::path& path);

/// What the person says of one curve of the file. Those whose name in the file is a part number ("RP-2215",
/// "RP-2215 lot R7") need nothing said.
struct RunSaid {
  std::string title;      ///< which: as the file names it; "" is the one of a file that names none
  bool leaveOut = false;  ///< neither readings nor curve are kept
  std::string part;
  std::string lot;
  std::string family;  ///< it claims to be; empty: the part's
};

struct ImportAsked {
  std::string correction;   ///< a line for exchange::parsePlan, on top of the remembered or proposed plan; may be empty
  bool asProposed = false;  ///< forget what is remembered of such files, for this once
  bool askFirst = false;    ///< importFile() refuses (import-question) where the file leaves open how it is meant
  exchange::ProposalHints hints;
  std::string part;  ///< of every curve that says nothing of its own
  std::string lot;
  std::string family;
  std::vector<RunSaid> runs;
  std::string meter;  ///< as meterNamed() has it; empty: not said, and the scatter speaks for it
  std::string bath;   ///< as thermometerNamed() has it: what the file's temperatures were read with
  bench::SteadyOptions steady;
  std::optional<curve::Form> form;
  DisplayUnits units;  ///< of the sentences
};

/// Called some times a second, on the caller's thread; false stops, and then nothing is written.
struct ImportProgress {
  std::uint64_t bytes = 0;
  std::uint64_t ofBytes = 0;
  std::uint64_t rows = 0;
};
using OnProgress = std::function<bool(const ImportProgress&)>;

/// How the points that a curve is fitted to came out of a run's rows.
enum class Reduction {
  none,    ///< every reading is a point
  steady,  ///< of a log: means over the times it stood still
  binned   ///< more readings than kMostPoints, or a log that is never still: means over narrow steps of temperature
};

/// One curve of the file.
struct RunPreview {
  std::string title;  ///< as the file names it
  RunSaid said;       ///< part, lot, family as they would be kept
  std::uint64_t rows = 0;
  std::uint64_t overloads = 0;
  TemperatureSpan span{celsius(0), celsius(0)};  ///< of the rows
  bool log = false;                              ///< it has a time column
  Reduction reduction = Reduction::none;
  std::vector<curve::Sample> points;           ///< what was fitted
  std::vector<bench::SteadyPoint> steady;      ///< of a log; rows counted in those kept, see `reducedBy`
  std::string reducedBy;                       ///< in words; empty where nothing was reduced
  std::optional<curve::Fit> fit;               ///< outliers and residuals count in `points`
  std::optional<Refusal> noFit;                ///< why there is none
  std::optional<bench::Identification> whose;  ///< among `families`
  std::optional<std::size_t> claimed;          ///< family, in `families`
  std::vector<Finding> findings;               ///< agreement with the claim, outliers, lag, what was assumed
};

struct ImportPreview {
  std::string file;
  exchange::Proposal proposal;                      ///< how each column was read and why; the plan of it as proposed
  exchange::ReadingPlan plan;                       ///< as it is read: remembered, corrected
  std::optional<catalog::ReadingHabit> remembered;  ///< what of it was put right earlier
  exchange::ReadingTally tally;
  std::vector<RunPreview> runs;                  ///< in the order of the file
  std::vector<exchange::RejectedCell> rejected;  ///< the first kMostRejected; tally.rejected counts all
  std::optional<catalog::ImportRecord> already;  ///< these very bytes are in the catalogue and stand
  std::vector<Finding> findings;                 ///< of the file as a whole
};

inline constexpr std::size_t kMostRejected = 1000;
inline constexpr std::size_t kMostRuns = 1000;   ///< more curves than that are a misread column: refused
inline constexpr std::size_t kMostPoints = 500;  ///< a run is fitted to

/// Reads the whole file and writes nothing. Refuses what exchange refuses (FILE:LINE:COLUMN), part and family names
/// that the catalogue does not have, more than kMostRuns curves, and (import-cancelled) where progress said so.
Expected<ImportPreview> previewImport(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                      const ReadingsFile& file, const ImportAsked& asked,
                                      const OnProgress& progress = {});

struct ImportedRun {
  RunPreview seen;
  catalog::RunNumber run;
  std::optional<catalog::CurveKey> curve;  ///< none: no part said, or nothing could be fitted; findings say which
};
struct Imported {
  catalog::ImportRecord record;
  std::vector<ImportedRun> runs;
  std::vector<exchange::RejectedCell> rejected;
  exchange::ReadingTally tally;
  bool remembers = false;  ///< the correction is remembered for files of this shape
  std::vector<Finding> findings;
  [[nodiscard]] std::string sentence() const;  ///< "40 readings in 2 curves from 'x.csv' are in, as import 3."
};

/// One transaction. Refuses as previewImport does, and (import-again, with when and by whom) a file that is in already;
/// a file of which no row could be read; then nothing was changed, nor where progress says stop (import-cancelled).
/// Throws catalog::CatalogueError.
Expected<Imported> importFile(catalog::Catalogue& catalogue, const BenchFamilies& families, const ReadingsFile& file,
                              const ImportAsked& asked, std::string_view who, const OnProgress& progress = {});

/// Takes an import out again: catalog::undoImport(); what stands: catalog::imports().

/// Where a curve comes from, in one sentence: "measured 25 Nov 2026 by Ann with 'bench meter', 'bath.csv'"; empty for a
/// curve that came in a pack.
std::string provenance(const catalog::Catalogue& catalogue, const catalog::CurveKey& curve);

}  // namespace ohmkin::workflow
