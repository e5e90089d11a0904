#include <desk/catalogue_thread.h>
#include <measure/reading_rows.h>
#include <quantity/barometer.h>
#include <QCoreApplication>
#include <algorithm>

namespace ohmkin::measure {
namespace {

constexpr double kTouch = 0.05;  // Ω, standard: leads touched together a second time; from memory, no source

QString tr(const char* text) { return QCoreApplication::translate("ReadingRows", text); }

QString folded(const QString& text) { return text.simplified().toLower(); }

bool isOverload(const QString& text) {
  static const QStringList words{QStringLiteral("ol"),   QStringLiteral("o.l"),     QStringLiteral("o.l."),
                                 QStringLiteral("0l"),   QStringLiteral("inf"),     QStringLiteral("∞"),
                                 QStringLiteral("open"), QStringLiteral("overload")};
  return words.contains(folded(text));
}

class RowReader {
 public:
  RowReader(const catalog::Catalogue& catalogue, const SetUpSaid& setUp, TemperatureUnit bare, RowsRead& into)
      : catalogue_(catalogue), setUp_(setUp), bare_(bare), into_(into) {}

  void read(const RowText& text, int row) {
    row_ = row;
    fine_ = true;
    workflow::HandReading reading;
    readBath(text.cells[bathColumn], reading);
    reading.shown = ohmsOf(text.cells[ohmsColumn], ohmsColumn);
    reading.swapped = ohmsOf(text.cells[swappedColumn], swappedColumn);
    readRun(text.cells[runColumn], reading);
    readPractice(text, reading.practice);
    reading.practice.probesSwapped = reading.swapped ? std::optional(true) : std::nullopt;
    const bool whole = !text.cells[bathColumn].trimmed().isEmpty() && !text.cells[ohmsColumn].trimmed().isEmpty();
    if (!fine_ || !whole) return;
    into_.readings.push_back(std::move(reading));
    into_.rows.push_back(row);
  }

 private:
  void complain(int column, const QString& sentence) {
    into_.troubles.push_back({row_, column, sentence});
    fine_ = false;
  }
  void complain(int column, const Refusal& refusal) { complain(column, desk::refusalSentence(refusal)); }

  void readBath(const QString& cell, workflow::HandReading& reading) {
    const QString said = folded(cell);
    workflow::BathSaid& bath = reading.bath;
    if (said.isEmpty()) return;
    if (said == QStringLiteral("ice")) bath.kind = catalog::BathKind::crushedIce;
    else if (said == QStringLiteral("cubes")) bath.kind = catalog::BathKind::iceCubes;
    else if (saysBoiling(said)) readBoiling(bath);
    else if (const auto shown = parseTemperature(cell.trimmed().toStdString(), bare_); shown) {
      bath.kind = catalog::BathKind::thermometer;
      bath.shown = *shown;
      bath.thermometer = setUp_.thermometer.toStdString();
    } else if (auto named = workflow::bathNamed(catalogue_, cell.trimmed().toStdString()); named) {
      bath = *named;
      if (bath.kind == catalog::BathKind::boilingWater) readBoiling(bath);
      else if (bath.kind == catalog::BathKind::thermometer)
        complain(bathColumn, tr("Write what the thermometer in '%1' shows, and choose it above.").arg(cell.trimmed()));
    } else {
      complain(
          bathColumn,
          tr("'%1' is no bath: write a temperature, ice, cubes, boil, or a bath of the shop.").arg(cell.trimmed()));
    }
  }

  /// What is said above goes before what the shop wrote down.
  void readBoiling(workflow::BathSaid& bath) {
    bath.kind = catalog::BathKind::boilingWater;
    if (!setUp_.altitude.trimmed().isEmpty()) {
      const auto altitude = parseAltitude(setUp_.altitude.simplified().toStdString(), tr("Altitude").toStdString());
      if (altitude) bath.altitude = *altitude;
      else complain(bathColumn, altitude.error());
    }
    if (!setUp_.barometer.trimmed().isEmpty()) {
      const auto barometer = parseBarometer(setUp_.barometer.simplified().toStdString(), tr("Barometer").toStdString());
      if (barometer) bath.barometer = *barometer;
      else complain(bathColumn, barometer.error());
      if (setUp_.reduced != bench::Reduced::notKnown) bath.reduced = setUp_.reduced;
    }
  }

