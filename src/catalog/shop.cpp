#include <catalog/row.h>
#include <catalog/shop.h>

namespace ohmkin::catalog {

std::vector<Stock> stock(const Catalogue& catalogue, const SenderKey& sender) {
  const auto read = [](Row& row) {
    Stock s;
    s.sender = row.key<SenderKey>();
    s.bin = row.text();
    s.quantity = row.whole();
    s.minimum = row.whole();
    return s;
  };
  return ask(catalogue, "SELECT sender, bin, quantity, minimum FROM stock WHERE sender = ? ORDER BY quantity DESC, bin",
             read, sender.text);
}

}  // namespace ohmkin::catalog
