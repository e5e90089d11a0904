#pragma once
#include <catalog/bench_writer.h>
#include <workflow/import_points.h>
#include <workflow/import_readings.h>
#include <string_view>

/// The curves of a file: whose they are, and what their points come to.
namespace ohmkin::workflow {

/// Meter and thermometer of a file, and whether anybody said so.
struct FileInstruments {
  BenchMeter meter;
  BenchThermometer thermometer;
  bool stated = false;  ///< of one of the two at least
};
Expected<FileInstruments> fileInstruments(const catalog::Catalogue& catalogue, const ImportAsked& asked);

/// "RP-2215", "RP-2215 lot R7", "RP-2215/R7": a part number of the catalogue and what follows it. None where it is no
/// such name.
struct PartAndLot {
  std::string part;
  std::string lot;
};
std::optional<PartAndLot> partAndLot(const catalog::Catalogue& catalogue, std::string_view title);

/// What is said of a curve: by the person, by its name in the file, or of all curves of the file. Refuses
/// (part-unknown) a part number the person gave that the catalogue does not have, and (family-unknown).
Expected<RunSaid> saidOf(const catalog::Catalogue& catalogue, const BenchFamilies& families, const ImportAsked& asked,
                         const std::string& title);

/// Fits, identifies and judges; what cannot be done is said in the preview.
RunPreview previewOf(const catalog::Catalogue& catalogue, const BenchFamilies& families, const ImportAsked& asked,
                     const FileInstruments& instruments, RunSaid said, const RunRows& rows);

/// As the catalogue keeps it: outliers left out, of a table its own points; known no better than meter and thermometer.
catalog::BenchCurve benchCurveOf(const curve::Fit& fit, const std::vector<curve::Sample>& samples);

}  // namespace ohmkin::workflow