  std::optional<Ohms> ohmsOf(const QString& cell, int column) {
    if (cell.trimmed().isEmpty() || isOverload(cell)) return std::nullopt;
    const auto read = parseOhms(cell.trimmed().toStdString());
    if (!read) complain(column, read.error());
    return read ? std::optional(*read) : std::nullopt;
  }

  void readRun(const QString& cell, workflow::HandReading& reading) {
    const QString said = folded(cell);
    if (said.isEmpty()) return;
    if (tr("heating").startsWith(said)) reading.direction = bench::Direction::heating;
    else if (tr("cooling").startsWith(said)) reading.direction = bench::Direction::cooling;
    else complain(runColumn, tr("'%1': write h for heating or c for cooling.").arg(cell.trimmed()));
  }

  void readPractice(const RowText& text, bench::Practice& practice) {
    const QString steady = folded(text.cells[steadyColumn]);
    // "Steady" is the bound itself: it moved so much a minute at most.
    if (saysYes(steady)) practice.perMinute = bench::kSteadyPerMinute;
    else if (!steady.isEmpty()) {
      const auto percent = parseNumber(QString(steady).remove(QLatin1Char('%')).trimmed().toStdString());
      if (percent && *percent >= 0) practice.perMinute = *percent / 100;
      else complain(steadyColumn, tr("'%1': per cent that the ohms move in a minute, or yes.").arg(steady));
    }
    practice.immersedPastHex = tickOf(text.cells[hexColumn], hexColumn);
    practice.stirred = tickOf(text.cells[stirredColumn], stirredColumn);
  }

  std::optional<bool> tickOf(const QString& cell, int column) {
    const QString said = folded(cell);
    if (said.isEmpty()) return std::nullopt;
    if (saysYes(said)) return true;
    if (tr("no").startsWith(said)) return false;
    complain(column, tr("'%1': write yes or no.").arg(cell.trimmed()));
    return std::nullopt;
  }

  const catalog::Catalogue& catalogue_;
  const SetUpSaid& setUp_;
  TemperatureUnit bare_;
  RowsRead& into_;
  int row_ = 0;
  bool fine_ = true;
};

}  // namespace

bool RowText::empty() const {
  return std::all_of(cells.begin(), cells.end(), [](const QString& cell) { return cell.trimmed().isEmpty(); });
}

bool saysBoiling(const QString& bath) {
  const QString said = folded(bath);
  return said == QStringLiteral("boil") || said == QStringLiteral("boiling");
}

bool saysYes(const QString& cell) {
  const QString said = folded(cell);
  return !said.isEmpty() && tr("yes").startsWith(said);
}

RowsRead readRows(const catalog::Catalogue& catalogue, const std::vector<RowText>& rows, const SetUpSaid& setUp,
                  TemperatureUnit bare) {
  RowsRead read;
  RowReader reader(catalogue, setUp, bare, read);
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (!rows[i].empty()) reader.read(rows[i], static_cast<int>(i));
  return read;
}

Expected<std::optional<bench::LeadZero>> leadsOf(const SetUpSaid& setUp) {
  const QString said = setUp.leads.trimmed();
  if (said.isEmpty()) return std::nullopt;
  const QString where = tr("Leads held together");
  const auto number = parseNumber(QString(said).remove(QChar(0x3a9)).remove(QChar(0x2126)).trimmed().toStdString());
  if (!number || !(*number >= 0))
    return refuse("leads-unreadable", where.toStdString(), "'" + said.toStdString() + "'",
                  tr("the ohms they show, for example 0.2").toStdString());
  return bench::LeadZero{ohms(*number), ohms(kTouch)};
}

}  // namespace ohmkin::measure
