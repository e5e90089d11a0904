#pragma once
#include <catalog/catalogue.h>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The change log: who changed what when, for good. Lines are only ever added.
namespace ohmkin::catalog {

struct ChangeLine {
  std::int64_t id = 0;
  std::string at;  ///< UTC, ISO 8601
  std::string who;
  std::string what;  ///< "row added", "row changed", "row renamed", "row deleted", "change 17 undone", "pack loaded", …
  std::string subject;  ///< table and key: "sender SN-1"; a key of several columns is joined by ", "
  std::string before;   ///< of a row: JSON text of the whole thing; else words. Empty: was not there
  std::string after;
  /// The change this one takes back or repeats; 0: none.
  std::int64_t of = 0;
  /// Holds the whole thing before and after, so that it can be taken back.
  [[nodiscard]] bool kept() const;
};

/// Which lines; what is empty is not asked.
struct ChangeFilter {
  std::string of;           ///< the subject, or its key alone
  std::string who;          ///< whole, letters' case does not matter
  std::string since;        ///< UTC, ISO 8601 or the beginning of it: "2026-11"
  std::string until;        ///< not included
  std::int64_t before = 0;  ///< only lines older than that one: the next page. 0: from the newest
  std::size_t most = 100;
};

/// Newest first. All throw CatalogueError.
std::vector<ChangeLine> changes(const Catalogue& catalogue, const ChangeFilter& filter = {});
std::optional<ChangeLine> change(const Catalogue& catalogue, std::int64_t id);
/// Later than that line, oldest first.
std::vector<ChangeLine> changesSince(const Catalogue& catalogue, std::int64_t line, std::size_t most);

}  // namespace ohmkin::catalog
