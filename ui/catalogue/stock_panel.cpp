#include <catalogue/lanes.h>
#include <catalogue/stock_panel.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <QApplication>
#include <QGridLayout>
#include <QMenu>
#include <QVBoxLayout>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

constexpr int kMovementsShown = 8;

parts::Words* nameOver(const QString& text, QWidget* parent) {
  return (new parts::Words(text, parent))->sized(typeface(Text::small))->painted(Paint::quiet);
}

QString whenOf(const std::string& utc) { return plain(utc.substr(0, 16)).replace(QLatin1Char('T'), QLatin1Char(' ')); }

QString wordsOfMovement(StockPanel::Movement movement) {
  switch (movement) {
    case StockPanel::Movement::sell:
      return StockPanel::tr("Sell");
    case StockPanel::Movement::receive:
      return StockPanel::tr("Receive");
    case StockPanel::Movement::count:
      return StockPanel::tr("Count by hand");
    case StockPanel::Movement::move:
      return StockPanel::tr("Move to another bin");
    case StockPanel::Movement::minimum:
      return StockPanel::tr("Set the minimum");
  }
  return {};
}

}  // namespace

StockPanel::StockPanel(Clerk& clerk, QWidget* parent)
    : QWidget(parent),
      clerk_(clerk),
      words_(new parts::Words({}, this)),
      bins_(new parts::CellView(tr("Bins of this part"), this)),
      binRows_(new QStandardItemModel(this)),
      sell_(new QPushButton(tr("Sell &one"), this)),
      more_(new QPushButton(tr("&More…"), this)),
      told_(new parts::Words({}, this)),
      history_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)) {
  form_ = makeForm();  // its fields are members too
  sell_->setToolTip(tr("One piece from the fullest bin (F4)"));
  more_->setToolTip(tr("Receive, count, move, minimum"));
  auto* menu = new QMenu(this);
  for (const Movement each : {Movement::sell, Movement::receive, Movement::count, Movement::move, Movement::minimum})
    connect(menu->addAction(wordsOfMovement(each) + QStringLiteral("…")), &QAction::triggered, this,
            [this, each] { ask(each); });
  more_->setMenu(menu);
  bins_->setModel(binRows_);
  bins_->showAtMost(5);
  auto* top = new QHBoxLayout;
  top->setSpacing(space(8));
  top->addWidget((new parts::Words(tr("On the shelf"), this))->sized(typeface(Text::strong)), 1);
  for (QPushButton* button : {sell_, more_}) {
    button->setMinimumHeight(space(32));
    top->addWidget(button);
  }
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(6));
  column->addLayout(top);
  for (QWidget* each : std::initializer_list<QWidget*>{words_, told_, bins_, form_, history_}) column->addWidget(each);
  told_->hide();
  form_->hide();
  connect(sell_, &QPushButton::clicked, this, &StockPanel::sellOne);
}

QWidget* StockPanel::makeForm() {
  auto* form = new parts::Panel(parts::Panel::Kind::dashed, this);
  formWords_ = (new parts::Words({}, form))->sized(typeface(Text::strong));
  quantity_ = new parts::Entry(tr("Pieces"), form);
  bin_ = new parts::Entry(tr("Bin"), form);
  other_ = new parts::Entry(tr("To bin"), form);
  otherName_ = nameOver(tr("To bin"), form);
  note_ = new parts::Entry(tr("Note"), form);
  do_ = new QPushButton(form);
  auto* leave = new QPushButton(tr("Leave it"), form);
  auto* grid = new QGridLayout(form);
  grid->setContentsMargins(space(12), space(10), space(12), space(12));
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(3));
  grid->addWidget(formWords_, 0, 0, 1, 4);
  grid->addWidget(nameOver(tr("Pieces"), form), 1, 0);
  grid->addWidget(nameOver(tr("Bin"), form), 1, 1);
  grid->addWidget(otherName_, 1, 2);
  grid->addWidget(nameOver(tr("Note"), form), 1, 3);
  grid->addWidget(quantity_, 2, 0);
  grid->addWidget(bin_, 2, 1);
  grid->addWidget(other_, 2, 2);
  grid->addWidget(note_, 2, 3);
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(space(8));
  for (QPushButton* button : {do_, leave}) {
    button->setMinimumHeight(space(32));
    buttons->addWidget(button);
  }
  buttons->addStretch(1);
  grid->setRowMinimumHeight(3, space(4));
  grid->addLayout(buttons, 4, 0, 1, 4);
  for (int column = 0; column < 4; ++column) grid->setColumnStretch(column, column == 3 ? 2 : 1);
  bin_->setPlaceholderText(tr("fullest"));
  connect(do_, &QPushButton::clicked, this, &StockPanel::take);
  connect(leave, &QPushButton::clicked, this, &StockPanel::giveUp);
  for (parts::Entry* entry : {quantity_, bin_, other_, note_})
    connect(entry, &parts::Entry::left, this, [this](int way) {
      if (way > 0) take();
    });
  connect(quantity_, &QLineEdit::textChanged, this, [this](const QString& text) {
    bool whole = false;
    text.trimmed().toInt(&whole);
    quantity_->setWrong(!text.isEmpty() && !whole);
  });
  return form;
}

void StockPanel::show(const std::string& part) {
  if (part != part_) {
    giveUp();
    tell({}, false);
    binRows_->setRowCount(0);
    words_->setText({});
    history_->setText({});
  }
  part_ = part;
  setVisible(!part.empty());
  reload();
}

