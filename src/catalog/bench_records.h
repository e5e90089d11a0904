#pragma once
#include <catalog/catalogue.h>
#include <catalog/families.h>
#include <catalog/key.h>
#include <compare>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the shop measured and where it came from. All of it is the shop's own and belongs to no pack; the curves made
/// of it are ordinary curves (families.h, benchCurves()), so that matching uses them at once.
namespace ohmkin::catalog {

template <class Noun>
struct Number {
  std::int64_t value = 0;
  friend auto operator<=>(const Number&, const Number&) = default;
};
using ImportNumber = Number<struct ImportNoun>;
using RunNumber = Number<struct RunNoun>;

/// A file that came in.
struct ImportRecord {
  ImportNumber id;
  std::string file;        ///< its name, without folder
  std::string hash;        ///< SHA-256 of its bytes, 64 lower-case hexadecimal digits
  std::int64_t bytes = 0;  ///< its size
  std::string at;          ///< UTC, ISO 8601
  std::string who;
  std::string meter;  ///< in words, as it was then; empty: not said
  std::string bath;
  std::string plan;  ///< how the file was read, in one line
  std::int64_t rows = 0;
  std::int64_t curves = 0;
  std::string undone;  ///< UTC, ISO 8601; empty: it stands
  std::string undoneBy;
  [[nodiscard]] bool stands() const { return undone.empty(); }
};

/// What is known of a run beside its readings.
struct RunDescription {
  std::string part;  ///< part number as it is written; empty: not said yet
  std::string lot;
  std::string family;                     ///< the family it claims to be, its id; empty: not said
  std::optional<RunDirection> direction;  ///< none: both ways, or not said
  std::string title;                      ///< how the file names it
  std::string note;
};

/// One measured curve, of a file or entered by hand.
struct RunRecord {
  RunNumber id;
  std::optional<ImportNumber> ofImport;  ///< none: entered by hand
  RunDescription said;
  std::string at;  ///< UTC, ISO 8601
  std::string who;
  std::string meter;
  std::string bath;
  std::int64_t rows = 0;
  std::optional<CurveKey> curve;  ///< made of it; none: not yet
};

inline constexpr double kNotSaid = std::numeric_limits<double>::quiet_NaN();

/// A reading as it was written down, in bare numbers for the million of them: °C, Ω, s, K; NaN is nothing.
struct RawReading {
  double celsius = kNotSaid;  ///< above −273.15; never nothing
  double ohms = kNotSaid;     ///< above 0; nothing: overload
  double seconds = kNotSaid;  ///< from the start of the log
  double u = kNotSaid;        ///< standard uncertainty of the temperature, K
  double uLnOhms = kNotSaid;  ///< standard, relative
  std::optional<RunDirection> direction = std::nullopt;
};

std::vector<ImportRecord> imports(const Catalogue& catalogue);  ///< all, undone ones too, newest first
std::optional<ImportRecord> importNumbered(const Catalogue& catalogue, ImportNumber id);
/// The import of a file with these very bytes that still stands.
std::optional<ImportRecord> standingImport(const Catalogue& catalogue, std::string_view hash);

std::vector<RunRecord> runsOfImport(const Catalogue& catalogue, ImportNumber id);  ///< in the order of the file
std::vector<RunRecord> runs(const Catalogue& catalogue);                           ///< all, newest first
std::optional<RunRecord> run(const Catalogue& catalogue, RunNumber id);
/// Where a curve comes from: the run it was made of; none where the curve came in a pack.
std::optional<RunRecord> runOfCurve(const Catalogue& catalogue, const CurveKey& curve);
/// Its readings in the order they were written down, one by one; stops when `take` returns false.
void readingsOf(const Catalogue& catalogue, RunNumber id, const std::function<bool(const RawReading&)>& take);
std::vector<RawReading> readingsOf(const Catalogue& catalogue, RunNumber id);

/// How files of a shape are read.
struct ReadingHabit {
  std::string signature;  ///< of the file's shape
  std::string plan;
  std::string logger;  ///< where such files come from, in the shop's words
  std::string at;      ///< UTC, ISO 8601
  std::string who;
};
std::optional<ReadingHabit> readingHabit(const Catalogue& catalogue, std::string_view signature);

}  // namespace ohmkin::catalog
