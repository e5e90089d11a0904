#include <catalog/families.h>
#include <catalog/joints.h>
#include <catalog/senders.h>
#include <fmt/format.h>
#include <sheet/shelf_label.h>
#include <workflow/stock_label.h>
#include <workflow/stock_work.h>

namespace ohmkin::workflow {
namespace {

sheet::ShelfLabel labelOf(const catalog::Catalogue& catalogue, const PartOnShelf& part) {
  sheet::ShelfLabel label;
  label.part = part.part;
  const auto sender = catalog::sender(catalogue, catalog::SenderKey(part.part));
  if (!sender) return label;
  label.family = std::string(catalog::text(sender->kind));
  if (sender->family) {
    if (const auto family = catalog::family(catalogue, *sender->family)) {
      label.family = family->name;
      if (family->coldHot)
        label.ohms = fmt::format("{} cold, {} hot", print(family->coldHot->cold), print(family->coldHot->hot));
    }
  }
  label.thread = sender->thread.text;
  if (const auto terminal = catalog::terminal(catalogue, sender->terminal)) label.terminal = terminal->name;
  return label;
}

}  // namespace

Expected<sheet::Pages> shelfLabels(const catalog::Catalogue& catalogue, const std::vector<std::string>& parts,
                                   const SheetOptions& options, bool small) {
  std::vector<PartOnShelf> wanted = parts.empty() ? shelf(catalogue) : std::vector<PartOnShelf>();
  for (const std::string& part : parts) {
    auto found = onShelf(catalogue, part);
    if (!found) return tl::make_unexpected(found.error());
    wanted.push_back(*std::move(found));
  }
  std::vector<sheet::ShelfLabel> labels;
  for (const PartOnShelf& part : wanted) {
    for (const catalog::Stock& bin : part.bins) {
      labels.push_back(labelOf(catalogue, part));
      labels.back().bin = bin.bin;
    }
  }
  if (labels.empty()) return refuse("no-labels", "label", "nothing on the shelf", "a part that has a bin");
  return small ? sheet::drawSmallLabels(labels) : sheet::drawShelfLabels(labels, options.paper);
}

}  // namespace ohmkin::workflow
