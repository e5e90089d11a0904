#include <catalogue/lanes.h>
#include <catalogue/shelf_desk.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/words.h>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using look::space;

namespace {

constexpr int kPart = Qt::UserRole + 1;
constexpr int kMostMovements = 500;

QString binsOf(const workflow::PartOnShelf& part) {
  QStringList bins;
  for (const catalog::Stock& bin : part.bins) bins << ShelfDesk::tr("%1: %2").arg(plain(bin.bin)).arg(bin.quantity);
  return bins.join(QStringLiteral(" · "));
}

}  // namespace

ShelfDesk::ShelfDesk(Clerk& clerk, QWidget* parent)
    : QWidget(parent),
      clerk_(clerk),
      parts_(new parts::Segmented(tr("What of the shelf"), this)),
      filter_(new parts::Entry(tr("Only what holds"), this)),
      none_((new parts::Words({}, this))->painted(look::Paint::quiet)),
      view_(new parts::CellView(tr("The shelf"), this)),
      rows_(new QStandardItemModel(this)) {
  parts_->setSegments({tr("Everything"), tr("Under the minimum"), tr("Movements")});
  filter_->setPlaceholderText(tr("part number, name or bin"));
  view_->setObjectName(QStringLiteral("shelf"));
  view_->setModel(rows_);
  auto* head = new QHBoxLayout;
  head->setSpacing(space(8));
  head->addWidget(parts_);
  head->addWidget(filter_, 1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(14), space(14), space(14), space(10));
  column->setSpacing(space(8));
  column->addLayout(head);
  column->addWidget(none_);
  column->addWidget(view_, 1);
  connect(parts_, &parts::Segmented::chosen, this, [this](int part) {
    filter_->setVisible(part == all);
    reload();
  });
  connect(filter_, &QLineEdit::textChanged, this, &ShelfDesk::reload);
  connect(filter_, &parts::Entry::left, this, [this] { view_->setFocus(Qt::OtherFocusReason); });
  const auto open = [this](const QModelIndex& index) {
    const QString part = rows_->index(index.row(), 0).data(kPart).toString();
    if (!part.isEmpty()) emit opened(Ref{"sender", {part.toStdString()}});
  };
  connect(view_, &parts::CellView::opened, this, open);
  connect(view_, &QTableView::doubleClicked, this, open);
}

void ShelfDesk::reload() {
  const int part = parts_->chosenIndex();
  clerk_.ask(listing,
             [this, part, text = filter_->text().trimmed().toStdString()](OpenFile& open,
                                                                          const std::stop_token&) -> Clerk::Then {
               if (part == movements) {
                 const auto made = workflow::movementsOf(open.catalogue(), {}, kMostMovements);
                 return [this, list = made ? *made : std::vector<catalog::StockMovement>()] { displayMovements(list); };
               }
               return [this, list = part == low ? workflow::underMinimum(open.catalogue())
                                                : workflow::shelf(open.catalogue(), text)] { displayParts(list); };
             });
}

void ShelfDesk::displayParts(const std::vector<workflow::PartOnShelf>& shelf) {
  rows_->clear();
  rows_->setHorizontalHeaderLabels({tr("Part"), tr("Name"), tr("Pieces"), tr("Minimum"), tr("Bins")});
  for (const workflow::PartOnShelf& each : shelf)
    addRow({plain(each.part), each.known ? shown(each.name) : tr("not in this catalogue"),
            QString::number(each.quantity), each.minimum > 0 ? QString::number(each.minimum) : QString(), binsOf(each)},
           each.part, each.known, each.low());
  finish(parts_->chosenIndex() == low ? tr("Nothing is under its minimum.") : tr("Nothing on the shelf."));
}

void ShelfDesk::displayMovements(const std::vector<catalog::StockMovement>& list) {
  rows_->clear();
  rows_->setHorizontalHeaderLabels({tr("When"), tr("Part"), tr("What"), tr("By"), tr("Note")});
  for (const catalog::StockMovement& each : list)
    addRow({plain(each.at.substr(0, 16)).replace(QLatin1Char('T'), QLatin1Char(' ')), plain(each.sender.text),
            shown(workflow::wordsOf(each)), plain(each.who), plain(each.note)},
           each.sender.text, !each.undoneBy.has_value(), false);
  finish(tr("Nothing came or went yet."));
}

void ShelfDesk::addRow(const QStringList& cells, const std::string& part, bool known, bool warn) {
  QList<QStandardItem*> items;
  for (const QString& text : cells) {
    auto* item = new QStandardItem(text);
    item->setToolTip(parts::plainTip(text));
    item->setData(plain(part), kPart);
    item->setData(!known, parts::kCellQuiet);
    items << item;
  }
  if (warn) items[2]->setData(tr("under the minimum"), parts::kCellWrong);
  rows_->appendRow(items);
}

void ShelfDesk::finish(const QString& none) {
  none_->setText(none);
  none_->setVisible(rows_->rowCount() == 0);
  view_->setVisible(rows_->rowCount() > 0);
  view_->fitColumns();
}

void ShelfDesk::takeKeyboard() {
  if (rows_->rowCount() > 0) view_->setFocus(Qt::ShortcutFocusReason);
  else filter_->setFocus(Qt::ShortcutFocusReason);
}

}  // namespace ohmkin::shelves
