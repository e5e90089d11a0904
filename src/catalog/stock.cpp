#include <catalog/stock_rows.h>

namespace ohmkin::catalog {

std::string_view text(StockMovementKind kind) { return wordFor(kMovementKinds, kind); }

StockMovement movementOf(Row& row) {
  StockMovement m;
  m.id.value = row.longWhole();
  m.at = row.text();
  m.who = row.text();
  m.kind = row.oneOf(kMovementKinds);
  m.sender = row.key<SenderKey>();
  m.bin = row.text();
  m.change = row.whole();
  m.leftInBin = row.whole();
  m.otherBin = row.text();
  m.note = row.text();
  if (const auto job = row.maybeWhole()) m.job = JobNumber{*job};
  if (const auto undoes = row.maybeWhole()) m.undoes = MovementNumber{*undoes};
  if (const auto by = row.maybeWhole()) m.undoneBy = MovementNumber{*by};
  return m;
}

std::vector<Stock> stock(const Catalogue& catalogue, const SenderKey& sender) {
  return ask(catalogue, "SELECT " OHMKIN_STOCK_COLUMNS " FROM stock WHERE sender = ? ORDER BY quantity DESC, bin",
             stockOf, sender.text);
}

std::vector<Stock> allStock(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT " OHMKIN_STOCK_COLUMNS " FROM stock ORDER BY sender, quantity DESC, bin", stockOf);
}

std::vector<Stock> stockUnderMinimum(const Catalogue& catalogue) {
  return ask(catalogue,
             "SELECT " OHMKIN_STOCK_COLUMNS
             " FROM stock WHERE sender IN (SELECT w.sender FROM stock w WHERE w.sender IN "
             "(SELECT sender FROM stock WHERE minimum > 0) GROUP BY w.sender HAVING sum(w.quantity) < sum(w.minimum)) "
             "ORDER BY sender, quantity DESC, bin",
             stockOf);
}

std::vector<SenderKey> stockedNumbered(const Catalogue& catalogue, std::string_view number) {
  return ask(
      catalogue,
      "SELECT DISTINCT sender FROM stock "
      "WHERE replace(replace(replace(replace(upper(sender), ' ', ''), '-', ''), '.', ''), '/', '') = ? ORDER BY sender",
      [](Row& row) { return row.key<SenderKey>(); }, plainNumber(number));
}

std::vector<StockMovement> movements(const Catalogue& catalogue, int most) {
  return ask(catalogue, "SELECT " OHMKIN_MOVEMENT_COLUMNS " FROM stock_movement m ORDER BY m.id DESC LIMIT ?",
             movementOf, most);
}

std::vector<StockMovement> movementsOf(const Catalogue& catalogue, const SenderKey& sender, int most) {
  return ask(catalogue,
             "SELECT " OHMKIN_MOVEMENT_COLUMNS " FROM stock_movement m WHERE m.sender = ? ORDER BY m.id DESC LIMIT ?",
             movementOf, sender.text, most);
}

std::vector<StockMovement> movementsOfJob(const Catalogue& catalogue, JobNumber job) {
  return ask(catalogue, "SELECT " OHMKIN_MOVEMENT_COLUMNS " FROM stock_movement m WHERE m.job = ? ORDER BY m.id DESC",
             movementOf, job.value);
}

std::optional<StockMovement> movement(const Catalogue& catalogue, MovementNumber id) {
  return first(
      ask(catalogue, "SELECT " OHMKIN_MOVEMENT_COLUMNS " FROM stock_movement m WHERE m.id = ?", movementOf, id.value));
}

}  // namespace ohmkin::catalog
