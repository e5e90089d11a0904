#include <catalogue/catalogue_page.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <QMenu>
#include <QTimer>
#include <QVBoxLayout>

namespace ohmkin::shelves {

using desk::plain;
using look::Paint;
using look::space;

CataloguePage::CataloguePage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      whole_(new parts::BlankSheet(this)),
      stack_(new QStackedWidget(this)),
      query_(new parts::QueryBox(this)),
      parts_(new parts::Segmented(tr("What to do"), this)),
      said_(new parts::Words({}, this)),
      desks_(new QStackedWidget(this)) {
  query_->edit()->setPlaceholderText(tr("Part number, old number, vehicle line, casting, family, thread, connector …"));
  query_->edit()->setAccessibleName(tr("Find anything"));
  query_->edit()->setAccessibleDescription(
      tr("Part number, old number, vehicle line, casting, family, thread, connector, in any spelling"));
  query_->edit()->installEventFilter(this);
  parts_->setSegments({tr("Find"), tr("Table"), tr("Shelf"), tr("Changes")});
  desks_->addWidget(makeFinding());
  const auto onPanel = [this](QWidget* inner) {
    auto* panel = new parts::Panel(parts::Panel::Kind::sheet, this);
    auto* layout = new QVBoxLayout(panel);
    layout->setContentsMargins(2, 2, 2, 2);
    layout->addWidget(inner);
    desks_->addWidget(panel);
  };
  table_ = new TableDesk(reader_, clerk_, settings);
  table_->view().setObjectName(QString());  // it keeps columns for each kind itself
  onPanel(table_);
  shelf_ = new ShelfDesk(clerk_);
  onPanel(shelf_);
  changes_ = new ChangeList(ChangeList::Of::everything, clerk_, settings);
  changes_->layout()->setContentsMargins(space(14), space(14), space(14), space(10));
  onPanel(changes_);
  auto* work = new QWidget(this);
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(query_);
  auto* row = new QHBoxLayout;
  row->setSpacing(space(16));
  row->addWidget(parts_, 0);
  row->addWidget(said_, 1);
  auto* copies = new QPushButton(tr("Backups…"), work);
  copies->setToolTip(tr("Copies of this catalogue: make, check, go back to one (Ctrl+B)"));
  copies->setMinimumHeight(space(32));
  row->addStretch(0);
  row->addWidget(copies);
  connect(copies, &QPushButton::clicked, this, &Page::copiesRequested);
  column->addLayout(row);
  column->addWidget(desks_, 1);
  stack_->addWidget(whole_);
  stack_->addWidget(work);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(24), space(24), space(16));
  outer->addWidget(stack_);
  said_->hide();
  parts::sayNoCatalogue(*whole_, {});
  wire();
  wireClerks();
  offerActions();
  showState();
}

QWidget* CataloguePage::makeFinding() {
  split_ = new QSplitter(Qt::Horizontal, this);
  split_->setObjectName(QStringLiteral("findSplit"));
  split_->setChildrenCollapsible(false);
  split_->setHandleWidth(space(14));
  auto* left = new QWidget(split_);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(6));
  hint_ = (new parts::Words({}, left))->painted(Paint::quiet);
  found_ = new FoundList(left);
  column->addWidget(hint_);
  column->addWidget(found_, 1);
  thing_ = new ThingDesk(clerk_, settings_, split_);
  split_->addWidget(left);
  split_->addWidget(thing_);
  split_->setStretchFactor(0, 4);
  split_->setStretchFactor(1, 6);
  return split_;
}

