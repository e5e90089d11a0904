#pragma once
#include <catalog/catalogue.h>
#include <catalog/layouts.h>
#include <QtCore/QtGlobal>
#include <array>
#include <string>
#include "small_catalogue.h"

/// Changes that are numbered 1, 2, 3, …, so that a file tells how many of them it had, and whether one of them is in it
/// by half.
namespace ohmkin::test {

inline constexpr int kHalf = -1;  ///< a change is in it by half, or the file does not hold

inline int number(catalog::Catalogue& catalogue, const std::string& sql) {
  return catalogue.connection().database().execAndGet(sql).getInt();
}

/// A file of readings comes in.
void importReadings(catalog::Catalogue& catalogue, int change);
int importsIn(catalog::Catalogue& catalogue);
/// A layout of the shop's is edited, with its fields and its source.
void editLayout(catalog::Catalogue& catalogue, int change);
int editsIn(catalog::Catalogue& catalogue);
catalog::DateLayoutRecord layoutNumbered(const std::string& id, int change);
/// A pack goes to its next version.
void upgradePack(catalog::Catalogue& catalogue, int change);
int packIn(catalog::Catalogue& catalogue);
/// Pieces are received, sold, moved, counted, the count undone, a minimum set; then round again.
void changeStock(catalog::Catalogue& catalogue, int change);
int stockChangesIn(catalog::Catalogue& catalogue);
/// A job is opened, a part received for it, a document kept with it, it is closed, opened again by undoing, erased;
/// then the next one.
void changeJobs(catalog::Catalogue& catalogue, int change);
int jobChangesIn(catalog::Catalogue& catalogue);
/// A gauge is edited with its marks and a source that comes with it, and the edit is taken back by what the change log
/// kept of it; then the next one.
void editRow(catalog::Catalogue& catalogue, int change);
int rowEditsIn(catalog::Catalogue& catalogue);

struct KindOfChange {
  const char* name;
  void (*change)(catalog::Catalogue&, int number);
  int (*changesIn)(catalog::Catalogue&);
};
inline constexpr std::array kKinds{
    KindOfChange{"import", importReadings, importsIn}, KindOfChange{"edit", editLayout, editsIn},
    KindOfChange{"pack upgrade", upgradePack, packIn}, KindOfChange{"stock", changeStock, stockChangesIn},
    KindOfChange{"jobs", changeJobs, jobChangesIn},    KindOfChange{"row edit", editRow, rowEditsIn}};

/// Empty where the file holds and has had `acknowledged` changes, or the one after that as well.
std::string wrongWith(const std::filesystem::path& file, const KindOfChange& kind, int acknowledged);

/// The long form: OHMKIN_LONG_TESTS=1. It is let run for as long as it takes.
inline bool longForm() { return qEnvironmentVariableIntValue("OHMKIN_LONG_TESTS") != 0; }
inline const bool patient = longForm() && qputenv("QTEST_FUNCTION_TIMEOUT", "14400000");

}  // namespace ohmkin::test
