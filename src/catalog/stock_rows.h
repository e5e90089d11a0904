#pragma once
#include <catalog/row.h>
#include <catalog/stock.h>

/// Inside this room only: rows of the shelf as statements give them.
namespace ohmkin::catalog {

inline constexpr Words<StockMovementKind, 5> kMovementKinds{{{StockMovementKind::sale, "sale"},
                                                             {StockMovementKind::receipt, "receipt"},
                                                             {StockMovementKind::count, "count"},
                                                             {StockMovementKind::move, "move"},
                                                             {StockMovementKind::undo, "undo"}}};

/// In the order stockOf() reads them.
#define OHMKIN_STOCK_COLUMNS "sender, bin, quantity, minimum"
inline Stock stockOf(Row& row) {
  Stock stock;
  stock.sender = row.key<SenderKey>();
  stock.bin = row.text();
  stock.quantity = row.whole();
  stock.minimum = row.whole();
  return stock;
}

/// `stock_movement` must be the alias m.
#define OHMKIN_MOVEMENT_COLUMNS                                                                                 \
  "m.id, m.at, m.who, m.kind, m.sender, m.bin, m.change, m.left_in_bin, m.other_bin, m.note, m.job, m.undoes, " \
  "(SELECT u.id FROM stock_movement u WHERE u.undoes = m.id)"
StockMovement movementOf(Row& row);

}  // namespace ohmkin::catalog