void CataloguePage::wire() {
  parts::askThrough(*this, *whole_);
  connect(query_, &parts::QueryBox::asked, this, &CataloguePage::asked);
  connect(parts_, &parts::Segmented::chosen, this, [this](int part) {
    desks_->setCurrentIndex(part);
    if (part == shelf) shelf_->reload();
    if (part == log) changes_->reload();
    showState();
    if (part == find) query_->takeFocus();
    else takeKeyboard();
  });
  connect(found_, &FoundList::chosen, thing_, &ThingDesk::preview);
  connect(found_, &FoundList::opened, this, [this] {
    const int row = found_->currentIndex().row();
    if (row >= 0) openThing(found_->rows().row(row).ref);
  });
  connect(found_, &FoundList::endNeared, this, &CataloguePage::askMore);
  connect(thing_, &ThingDesk::changed, this, &CataloguePage::changed);
  connect(thing_, &ThingDesk::moved, this, &CataloguePage::moved);
  connect(thing_, &ThingDesk::stateChanged, this, &CataloguePage::showState);
  connect(table_, &TableDesk::opened, this, &CataloguePage::openThing);
  connect(table_, &TableDesk::saved, this, &CataloguePage::changed);
  connect(shelf_, &ShelfDesk::opened, this, &CataloguePage::openThing);
  connect(changes_, &ChangeList::reverted, this, &CataloguePage::changed);
  connect(&settings_, &desk::Settings::unitsChanged, this, [this] {
    if (!ready()) return;
    table_->catalogueOpened();
    changes_->reload();
  });
}

void CataloguePage::wireClerks() {
  connect(&clerk_, &Clerk::opened, this, [this](const QString& file) {
    file_ = file;
    finder_.open(file);
    reader_.open(file);
    finder_.tell([](OpenFile& open, const std::stop_token&) -> Clerk::Then {
      open.finder();  // read before the first key
      return {};
    });
    stack_->setCurrentIndex(1);
    history().clear();
    thing_->catalogueOpened();
    table_->catalogueOpened();
    shelf_->reload();
    changes_->show({});
    tell({}, false);
    countRows();
    emit opened(file);
    asked(query_->text());
  });
  connect(&clerk_, &Clerk::openingRefused, this, [this](const QString& file, const Refusal& refusal) {
    forget(refusal);
    emit refused(file, desk::refusalSentence(refusal));
  });
  for (Clerk* each : {&finder_, &reader_, &clerk_})
    connect(each, &Clerk::failed, this, [this](const Refusal& refusal) {
      if (refusal.code == "catalogue-busy") tell(desk::refusalSentence(refusal), true);
      else forget(refusal);
    });
}

void CataloguePage::offerActions() {
  offer(tr("Find anything"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] {
    parts_->choose(find);
    query_->takeFocus();
  });
  onThing_ = {offer(tr("Edit the thing shown"), QKeySequence(Qt::Key_F2), [this] { thing_->edit(); }),
              offer(tr("Duplicate the thing shown as new"), QKeySequence(Qt::CTRL | Qt::Key_D),
                    [this] { thing_->duplicate(); }),
              offer(tr("Delete the thing shown"), {}, [this] { thing_->askRemove(); })};
  save_ = offer(tr("Save what the form says"), QKeySequence(Qt::CTRL | Qt::Key_S), [this] { thing_->save(); });
  offer(tr("Make something new"), QKeySequence(Qt::CTRL | Qt::Key_N), [this] { offerKinds(); });
  sell_ = offer(tr("Sell one piece"), QKeySequence(Qt::Key_F4), [this] { thing_->stock().sellOne(); });
  receive_ = offer(tr("Receive pieces"), QKeySequence(Qt::Key_F6),
                   [this] { thing_->stock().ask(StockPanel::Movement::receive); });
  for (const auto& [words, movement] : {std::pair{tr("Count a bin by hand"), StockPanel::Movement::count},
                                        std::pair{tr("Move pieces to another bin"), StockPanel::Movement::move},
                                        std::pair{tr("Set the minimum"), StockPanel::Movement::minimum}})
    onThing_.push_back(offer(words, {}, [this, which = movement] { thing_->stock().ask(which); }));
  back_ =
      offer(tr("Back to what was looked at before"), QKeySequence(Qt::ALT | Qt::Key_Left), [this] { thing_->back(); });
  forward_ = offer(tr("Forward again"), QKeySequence(Qt::ALT | Qt::Key_Right), [this] { thing_->forward(); });
  offer(tr("Out of the form"), QKeySequence(Qt::Key_Escape), [this] {
    if (desks_->currentIndex() != find || !(thing_->editing() || thing_->stock().asking())) query_->takeFocus();
    thing_->escape();
  });
  offer(tr("Next part of the catalogue"), QKeySequence(Qt::CTRL | Qt::Key_PageDown),
        [this] { parts_->choose(std::min(parts_->chosenIndex() + 1, parts_->count() - 1)); });
  offer(tr("Previous part of the catalogue"), QKeySequence(Qt::CTRL | Qt::Key_PageUp),
        [this] { parts_->choose(std::max(parts_->chosenIndex() - 1, 0)); });
}

