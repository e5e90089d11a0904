#pragma once
#include <catalog/bench_records.h>
#include <finding/refusal.h>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

/// Measured runs going into the catalogue, a file whole or not at all.
namespace ohmkin::catalog {

/// Who measured with what; in words, for the record.
struct BenchProvenance {
  std::string who;
  std::string meter;  ///< empty: not said
  std::string bath;
};

struct BenchFile {
  std::string file;        ///< its name, without folder
  std::string hash;        ///< SHA-256 of its bytes, 64 lower-case hexadecimal digits (std::invalid_argument otherwise)
  std::int64_t bytes = 0;  ///< its size
  std::string plan;        ///< how it is read, in one line
};

/// A curve fitted to a run, for curve and sample. Its part and lot are those of the run.
struct BenchCurve {
  CurveModel model = CurveModel::table;
  std::string coefficients;        ///< as curve::modelFrom reads them; empty for a table
  std::vector<double> covariance;  ///< square, row by row; empty where not known
  double floor = 0;                ///< least standard uncertainty of ln R
  TemperatureSpan valid;
  std::vector<Sample> samples;  ///< points it was fitted to; a table's own
  double confidence = 0.9;      ///< of the source, 0 … 1
};

/// One transaction, with the write lock from its beginning. Rolls back unless kept: leaving it, an exception, or the
/// end of the process means that nothing was imported. Nothing else may be asked of the catalogue's writers meanwhile;
/// questions see what was written so far.
///
/// Readings are held back in batches of bounded size and put in by key, so that a file in which the runs are mixed
/// costs hardly more than one in order.
class BenchWriter {
 public:
  /// Refuses (import-again) a file that is in already and stands: "imported on … by …", expected "nothing; nothing was
  /// changed". Throws catalogue-read-only, catalogue-busy.
  static Expected<BenchWriter> begin(Catalogue& catalogue, const BenchFile& file, const BenchProvenance& by);
  /// Readings typed in: no file, any number of runs.
  static BenchWriter byHand(Catalogue& catalogue, const BenchProvenance& by);
  ~BenchWriter();
  BenchWriter(BenchWriter&&) noexcept;
  BenchWriter& operator=(BenchWriter&&) noexcept;

  RunNumber beginRun(const RunDescription& said);
  /// The next reading of a run begun here, 2^24 − 1 a run at most; runs may take turns. std::invalid_argument for a run
  /// that was not begun here, or for numbers outside what RawReading says: check them first, where the cell can be
  /// named.
  void add(RunNumber run, const RawReading& reading);
  /// Refuses (part-not-said) a run without a part number, (part-unknown) one the catalogue has no sender for,
  /// (curve-refused) what breaks a rule of the tables.
  Expected<CurveKey> addCurve(RunNumber run, const BenchCurve& curve);
  /// How files of that shape are read, in place of what was remembered; with this file or not at all.
  void remember(std::string_view signature, std::string_view logger);

  [[nodiscard]] std::int64_t rows() const;  ///< added so far
  /// Writes record, change log, and commits. Nothing may be added afterwards. The record's id is 0 for readings by
  /// hand.
  ImportRecord keep();

 private:
  struct Work;
  explicit BenchWriter(std::unique_ptr<Work> work);
  std::unique_ptr<Work> work_;
};

/// Takes readings, runs, curves, samples and source of an import out; its record stays and says so. Refuses
/// (import-unknown), (import-undone). One transaction with its line in the change log, as below; both throw
/// catalogue-read-only, catalogue-busy.
Expected<ImportRecord> undoImport(Catalogue& catalogue, ImportNumber id, std::string_view who);
/// The same for one run entered by hand. Refuses (run-unknown), (run-of-import): that one goes with its file.
Expected<void> removeRun(Catalogue& catalogue, RunNumber run, std::string_view who);

}  // namespace ohmkin::catalog
