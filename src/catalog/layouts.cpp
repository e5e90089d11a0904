#include <catalog/layouts.h>
#include <catalog/row.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<FoundOn, 5> kPlaces{{{FoundOn::head, "head"},
                                     {FoundOn::block, "block"},
                                     {FoundOn::intake, "intake"},
                                     {FoundOn::housing, "housing"},
                                     {FoundOn::assemblyStamp, "assembly stamp"}}};
constexpr Words<DateFieldKind, 14> kFields{{{DateFieldKind::monthLetter, "month letter"},
                                            {DateFieldKind::monthLetterWithoutI, "month letter without I"},
                                            {DateFieldKind::monthNumber, "month number"},
                                            {DateFieldKind::day, "day"},
                                            {DateFieldKind::yearDigit, "year digit"},
                                            {DateFieldKind::yearTwoDigits, "year two digits"},
                                            {DateFieldKind::yearFourDigits, "year four digits"},
                                            {DateFieldKind::dayOfYear, "day of year"},
                                            {DateFieldKind::week, "week"},
                                            {DateFieldKind::weekday, "weekday"},
                                            {DateFieldKind::shift, "shift"},
                                            {DateFieldKind::clockDial, "clock dial"},
                                            {DateFieldKind::fixedText, "fixed text"},
                                            {DateFieldKind::separator, "separator"}}};

#define LAYOUTS                                                                        \
  "SELECT l.id, l.name, l.found_on, l.example, l.example_date, " OHMKIN_SOURCE_COLUMNS \
  " FROM date_layout l JOIN source s ON s.id = l.source "

DateField readField(Row& row) {
  DateField f;
  f.kind = row.oneOf(kFields);
  f.text = row.text();
  f.optional = row.flag();
  return f;
}

DateLayoutRecord readLayout(Row& row) {
  DateLayoutRecord l;
  l.id = row.key<LayoutKey>();
  l.name = row.text();
  l.foundOn = row.oneOf(kPlaces);
  l.example = row.text();
  l.exampleDate = row.date();
  l.source = row.source();
  return l;
}

std::vector<DateLayoutRecord> whole(const Catalogue& catalogue, std::vector<DateLayoutRecord> layouts) {
  for (DateLayoutRecord& l : layouts)
    l.fields = ask(catalogue, "SELECT kind, text, optional FROM date_field WHERE layout = ? ORDER BY ordinal",
                   readField, l.id.text);
  return layouts;
}

}  // namespace

std::string_view text(FoundOn place) { return wordFor(kPlaces, place); }
std::string_view text(DateFieldKind kind) { return wordFor(kFields, kind); }

std::vector<DateLayoutRecord> dateLayouts(const Catalogue& catalogue) {
  return whole(catalogue, ask(catalogue, LAYOUTS "ORDER BY l.id", readLayout));
}

std::optional<DateLayoutRecord> dateLayout(const Catalogue& catalogue, const LayoutKey& key) {
  return first(whole(catalogue, ask(catalogue, LAYOUTS "WHERE l.id = ?", readLayout, key.text)));
}

}  // namespace ohmkin::catalog
