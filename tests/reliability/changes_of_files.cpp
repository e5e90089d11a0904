#include "changes.h"

#include <catalog/bench_writer.h>
#include <catalog/layout_writer.h>
#include <catalog/pack_writer.h>
#include <string>
#include <vector>

namespace ohmkin::test {
namespace {

constexpr int kReadings = 300;
constexpr int kMakes = 80;

}  // namespace

// A file of readings comes in.
void importReadings(catalog::Catalogue& catalogue, int change) {
  catalog::BenchFile file{"log.csv", std::string(64, 'a'), 1000, "temperature=1:C, resistance=2:ohm"};
  const std::string digits = std::to_string(change);
  file.hash.replace(0, digits.size(), digits);
  auto writer = catalog::BenchWriter::begin(catalogue, file, {"anna", "", ""});
  if (!writer) qFatal("%s", writer.error().sentence().c_str());
  const auto run = writer->beginRun({"SN-102", digits, "", {}, "run", ""});
  for (int i = 0; i < kReadings; ++i) writer->add(run, {20.0 + 0.1 * i, 700.0 - i});
  (void)writer->keep();
}
int importsIn(catalog::Catalogue& catalogue) {
  const int imports = number(catalogue, "SELECT count(*) FROM bench_import");
  const bool whole = number(catalogue, "SELECT count(*) FROM bench_reading") == imports * kReadings &&
                     number(catalogue, "SELECT count(*) FROM bench_run") == imports &&
                     number(catalogue, "SELECT count(*) FROM change_log WHERE what LIKE '%import%'") == imports;
  return whole ? imports : kHalf;
}

// A row of the shop's is edited, with its parts and its source.
catalog::DateLayoutRecord layoutNumbered(const std::string& id, int change) {
  catalog::DateLayoutRecord layout;
  layout.id = catalog::LayoutKey{id};
  layout.name = "edit " + std::to_string(change);
  layout.example = "H 22 1";
  layout.exampleDate = *parseDate("1971-08-22");
  layout.source = {catalog::SourceKey{"x"}, catalog::SourceKind::bench, "edit " + std::to_string(change), 0.5};
  for (int i = 0; i < 3; ++i) {
    catalog::DateField field;
    field.kind = catalog::DateFieldKind::day;
    layout.fields.push_back(field);
  }
  return layout;
}
void editLayout(catalog::Catalogue& catalogue, int change) {
  const auto kept = catalog::keepLayout(catalogue, layoutNumbered("edited", change), "anna", true);
  if (!kept) qFatal("%s", kept.error().sentence().c_str());
}
int editsIn(catalog::Catalogue& catalogue) {
  const int edits = number(
      catalogue, "SELECT coalesce(max(CAST(substr(name, 6) AS INTEGER)), 0) FROM date_layout WHERE id = 'edited'");
  const bool whole =
      number(catalogue, "SELECT count(*) FROM date_field WHERE layout = 'edited'") == (edits > 0 ? 3 : 0) &&
      number(catalogue, "SELECT count(*) FROM change_log") == edits &&
      number(catalogue,
             "SELECT count(*) FROM date_layout l JOIN source s ON s.id = l.source WHERE l.id = 'edited' AND "
             "s.citation = l.name") == (edits > 0 ? 1 : 0);
  return whole ? edits : kHalf;
}

// A pack goes to its next version.
void upgradePack(catalog::Catalogue& catalogue, int change) {
  catalog::PackWriter writer(catalogue, {"up", "A pack", std::to_string(change), ""});
  const std::vector<std::string> columns{"id", "name"};
  for (int i = 0; i < kMakes; ++i) {
    const std::vector<catalog::Cell> row{"make " + std::to_string(i), "version " + std::to_string(change)};
    if (const auto fate = writer.write("make", columns, row); !fate) qFatal("%s", fate.error().sentence().c_str());
  }
  writer.keep("anna");
}
int packIn(catalog::Catalogue& catalogue) {
  const int version = number(catalogue, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM pack WHERE id = 'up'");
  const bool whole = number(catalogue, "SELECT count(*) FROM make WHERE pack = 'up'") == (version > 0 ? kMakes : 0) &&
                     number(catalogue,
                            "SELECT count(*) FROM make m JOIN pack p ON p.id = m.pack WHERE p.id = 'up' AND m.name <> "
                            "'version ' || p.version") == 0 &&
                     number(catalogue, "SELECT count(*) FROM change_log") == version;
  return whole ? version : kHalf;
}

}  // namespace ohmkin::test
