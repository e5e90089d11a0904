#pragma once
#include <catalog/stock.h>
#include <finding/refusal.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The shelf: what is on it, what it lacks, and every piece that comes or goes.
namespace ohmkin::workflow {

struct PartOnShelf {
  std::string part;
  std::string name;                  ///< of the catalogue; empty where it does not know the part
  bool known = true;                 ///< false: no pack has it, or no longer
  int quantity = 0;                  ///< in all bins
  int minimum = 0;                   ///< of all bins together
  std::vector<catalog::Stock> bins;  ///< fullest first; empty: none was ever there
  [[nodiscard]] bool low() const { return quantity < minimum; }
  [[nodiscard]] std::string sentence() const;  ///< "BR-2215: 7 on the shelf, 6 in 4C, 1 in window display."
};

/// Part numbers in whatever spelling. Refuses (part-unknown), near misses named.
Expected<PartOnShelf> onShelf(const catalog::Catalogue& catalogue, std::string_view part);
/// `text`: in part number, name or bin; empty: all. By part number.
std::vector<PartOnShelf> shelf(const catalog::Catalogue& catalogue, std::string_view text = {});
/// Of which there is less than the minimum, those that lack most first.
std::vector<PartOnShelf> underMinimum(const catalog::Catalogue& catalogue);

struct MovementSaid {
  std::string who;
  std::string note;
  std::optional<catalog::JobNumber> job;
};
struct MovementDone {
  catalog::StockMovement movement;
  PartOnShelf after;
  std::string sentence;  ///< "BR-2215: sold 1 from 4C, 5 left there."
};

/// An empty bin means the fullest one that has enough; where none is empty, the only one the part has. Refuse
/// (stock-short) and name what is where, (part-unknown), (bin-unknown), (quantity-out-of-range).
Expected<MovementDone> sell(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin, int quantity,
                            const MovementSaid& said);
Expected<MovementDone> receive(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin, int quantity,
                               const MovementSaid& said);
/// `there`: what lies in the bin, counted by hand.
Expected<MovementDone> countBin(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin, int there,
                                const MovementSaid& said);
Expected<MovementDone> moveToBin(catalog::Catalogue& catalogue, std::string_view part, std::string_view from,
                                 std::string_view to, int quantity, const MovementSaid& said);
/// By a contrary movement; an undone one is done again by undoing its undoing.
Expected<MovementDone> undoMovement(catalog::Catalogue& catalogue, catalog::MovementNumber id, std::string_view who);
Expected<PartOnShelf> setMinimum(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin,
                                 int minimum, std::string_view who);
/// An empty bin is no longer the part's.
Expected<PartOnShelf> forgetBin(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin,
                                std::string_view who);

/// "sold 1 from 4C, 5 left", for a list.
std::string wordsOf(const catalog::StockMovement& movement);
/// Newest first; an empty part: of all.
Expected<std::vector<catalog::StockMovement>> movementsOf(const catalog::Catalogue& catalogue, std::string_view part,
                                                          int most = 200);

}  // namespace ohmkin::workflow