void StockPanel::reload() {
  if (part_.empty()) return;
  clerk_.ask(shelving, [this, part = part_](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    const auto shelf = workflow::onShelf(open.catalogue(), part);
    if (!shelf) return [this, why = shelf.error()] { words_->setText(desk::refusalSentence(why)); };
    auto movements = workflow::movementsOf(open.catalogue(), part, kMovementsShown);
    return [this, shelf = *shelf, movements = movements ? *movements : std::vector<catalog::StockMovement>()] {
      display(shelf, movements);
    };
  });
}

void StockPanel::display(const workflow::PartOnShelf& shelf, const std::vector<catalog::StockMovement>& movements) {
  QString sentence = shown(shelf.sentence());
  if (shelf.low()) sentence += QLatin1Char(' ') + tr("Under the minimum of %1.").arg(shelf.minimum);
  words_->painted(shelf.low() ? Paint::warning : Paint::ink)->setText(sentence);
  binRows_->clear();
  binRows_->setHorizontalHeaderLabels({tr("Bin"), tr("Pieces"), tr("Minimum")});
  for (const catalog::Stock& bin : shelf.bins) {
    QList<QStandardItem*> cells;
    for (const QString& text : {plain(bin.bin), QString::number(bin.quantity), QString::number(bin.minimum)})
      cells << new QStandardItem(text);
    binRows_->appendRow(cells);
  }
  bins_->setVisible(shelf.bins.size() > 1);
  bins_->fitColumns();
  sell_->setEnabled(true);
  QStringList lines;
  for (const catalog::StockMovement& each : movements)
    lines << tr("%1  %2, %3").arg(whenOf(each.at), shown(workflow::wordsOf(each)), plain(each.who));
  history_->setText(lines.join(QLatin1Char('\n')));
  history_->setVisible(!lines.isEmpty());
}

void StockPanel::sellOne() {
  run([part = part_](catalog::Catalogue& catalogue, const workflow::MovementSaid& said) {
    return workflow::sell(catalogue, part, {}, 1, said);
  });
}

void StockPanel::ask(Movement movement) {
  movement_ = movement;
  formWords_->setText(wordsOfMovement(movement));
  do_->setText(wordsOfMovement(movement));
  other_->setVisible(movement == Movement::move);
  otherName_->setVisible(movement == Movement::move);
  const bool named = movement == Movement::count || movement == Movement::minimum;
  bin_->setPlaceholderText(named && binRows_->rowCount() > 0 ? binRows_->item(0, 0)->text() : tr("fullest"));
  quantity_->setText(movement == Movement::sell || movement == Movement::receive ? QStringLiteral("1") : QString());
  for (parts::Entry* entry : {bin_, other_, note_}) entry->clear();
  tell({}, false);
  form_->show();
  quantity_->setFocus(Qt::OtherFocusReason);
  quantity_->selectAll();
}

void StockPanel::giveUp() {
  const bool hadKeyboard = form_->isVisible() && form_->isAncestorOf(QApplication::focusWidget());
  form_->hide();
  if (hadKeyboard) sell_->setFocus(Qt::OtherFocusReason);
}

void StockPanel::take() {
  bool whole = false;
  const int pieces = quantity_->text().trimmed().toInt(&whole);
  if (!whole) {
    quantity_->setWrong(true);
    tell(tr("Pieces: found '%1', expected a whole number.").arg(quantity_->text()), true);
    return;
  }
  std::string bin = bin_->text().trimmed().toStdString();
  const std::string other = other_->text().trimmed().toStdString();
  const bool named = movement_ == Movement::count || movement_ == Movement::minimum;
  if (bin.empty() && named && binRows_->rowCount() > 0) bin = binRows_->item(0, 0)->text().toStdString();
  if (movement_ == Movement::minimum) {
    runMinimum(pieces);
    return;
  }
  run([=, part = part_, movement = movement_](catalog::Catalogue& catalogue, const workflow::MovementSaid& said) {
    switch (movement) {
      case Movement::receive:
        return workflow::receive(catalogue, part, bin, pieces, said);
      case Movement::count:
        return workflow::countBin(catalogue, part, bin, pieces, said);
      case Movement::move:
        return workflow::moveToBin(catalogue, part, bin, other, pieces, said);
      default:
        return workflow::sell(catalogue, part, bin, pieces, said);
    }
  });
}

void StockPanel::run(
    std::function<Expected<workflow::MovementDone>(catalog::Catalogue&, const workflow::MovementSaid&)> what) {
  if (part_.empty()) return;
  clerk_.tell([this, what = std::move(what), note = form_->isVisible() ? note_->text().toStdString() : std::string()](
                  OpenFile& open, const std::stop_token&) -> Clerk::Then {
    Expected<workflow::MovementDone> done;
    try {
      done = what(open.writable(), {open.who(), note, {}});
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(error.refusal());
    }
    return [this, done] {
      tell(done ? shown(done->sentence) : desk::refusalSentence(done.error()), !done);
      if (done) {
        giveUp();
        emit moved(done->movement.id.value, shown(workflow::wordsOf(done->movement)));
      }
      reload();
    };
  });
}

void StockPanel::runMinimum(int minimum) {
  std::string bin = bin_->text().trimmed().toStdString();
  if (bin.empty() && binRows_->rowCount() > 0) bin = binRows_->item(0, 0)->text().toStdString();
  clerk_.tell([this, part = part_, bin, minimum](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    Expected<workflow::PartOnShelf> done;
    try {
      done = workflow::setMinimum(open.writable(), part, bin, minimum, open.who());
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(error.refusal());
    }
    return [this, done, minimum] {
      tell(done ? tr("The minimum is %1 now.").arg(minimum) : desk::refusalSentence(done.error()), !done);
      if (done) {
        giveUp();
        emit moved(0, {});
      }
      reload();
    };
  });
}

void StockPanel::tell(const QString& sentence, bool refused) {
  told_->painted(refused ? Paint::warning : Paint::accent)->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

}  // namespace ohmkin::shelves
