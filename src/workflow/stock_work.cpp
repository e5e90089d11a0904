#include <catalog/senders.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/readings.h>
#include <workflow/stock_work.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using catalog::SenderKey;
using catalog::Stock;
using catalog::StockMovementKind;

PartOnShelf partOf(const catalog::Catalogue& catalogue, const SenderKey& key, std::vector<Stock> bins) {
  PartOnShelf part;
  part.part = key.text;
  const auto sender = catalog::sender(catalogue, key);
  part.known = sender.has_value();
  if (sender) part.name = sender->name;
  for (const Stock& bin : bins) {
    part.quantity += bin.quantity;
    part.minimum += bin.minimum;
  }
  part.bins = std::move(bins);
  return part;
}

std::vector<PartOnShelf> grouped(const catalog::Catalogue& catalogue, std::vector<Stock> all) {
  std::vector<PartOnShelf> parts;
  for (std::size_t from = 0; from < all.size();) {
    std::size_t until = from + 1;
    while (until < all.size() && all[until].sender == all[from].sender) ++until;
    const SenderKey key = all[from].sender;
    std::vector<Stock> bins;
    for (std::size_t i = from; i < until; ++i) bins.push_back(std::move(all[i]));
    parts.push_back(partOf(catalogue, key, std::move(bins)));
    from = until;
  }
  return parts;
}

/// A part of the catalogue, or one that lies on the shelf though no pack has it.
Expected<SenderKey> keyOf(const catalog::Catalogue& catalogue, std::string_view part) {
  if (const SenderKey as{std::string(part)}; !part.empty() && !catalog::stock(catalogue, as).empty()) return as;
  const auto known = catalog::sendersNumbered(catalogue, part);
  for (const auto& sender : known)
    if (sender.id.text == part) return sender.id;
  const auto stocked = catalog::stockedNumbered(catalogue, part);
  if (known.size() == 1 && (stocked.empty() || stocked.front() == known.front().id)) return known.front().id;
  if (known.empty() && stocked.size() == 1) return stocked.front();
  if (known.empty() && stocked.empty()) return tl::make_unexpected(unknownPart(catalogue, std::string(part)));
  return refuse("part-unclear", std::string(part), "more than one part of that number", "it written exactly");
}

/// Where a sale comes from, where nobody said: the fullest bin; a receipt goes to the only one.
Expected<std::string> binFor(const PartOnShelf& part, std::string_view bin, bool taken) {
  if (!bin.empty()) return std::string(bin);
  if (part.bins.empty())
    return refuse("bin-empty", part.part, "no bin, and it never lay in one", "the bin it is to lie in");
  if (!taken && part.bins.size() > 1) {
    std::string names;
    for (const Stock& one : part.bins) names += (names.empty() ? "" : ", ") + one.bin;
    return refuse("bin-unclear", part.part, "no bin, and it lies in several", "one of " + names);
  }
  return part.bins.front().bin;
}

std::string binsInWords(const PartOnShelf& part) {
  std::string words;
  for (const Stock& bin : part.bins)
    if (bin.quantity > 0) words += fmt::format("{}{} in {}", words.empty() ? "" : ", ", bin.quantity, bin.bin);
  return words;
}

Expected<MovementDone> done(const catalog::Catalogue& catalogue, Expected<catalog::StockMovement> made) {
  if (!made) {
    Refusal refusal = made.error();
    // Where a bin is short, the others are named as well.
    if (refusal.code == "stock-short") {
      const SenderKey key{refusal.where};
      const std::string words = binsInWords(partOf(catalogue, key, catalog::stock(catalogue, key)));
      refusal.found += words.empty() ? "; none on the shelf" : fmt::format("; on the shelf: {}", words);
    }
    return tl::make_unexpected(std::move(refusal));
  }
  MovementDone result{*std::move(made), {}, {}};
  const auto& m = result.movement;
  result.after = partOf(catalogue, m.sender, catalog::stock(catalogue, m.sender));
  result.sentence = fmt::format("{}: {}.", m.sender.text, wordsOf(m));
  if (result.after.low())
    result.sentence +=
        fmt::format(" Under its minimum: {} there, {} wanted.", result.after.quantity, result.after.minimum);
  return result;
}

Expected<MovementDone> make(catalog::Catalogue& catalogue, std::string_view part, catalog::MovementToMake wanted,
                            const MovementSaid& said, bool taken) {
  auto key = keyOf(catalogue, part);
  if (!key) return tl::make_unexpected(key.error());
  const PartOnShelf now = partOf(catalogue, *key, catalog::stock(catalogue, *key));
  auto bin = binFor(now, wanted.bin, taken);
  if (!bin) return tl::make_unexpected(bin.error());
  wanted.sender = *std::move(key);
  wanted.bin = *std::move(bin);
  wanted.note = said.note;
  wanted.job = said.job;
  return done(catalogue, catalog::moveStock(catalogue, wanted, said.who));
}

}  // namespace

