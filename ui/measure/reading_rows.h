#pragma once
#include <workflow/bench_work.h>
#include <QString>
#include <array>
#include <vector>

/// The table of readings as it was typed, and what it says.
namespace ohmkin::measure {

/// Columns of the table. A bath is a temperature that a thermometer shows, "ice", "cubes", "boil", or one of the
/// shop's baths by name.
enum Column { bathColumn, ohmsColumn, swappedColumn, runColumn, steadyColumn, hexColumn, stirredColumn, kColumns };

struct RowText {
  std::array<QString, kColumns> cells;
  [[nodiscard]] bool empty() const;
};

/// What was said once for all rows.
struct SetUpSaid {
  QString meter;        ///< as workflow::meterNamed() has it
  QString leads;        ///< ohms, held together; empty: not zeroed
  QString thermometer;  ///< as workflow::thermometerNamed() has it
  QString altitude;     ///< "1600 m", "5250 ft"; empty: not said
  QString barometer;    ///< "1013 hPa", "29.9 inHg"
  bench::Reduced reduced = bench::Reduced::notKnown;
};

/// A cell that is not understood, or a row that cannot be taken (column below 0).
struct RowTrouble {
  int row = 0;
  int column = -1;
  QString sentence;
};

struct RowsRead {
  std::vector<workflow::HandReading> readings;
  std::vector<int> rows;  ///< of the table, beside each reading
  std::vector<RowTrouble> troubles;
};

bool saysBoiling(const QString& bath);
bool saysYes(const QString& cell);

/// Rows that are not finished (no ohms yet) are passed over without a word.
RowsRead readRows(const catalog::Catalogue& catalogue, const std::vector<RowText>& rows, const SetUpSaid& setUp,
                  TemperatureUnit bare);
/// Of the leads as they were typed; none where nothing was.
Expected<std::optional<bench::LeadZero>> leadsOf(const SetUpSaid& setUp);

}  // namespace ohmkin::measure
