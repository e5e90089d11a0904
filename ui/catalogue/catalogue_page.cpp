#include <catalogue/catalogue_page.h>
#include <catalogue/field_words.h>
#include <catalogue/lanes.h>
#include <desk/catalogue_thread.h>
#include <desk/snapshot.h>
#include <look/type.h>
#include <QKeyEvent>
#include <QLocale>
#include <QMenu>
#include <QVBoxLayout>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using look::Paint;
using look::space;

namespace {

constexpr std::size_t kFoundAtOnce = 40;

}  // namespace

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
  connect(whole_, &parts::BlankSheet::openRequested, this, &Page::openRequested);
  connect(whole_, &parts::BlankSheet::demoRequested, this, &Page::demoRequested);
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
    forget(desk::refusalSentence(refusal));
    emit refused(file, desk::refusalSentence(refusal));
  });
  for (Clerk* each : {&finder_, &reader_, &clerk_})
    connect(each, &Clerk::failed, this, [this](const Refusal& refusal) {
      if (refusal.code == "catalogue-busy") tell(desk::refusalSentence(refusal), true);
      else forget(desk::refusalSentence(refusal));
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

void CataloguePage::showNoCatalogue() { forget({}); }

void CataloguePage::forget(const QString& whyNot) {
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

void CataloguePage::asked(const QString& text) {
  if (file_.isEmpty()) return;
  if (desks_->currentIndex() != find) parts_->choose(find);
  tell({}, false);
  if (text.trimmed().isEmpty()) {
    finder_.drop(finding);
    finder_.drop(moreFound);
    displayNothingTyped();
    return;
  }
  finder_.drop(moreFound);
  finder_.ask(finding,
              [this, question = text.toStdString()](OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
                auto answer = open.finder().find({question, {}, kFoundAtOnce, {}}, stop);
                if (!answer && answer.error().code == "cancelled") return {};
                return [this, answer = std::move(answer)] {
                  if (answer) display(*answer);
                  else hint_->setText(desk::refusalSentence(answer.error()));
                };
              });
}

void CataloguePage::askMore() {
  if (next_.empty()) return;
  finder_.ask(moreFound,
              [this, question = query_->text().toStdString(), after = std::exchange(next_, {})](
                  OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
                auto answer = open.finder().find({question, {}, kFoundAtOnce, after}, stop);
                if (!answer) return {};
                return [this, answer = std::move(*answer)] {
                  std::vector<FoundRow> rows;
                  for (const workflow::Found& each : answer.found) rows.push_back(rowOf(each));
                  next_ = answer.next;
                  found_->addRows(std::move(rows));
                };
              });
}

void CataloguePage::display(const workflow::FindAnswer& answer) {
  std::vector<FoundRow> rows;
  for (const workflow::Found& each : answer.found) rows.push_back(rowOf(each));
  next_ = answer.next;
  total_ = answer.total;
  QStringList words;
  if (!rows.empty()) words << tr("%n found, best first", nullptr, static_cast<int>(answer.total));
  for (const Finding& finding : answer.findings) words << shown(finding.sentence);
  if (rows.empty() && words.isEmpty()) words << tr("Nothing is known by that.");
  hint_->setText(words.join(QLatin1Char('\n')));
  found_->setVisible(!rows.empty());
  found_->setRows(std::move(rows));
}

void CataloguePage::displayNothingTyped() {
  next_.clear();
  {
    const QSignalBlocker quiet(found_);  // what is looked at stays
    found_->hide();
    found_->setRows({});
  }
  if (things_ == 0)
    hint_->setText(
        tr("This catalogue is empty. Load a pack into it, or press Ctrl+N to make its first row: begin with "
           "a source."));
  else
    hint_->setText(
        tr("Type any number or name, with or without dashes and blanks: one letter may be wrong. The arrow "
           "keys go along what is found, Enter opens it.\n\nCtrl+N makes something new."));
}

void CataloguePage::openThing(const Ref& ref) {
  if (desks_->currentIndex() != find) {
    parts_->choose(find);
  }
  thing_->open(ref);
  thing_->takeKeyboard();
  if (!thing_->editing()) QTimer::singleShot(0, thing_, &ThingDesk::takeKeyboard);
}

bool CataloguePage::eventFilter(QObject* watched, QEvent* event) {
  if (watched != query_->edit() || event->type() != QEvent::KeyPress) return Page::eventFilter(watched, event);
  switch (static_cast<QKeyEvent*>(event)->key()) {  // NOLINT: the type was looked at
    case Qt::Key_Down:
      found_->step(1);
      return true;
    case Qt::Key_Up:
      found_->step(-1);
      return true;
    case Qt::Key_PageDown:
      if (static_cast<QKeyEvent*>(event)->modifiers() != Qt::NoModifier) break;  // NOLINT
      found_->stepPage(1);
      return true;
    case Qt::Key_PageUp:
      if (static_cast<QKeyEvent*>(event)->modifiers() != Qt::NoModifier) break;  // NOLINT
      found_->stepPage(-1);
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (found_->currentIndex().isValid()) emit found_->opened();
      return true;
    default:
      break;
  }
  return Page::eventFilter(watched, event);
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

void CataloguePage::changed(const workflow::Edited& edited) {
  if (edited.change != 0) {
    QString words = shown(edited.sentence);
    if (words.endsWith(QLatin1Char('.'))) words.chop(1);
    history().push(new desk::Snapshot<bool>(words, false, true, [this](const bool& done) { takeBackEdit(!done); }));
  }
  refresh();
}

void CataloguePage::moved(qint64 movement, const QString& words) {
  if (movement != 0)
    history().push(new desk::Snapshot<bool>(
        words, false, true,
        [this, id = std::make_shared<qint64>(movement)](const bool& done) { takeBackMovement(id, !done); }));
  refresh();
}

void CataloguePage::takeBackEdit(bool back) {
  if (quiet_) return;
  clerk_.tell([this, back, units = settings_.units()](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    workflow::Editing done;
    try {
      workflow::EditSession& session = open.session(units);
      done = back ? session.undo() : session.redo();
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(refusalOf(error));
    }
    return [this, back, done = std::move(done)] {
      outcome(done ? shown(done->sentence) : sentenceOf(done.error(), {}), done.has_value(), back);
      if (done && !done->thing.kind.empty() && !thing_->editing())
        thing_->open({done->thing.kind, workflow::keyOf(done->thing)});
      refresh();
    };
  });
}

/// An undone movement is made again by undoing its undoing.
void CataloguePage::takeBackMovement(const std::shared_ptr<qint64>& movement, bool back) {
  if (quiet_) return;
  clerk_.tell([this, movement, back](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    Expected<workflow::MovementDone> done = tl::make_unexpected(Refusal());
    try {
      done = workflow::undoMovement(open.writable(), catalog::MovementNumber{*movement}, open.who());
      if (done) *movement = done->movement.id.value;  // read again only here, on the thread
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(error.refusal());
    }
    return [this, back, done] {
      outcome(done ? shown(done->sentence) : desk::refusalSentence(done.error()), done.has_value(), back);
      refresh();
    };
  });
}

/// Where it was refused the history goes back to where it stood.
void CataloguePage::outcome(const QString& sentence, bool done, bool wasUndo) {
  if (!done) {
    quiet_ = true;
    history().setIndex(history().index() + (wasUndo ? 1 : -1));
    quiet_ = false;
  }
  tell(done ? sentence : wasUndo ? tr("Not undone. %1").arg(sentence) : tr("Not done again. %1").arg(sentence), !done);
}

void CataloguePage::refresh() {
  thing_->reload();
  table_->refresh();
  if (desks_->currentIndex() == shelf) shelf_->reload();
  changes_->reload();
  countRows();
}

void CataloguePage::countRows() {
  clerk_.ask(counting, [this](OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
    std::int64_t all = 0;
    for (const workflow::EditKind& kind : workflow::editKinds()) {
      if (stop.stop_requested()) return {};
      all = workflow::countRows(open.catalogue(), kind.name);
      if (all > 0) break;  // whether it is empty is all that is asked
    }
    return [this, all] {
      things_ = all;
      if (query_->text().trimmed().isEmpty()) displayNothingTyped();
    };
  });
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
