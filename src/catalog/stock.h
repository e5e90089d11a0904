#pragma once
#include <catalog/bench_records.h>
#include <catalog/catalogue.h>
#include <catalog/key.h>
#include <catalog/shop.h>
#include <finding/refusal.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What came to the shelf and went from it. Quantities change only by movements; all that is written here is one
/// transaction with the write lock from its beginning, so that two counters on one file lose nothing. Writers throw
/// catalogue-read-only, catalogue-busy.
namespace ohmkin::catalog {

using MovementNumber = Number<struct MovementNoun>;
using JobNumber = Number<struct JobNoun>;

enum class StockMovementKind {
  sale,
  receipt,
  count,  ///< counted by hand: the difference to what was written down
  move,   ///< from one bin to another
  undo    ///< contrary to another movement
};
std::string_view text(StockMovementKind kind);  ///< "sale"

struct StockMovement {
  MovementNumber id;
  std::string at;  ///< UTC, ISO 8601
  std::string who;
  StockMovementKind kind = StockMovementKind::sale;
  SenderKey sender;
  std::string bin;
  int change = 0;        ///< pieces that came into the bin; negative: that went out of it
  int leftInBin = 0;     ///< afterwards
  std::string otherBin;  ///< of a move and its undoing: got what the bin lost; else empty
  std::string note;
  std::optional<JobNumber> job;
  std::optional<MovementNumber> undoes;
  std::optional<MovementNumber> undoneBy;
};

struct MovementToMake {
  StockMovementKind kind = StockMovementKind::sale;  ///< never undo: undoMovement()
  SenderKey sender;
  std::string bin;
  int quantity = 0;      ///< pieces, above 0; of a count what is there, 0 or more
  std::string otherBin;  ///< of a move
  std::string note;
  std::optional<JobNumber> job;
};

/// Most pieces a bin holds or a movement moves.
inline constexpr int kMostPieces = 1'000'000;

/// Refuses (stock-short) to take more than is there and says what is, (quantity-out-of-range), (bin-same), (bin-empty)
/// a bin without a name, (job-unknown). A receipt, a count or a move makes the bin where there was none. The row
/// becomes the shop's own.
Expected<StockMovement> moveStock(Catalogue& catalogue, const MovementToMake& wanted, std::string_view who);
/// Refuses (movement-unknown), (movement-undone) a second time, (stock-short).
Expected<StockMovement> undoMovement(Catalogue& catalogue, MovementNumber id, std::string_view who);
/// Refuses (bin-unknown), (quantity-out-of-range). With a line in the change log, as the next.
Expected<Stock> setMinimum(Catalogue& catalogue, const SenderKey& sender, const std::string& bin, int minimum,
                           std::string_view who);
/// The bin is no longer the part's. Refuses (bin-unknown), (bin-not-empty).
Expected<void> forgetBin(Catalogue& catalogue, const SenderKey& sender, const std::string& bin, std::string_view who);

std::vector<Stock> allStock(const Catalogue& catalogue);  ///< by part number, fullest bin first
/// All bins of every part of which there is less than its minimums together.
std::vector<Stock> stockUnderMinimum(const Catalogue& catalogue);
/// Part numbers on the shelf that are written so without blanks and punctuation.
std::vector<SenderKey> stockedNumbered(const Catalogue& catalogue, std::string_view number);

/// Newest first.
std::vector<StockMovement> movements(const Catalogue& catalogue, int most);
std::vector<StockMovement> movementsOf(const Catalogue& catalogue, const SenderKey& sender, int most);
std::vector<StockMovement> movementsOfJob(const Catalogue& catalogue, JobNumber job);
std::optional<StockMovement> movement(const Catalogue& catalogue, MovementNumber id);

}  // namespace ohmkin::catalog
