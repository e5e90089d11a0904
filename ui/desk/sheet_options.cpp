#include <desk/sheet_options.h>
#include <QDate>
#include <QLocale>

namespace ohmkin::desk {

workflow::SheetOptions todaysSheet(const DisplayUnits& units) {
  workflow::SheetOptions options;
  const bool inches = QLocale::system().measurementSystem() == QLocale::ImperialUSSystem;
  options.paper = inches ? sheet::Paper::letter : sheet::Paper::a4;
  options.units = units;
  const QDate today = QDate::currentDate();
  options.day = date(today.year(), static_cast<unsigned>(today.month()), static_cast<unsigned>(today.day()));
  return options;
}

}  // namespace ohmkin::desk
