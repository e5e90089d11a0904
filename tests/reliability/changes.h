#pragma once
#include <catalog/bench_writer.h>
#include <catalog/layout_writer.h>
#include <catalog/pack_writer.h>
#include <array>
#include <cstdlib>
#include <string>
#include <vector>
#include "small_catalogue.h"

/// Changes that are numbered 1, 2, 3, …, so that a file tells how many of them it had, and whether one of them is in it
/// by half.
namespace ohmkin::test {

inline constexpr int kHalf = -1;  ///< a change is in it by half, or the file does not hold

inline int number(catalog::Catalogue& catalogue, const char* sql) {
  return catalogue.connection().database().execAndGet(sql).getInt();
}

// A file of readings comes in.
inline constexpr int kReadings = 300;
inline void importReadings(catalog::Catalogue& catalogue, int change) {
  catalog::BenchFile file{"log.csv", std::string(64, 'a'), 1000, "temperature=1:C, resistance=2:ohm"};
  const std::string digits = std::to_string(change);
  file.hash.replace(0, digits.size(), digits);
  auto writer = catalog::BenchWriter::begin(catalogue, file, {"anna", "", ""});
  if (!writer) qFatal("%s", writer.error().sentence().c_str());
  const auto run = writer->beginRun({"SN-102", digits, "", {}, "run", ""});
  for (int i = 0; i < kReadings; ++i) writer->add(run, {20.0 + 0.1 * i, 700.0 - i});
  (void)writer->keep();
}
inline int importsIn(catalog::Catalogue& catalogue) {
  const int imports = number(catalogue, "SELECT count(*) FROM bench_import");
  const bool whole = number(catalogue, "SELECT count(*) FROM bench_reading") == imports * kReadings &&
                     number(catalogue, "SELECT count(*) FROM bench_run") == imports &&
                     number(catalogue, "SELECT count(*) FROM change_log WHERE what LIKE '%import%'") == imports;
  return whole ? imports : kHalf;
}

// A row of the shop's is edited, with its parts and its source.
inline catalog::DateLayoutRecord layoutNumbered(const std::string& id, int change) {
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
inline void editLayout(catalog::Catalogue& catalogue, int change) {
  const auto kept = catalog::keepLayout(catalogue, layoutNumbered("edited", change), "anna", true);
  if (!kept) qFatal("%s", kept.error().sentence().c_str());
}
inline int editsIn(catalog::Catalogue& catalogue) {
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
inline constexpr int kMakes = 80;
inline void upgradePack(catalog::Catalogue& catalogue, int change) {
  catalog::PackWriter writer(catalogue, {"up", "A pack", std::to_string(change), ""});
  const std::vector<std::string> columns{"id", "name"};
  for (int i = 0; i < kMakes; ++i) {
    const std::vector<catalog::Cell> row{"make " + std::to_string(i), "version " + std::to_string(change)};
    if (const auto fate = writer.write("make", columns, row); !fate) qFatal("%s", fate.error().sentence().c_str());
  }
  writer.keep("anna");
}
inline int packIn(catalog::Catalogue& catalogue) {
  const int version = number(catalogue, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM pack WHERE id = 'up'");
  const bool whole = number(catalogue, "SELECT count(*) FROM make WHERE pack = 'up'") == (version > 0 ? kMakes : 0) &&
                     number(catalogue,
                            "SELECT count(*) FROM make m JOIN pack p ON p.id = m.pack WHERE p.id = 'up' AND m.name <> "
                            "'version ' || p.version") == 0 &&
                     number(catalogue, "SELECT count(*) FROM change_log") == version;
  return whole ? version : kHalf;
}

struct KindOfChange {
  const char* name;
  void (*change)(catalog::Catalogue&, int number);
  int (*changesIn)(catalog::Catalogue&);
};
inline constexpr std::array kKinds{KindOfChange{"import", importReadings, importsIn},
                                   KindOfChange{"edit", editLayout, editsIn},
                                   KindOfChange{"pack upgrade", upgradePack, packIn}};

/// Empty where the file holds and has had `acknowledged` changes, or the one after that as well.
inline std::string wrongWith(const std::filesystem::path& file, const KindOfChange& kind, int acknowledged) {
  try {
    catalog::Catalogue catalogue = catalog::Catalogue::openToRead(file);
    const std::string pages = catalogue.connection().database().execAndGet("PRAGMA integrity_check(1)").getString();
    if (pages != "ok") return pages;
    if (number(catalogue, "SELECT count(*) FROM pragma_foreign_key_check") != 0) return "rows refer to nothing";
    const int had = kind.changesIn(catalogue);
    if (had == kHalf) return "half a change";
    if (had != acknowledged && had != acknowledged + 1)
      return std::to_string(acknowledged) + " acknowledged, " + std::to_string(had) + " there";
  } catch (const catalog::CatalogueError& error) {
    return error.refusal().sentence();
  } catch (const std::exception& failure) {
    return failure.what();
  }
  return {};
}

/// The long form: OHMKIN_LONG_TESTS=1. It is let run for as long as it takes.
inline bool longForm() { return qEnvironmentVariableIntValue("OHMKIN_LONG_TESTS") != 0; }
inline const bool patient = longForm() && qputenv("QTEST_FUNCTION_TIMEOUT", "14400000");

}  // namespace ohmkin::test