/// What can be done now follows what is shown.
void CataloguePage::showState() {
  const bool looking = desks_->currentIndex() == find && !thing_->ref().empty() && !thing_->editing();
  const bool part = looking && thing_->ref().kind == "sender";
  for (QAction* action : onThing_) action->setEnabled(looking);
  for (QAction* action : {sell_, receive_, onThing_[3], onThing_[4], onThing_[5]}) action->setEnabled(part);
  save_->setEnabled(thing_->editing());
  back_->setEnabled(thing_->canGoBack() && !thing_->editing());
  forward_->setEnabled(thing_->canGoForward() && !thing_->editing());
}

void CataloguePage::openCatalogue(const QString& file) {
  parts::sayOpening(*whole_, file);
  stack_->setCurrentIndex(0);
  clerk_.open(file);
}

QString CataloguePage::unsaved() const {
  if (thing_->editing() && thing_->form().dirty()) {
    const workflow::Thing thing = thing_->form().thing();
    if (thing.isNew()) return tr("a new %1").arg(plain(workflow::editKind(thing.kind)->label));
    return tr("%1, being edited").arg(plain(workflow::nameOf(thing)));
  }
  if (ready() && thing_->stock().asking()) return tr("a movement of %1, not made yet").arg(thing_->shownNow().number);
  return {};
}

void CataloguePage::showNoCatalogue() { forget({}); }

void CataloguePage::forget(const std::optional<Refusal>& whyNot) {
  file_.clear();
  history().clear();
  thing_->catalogueOpened();
  parts::sayNoCatalogue(*whole_, whyNot);
  stack_->setCurrentIndex(0);
}

void CataloguePage::takeKeyboard() {
  if (!ready() || desks_->currentIndex() == find) {
    if (thing_->editing()) thing_->takeKeyboard();
    else query_->takeFocus();
  } else if (desks_->currentIndex() == table) {
    table_->takeKeyboard();
  } else if (desks_->currentIndex() == shelf) {
    shelf_->takeKeyboard();
  } else {
    changes_->view().setFocus(Qt::ShortcutFocusReason);
  }
}

void CataloguePage::openThing(const Ref& ref) {
  if (desks_->currentIndex() != find) {
    parts_->choose(find);
  }
  thing_->open(ref);
  thing_->takeKeyboard();
  if (!thing_->editing()) QTimer::singleShot(0, thing_, &ThingDesk::takeKeyboard);
}

/// Side by side where both have room, otherwise one under the other.
void CataloguePage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  const Qt::Orientation wanted = width() < space(760) ? Qt::Vertical : Qt::Horizontal;
  if (split_->orientation() != wanted) split_->setOrientation(wanted);
}

void CataloguePage::offerKinds() {
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  for (const workflow::EditKind& kind : workflow::editKinds())
    connect(menu->addAction(tr("New %1").arg(plain(kind.label))), &QAction::triggered, this, [this, name = kind.name] {
      if (desks_->currentIndex() != find) parts_->choose(find);
      thing_->create(name);
    });
  menu->popup(query_->mapToGlobal(QPoint(space(18), query_->height())));
  menu->setActiveAction(menu->actions().front());
}

void CataloguePage::tell(const QString& sentence, bool refused) {
  said_->painted(refused ? Paint::warning : Paint::accent)->setText(sentence);
  said_->setVisible(!sentence.isEmpty());
}

QString CataloguePage::asText() const { return thing_->asText(); }

QVariantMap CataloguePage::layoutState() const {
  QVariantMap state = Page::layoutState();
  state[QStringLiteral("table")] = table_->layoutState();
  return state;
}

void CataloguePage::restoreLayout(const QVariantMap& state) {
  Page::restoreLayout(state);
  table_->restoreLayout(state.value(QStringLiteral("table")).toMap());
}

}  // namespace ohmkin::shelves
