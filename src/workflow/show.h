#pragma once
#include <quantity/print.h>
#include <workflow/find.h>
#include <optional>
#include <string>
#include <vector>

/// Everything the catalogue says of one thing, in the trade's words.
namespace ohmkin::workflow {

/// One line: "thread", "3/8-18 NPT". A label that is not repeated belongs to the line above it as well.
struct ShownFact {
  std::string label;
  std::string text;
};

/// Rows that belong to the thing: where it is used, its bins, its ports.
struct ShownRows {
  std::string heading;            ///< "fitted new in"
  std::vector<std::string> rows;  ///< kMostShownRows at most
  std::size_t total = 0;
};
inline constexpr std::size_t kMostShownRows = 40;

struct ShownThing {
  FoundKind kind = FoundKind::sender;
  std::string id;
  std::vector<ShownFact> facts;
  std::vector<ShownRows> lists;
  std::optional<LeadsTo> leadsTo;
  std::string source;  ///< empty where a thing has none of its own
};

/// By id or, where no id is meant, by its whole name; signs, blanks and letter case aside. Refuses thing-unknown with
/// what comes near, thing-ambiguous with the choices. Throws catalog::CatalogueError.
Expected<ShownThing> showThing(const catalog::Catalogue& catalogue, const std::string& id,
                               const std::vector<FoundKind>& kinds, const DisplayUnits& units);

}  // namespace ohmkin::workflow