std::string PartOnShelf::sentence() const {
  std::string words = quantity == 0 ? fmt::format("{}: none on the shelf", part)
                                    : fmt::format("{}: {} on the shelf, {}", part, quantity, binsInWords(*this));
  if (low()) words += fmt::format("; under its minimum of {}", minimum);
  if (!known) words += "; no longer in the catalogue";
  return words + ".";
}

Expected<PartOnShelf> onShelf(const catalog::Catalogue& catalogue, std::string_view part) {
  return keyOf(catalogue, part).map([&](const SenderKey& key) {
    return partOf(catalogue, key, catalog::stock(catalogue, key));
  });
}

std::vector<PartOnShelf> shelf(const catalog::Catalogue& catalogue, std::string_view text) {
  auto parts = grouped(catalogue, catalog::allStock(catalogue));
  const std::string wanted = folded(text);
  if (wanted.empty()) return parts;
  const auto misses = [&](const PartOnShelf& part) {
    const auto in = [&](const std::string& words) { return folded(words).find(wanted) != std::string::npos; };
    return !in(part.part) && !in(part.name) &&
           std::none_of(part.bins.begin(), part.bins.end(), [&](const Stock& bin) { return in(bin.bin); });
  };
  std::erase_if(parts, misses);
  return parts;
}

std::vector<PartOnShelf> underMinimum(const catalog::Catalogue& catalogue) {
  auto parts = grouped(catalogue, catalog::stockUnderMinimum(catalogue));
  std::stable_sort(parts.begin(), parts.end(), [](const PartOnShelf& a, const PartOnShelf& b) {
    return a.minimum - a.quantity > b.minimum - b.quantity;
  });
  return parts;
}

Expected<MovementDone> sell(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin, int quantity,
                            const MovementSaid& said) {
  return make(catalogue, part, {StockMovementKind::sale, {}, std::string(bin), quantity, {}, {}, {}}, said, true);
}

Expected<MovementDone> receive(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin, int quantity,
                               const MovementSaid& said) {
  return make(catalogue, part, {StockMovementKind::receipt, {}, std::string(bin), quantity, {}, {}, {}}, said, false);
}

Expected<MovementDone> countBin(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin, int there,
                                const MovementSaid& said) {
  return make(catalogue, part, {StockMovementKind::count, {}, std::string(bin), there, {}, {}, {}}, said, false);
}

Expected<MovementDone> moveToBin(catalog::Catalogue& catalogue, std::string_view part, std::string_view from,
                                 std::string_view to, int quantity, const MovementSaid& said) {
  return make(catalogue, part, {StockMovementKind::move, {}, std::string(from), quantity, std::string(to), {}, {}},
              said, false);
}

Expected<MovementDone> undoMovement(catalog::Catalogue& catalogue, catalog::MovementNumber id, std::string_view who) {
  return done(catalogue, catalog::undoMovement(catalogue, id, who));
}

Expected<PartOnShelf> setMinimum(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin,
                                 int minimum, std::string_view who) {
  const auto now = onShelf(catalogue, part);
  if (!now) return now;
  const auto where = binFor(*now, bin, false);
  if (!where) return tl::make_unexpected(where.error());
  if (const auto set = catalog::setMinimum(catalogue, SenderKey(now->part), *where, minimum, who); !set)
    return tl::make_unexpected(set.error());
  return onShelf(catalogue, now->part);
}

Expected<PartOnShelf> forgetBin(catalog::Catalogue& catalogue, std::string_view part, std::string_view bin,
                                std::string_view who) {
  auto key = keyOf(catalogue, part);
  if (!key) return tl::make_unexpected(key.error());
  if (const auto gone = catalog::forgetBin(catalogue, *key, std::string(bin), who); !gone)
    return tl::make_unexpected(gone.error());
  return partOf(catalogue, *key, catalog::stock(catalogue, *key));
}

std::string wordsOf(const catalog::StockMovement& m) {
  switch (m.kind) {
    case StockMovementKind::sale:
      return fmt::format("sold {} from {}, {} left there", -m.change, m.bin, m.leftInBin);
    case StockMovementKind::receipt:
      return fmt::format("received {} into {}, {} there now", m.change, m.bin, m.leftInBin);
    case StockMovementKind::count:
      return m.change == 0 ? fmt::format("counted {} in {}, as written", m.leftInBin, m.bin)
                           : fmt::format("counted {} in {}, {} {} than written", m.leftInBin, m.bin,
                                         m.change < 0 ? -m.change : m.change, m.change < 0 ? "fewer" : "more");
    case StockMovementKind::move:
      return fmt::format("moved {} from {} to {}, {} left in {}", -m.change, m.bin, m.otherBin, m.leftInBin, m.bin);
    case StockMovementKind::undo:
      return fmt::format("movement {} undone, {} in {} now", m.undoes ? m.undoes->value : 0, m.leftInBin, m.bin);
  }
  return {};
}

Expected<std::vector<catalog::StockMovement>> movementsOf(const catalog::Catalogue& catalogue, std::string_view part,
                                                          int most) {
  if (part.empty()) return catalog::movements(catalogue, most);
  return keyOf(catalogue, part).map([&](const SenderKey& key) { return catalog::movementsOf(catalogue, key, most); });
}

}  // namespace ohmkin::workflow
