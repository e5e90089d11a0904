#include <catalogue/field_words.h>
#include <catalogue/lanes.h>
#include <catalogue/thing_desk.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <QHBoxLayout>
#include <QMenu>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

QPushButton* arrow(const QString& sign, const QString& name, QWidget* parent) {
  auto* button = new QPushButton(sign, parent);
  button->setAccessibleName(name);
  button->setToolTip(name);
  const int side = std::max(24, space(32));
  button->setFixedSize(side, side);
  return button;
}

}  // namespace

ThingDesk::ThingDesk(Clerk& clerk, const desk::Settings& settings, QWidget* parent)
    : parts::Panel(Kind::sheet, parent),
      clerk_(clerk),
      settings_(settings),
      sheets_(new QStackedWidget(this)),
      form_(new ThingForm(clerk, settings)) {
  sheets_->addWidget(new QWidget(sheets_));
  sheets_->addWidget(makeReading());
  sheets_->addWidget(form_);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(2, 2, 2, 2);
  outer->addWidget(sheets_);
  setMinimumWidth(space(280));
  wire();
}

QWidget* ThingDesk::makeReading() {
  auto* sheet = new QWidget;
  kind_ = (new parts::Words({}, sheet))->sized(typeface(Text::small))->painted(Paint::quiet);
  number_ = (new parts::Words({}, sheet))->sized(typeface(Text::headline))->selectable();
  title_ = new parts::Words({}, sheet);
  caution_ = (new parts::Words({}, sheet))->painted(Paint::warning);
  told_ = new parts::Words({}, sheet);
  back_ = arrow(QStringLiteral("‹"), tr("Back (Alt+Left)"), sheet);
  forward_ = arrow(QStringLiteral("›"), tr("Forward (Alt+Right)"), sheet);
  edit_ = new QPushButton(tr("&Edit"), sheet);
  edit_->setToolTip(tr("Change what is said (F2)"));
  more_ = new QPushButton(tr("More…"), sheet);
  more_->setAccessibleName(tr("More to do with it"));
  auto* menu = new QMenu(sheet);
  connect(menu->addAction(tr("&Duplicate as new")), &QAction::triggered, this, &ThingDesk::duplicate);
  connect(menu->addAction(tr("&New of this kind")), &QAction::triggered, this, [this] { create(ref_.kind); });
  connect(menu->addAction(tr("De&lete…")), &QAction::triggered, this, &ThingDesk::askRemove);
  more_->setMenu(menu);
  for (QPushButton* button : {edit_, more_}) button->setMinimumHeight(space(32));
  view_ = new ThingView(sheet);
  stock_ = new StockPanel(clerk_);
  changes_ = new ChangeList(ChangeList::Of::oneThing, clerk_, settings_);
  view_->addAbove(stock_);  // at the counter it is asked first
  view_->addBelow(changes_);
  auto* top = new QHBoxLayout;
  top->setSpacing(space(6));
  top->addWidget(kind_, 1);
  for (QPushButton* button : {back_, forward_, edit_, more_}) top->addWidget(button);
  auto* column = new QVBoxLayout(sheet);
  column->setContentsMargins(space(18), space(14), space(10), space(14));
  column->setSpacing(space(5));
  column->addLayout(top);
  for (QWidget* each : std::initializer_list<QWidget*>{number_, title_, caution_, told_, makeQuestion()})
    column->addWidget(each);
  column->addSpacing(space(6));
  column->addWidget(view_, 1);
  return sheet;
}

QWidget* ThingDesk::makeQuestion() {
  question_ = new QWidget;
  sure_ = new QPushButton(tr("&Delete it"), question_);
  auto* leave = new QPushButton(tr("&Leave it"), question_);
  auto* row = new QHBoxLayout(question_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(8));
  for (QPushButton* button : {sure_, leave}) {
    button->setMinimumHeight(space(32));
    row->addWidget(button);
  }
  row->addStretch(1);
  question_->hide();
  connect(sure_, &QPushButton::clicked, this, &ThingDesk::remove);
  connect(leave, &QPushButton::clicked, this, &ThingDesk::escape);
  return question_;
}

void ThingDesk::wire() {
  connect(back_, &QPushButton::clicked, this, &ThingDesk::back);
  connect(forward_, &QPushButton::clicked, this, &ThingDesk::forward);
  connect(edit_, &QPushButton::clicked, this, &ThingDesk::edit);
  connect(view_, &ThingView::followed, this, [this](const Ref& ref) {
    open(ref);
    view_->setFocus();
  });
  connect(stock_, &StockPanel::moved, this, &ThingDesk::moved);
  connect(changes_, &ChangeList::reverted, this, [this](const workflow::Edited& edited) { emit changed(edited); });
  connect(form_, &ThingForm::saved, this, [this](const workflow::Edited& edited) {
    open({edited.thing.kind, workflow::keyOf(edited.thing)});
    sheets_->setCurrentIndex(toRead);
    tell(edited.change == 0 ? tr("Nothing was different: nothing was written.") : shown(edited.sentence), false);
    takeKeyboard();
    if (edited.change != 0) emit changed(edited);
    emit stateChanged();
  });
  connect(form_, &ThingForm::closed, this, [this] {
    sheets_->setCurrentIndex(ref_.empty() ? nothing : toRead);
    takeKeyboard();
    emit stateChanged();
  });
  connect(&settings_, &desk::Settings::unitsChanged, this, &ThingDesk::reload);
}

void ThingDesk::catalogueOpened() {
  ref_ = {};
  trail_.clear();
  at_ = 0;
  passing_ = false;
  stock_->show({});
  tell({}, false);
  sheets_->setCurrentIndex(nothing);
  emit stateChanged();
}

bool ThingDesk::editing() const { return sheets_->currentIndex() == toWrite; }

void ThingDesk::preview(const Ref& ref) {
  if (ref == ref_ || (editing() && form_->dirty())) return;
  if (ref.empty()) {
    ref_ = {};
    clerk_.drop(showing);
    sheets_->setCurrentIndex(nothing);
    emit stateChanged();
    return;
  }
  if (passing_ && !trail_.empty()) trail_.resize(at_);
  open(ref);
  passing_ = true;
}

void ThingDesk::open(const Ref& ref) {
  if (ref.empty() || ref.kind.empty()) return;
  passing_ = false;
  if (trail_.empty() || at_ >= trail_.size() || trail_[at_] != ref) {
    trail_.resize(trail_.empty() ? 0 : std::min(at_ + 1, trail_.size()));
    trail_.push_back(ref);
    at_ = trail_.size() - 1;
  }
  ref_ = ref;
  read();
}

void ThingDesk::back() {
  if (!canGoBack() || editing()) return;
  ref_ = trail_[--at_];
  passing_ = false;
  read();
}

void ThingDesk::forward() {
  if (!canGoForward() || editing()) return;
  ref_ = trail_[++at_];
  read();
}

void ThingDesk::reload() {
  if (!ref_.empty()) read();
}

void ThingDesk::read() {
  clerk_.ask(showing,
             [this, ref = ref_, units = settings_.units()](OpenFile& open, const std::stop_token&) -> Clerk::Then {
               auto thing = shownThing(open, ref, units);
               return [this, ref, thing = std::move(thing)] {
                 if (thing) {
                   display(*thing);
                   return;
                 }
                 tell({}, false);
                 view_->display({});
                 kind_->setText({});
                 number_->setText(tr("No longer there"));
                 title_->setText(tr("%1 was deleted, or never was in this catalogue.").arg(nameOf(ref)));
                 caution_->hide();
                 stock_->hide();
                 changes_->show(subjectOf(ref));
                 if (!editing()) sheets_->setCurrentIndex(toRead);
                 emit stateChanged();
               };
             });
}

void ThingDesk::display(const ThingShown& thing) {
  ref_ = thing.ref;
  if (toldOf_ != ref_) {
    tell({}, false);
    question_->hide();
  }
  kind_->setText(tr("%1 · %2").arg(thing.kind, thing.whose));
  number_->setText(thing.number);
  title_->setText(thing.title);
  title_->setVisible(!thing.title.isEmpty());
  caution_->setText(thing.caution);
  caution_->setVisible(!thing.caution.isEmpty());
  view_->display(thing);
  stock_->show(thing.ref.kind == "sender" ? thing.ref.key.front() : std::string());
  changes_->show(subjectOf(thing.ref));
  back_->setEnabled(canGoBack());
  forward_->setEnabled(canGoForward());
  if (!editing() || !form_->dirty()) sheets_->setCurrentIndex(toRead);
  emit stateChanged();
}

void ThingDesk::editThing(const std::function<void(const workflow::Thing&)>& then) {
  if (ref_.empty() || editing()) return;
  clerk_.ask(
      Lane::reading,
      [this, ref = ref_, then, units = settings_.units()](OpenFile& open, const std::stop_token&) -> Clerk::Then {
        auto thing = workflow::readThing(open.catalogue(), ref.kind, ref.key, units);
        return [this, thing = std::move(thing), then] {
          if (thing) then(*thing);
          else tell(desk::refusalSentence(thing.error()), true);
        };
      });
}

void ThingDesk::edit() {
  editThing([this](const workflow::Thing& thing) {
    form_->edit(thing);
    sheets_->setCurrentIndex(toWrite);
    form_->takeKeyboard();
    emit stateChanged();
  });
}

void ThingDesk::create(const std::string& kind) {
  if (workflow::editKind(kind) == nullptr || (editing() && form_->dirty())) return;
  form_->edit(workflow::newThing(kind));
  sheets_->setCurrentIndex(toWrite);
  form_->takeKeyboard();
  emit stateChanged();
}

void ThingDesk::duplicate() {
  editThing([this](const workflow::Thing& thing) {
    workflow::Thing copy = workflow::newThing(thing.kind);
    copy.fields = thing.fields;
    copy.parts = thing.parts;
    const std::vector<std::string> key = workflow::editKind(thing.kind)->key();
    if (key.size() == 1) copy.fields.erase(key.front());
    form_->edit(copy);
    sheets_->setCurrentIndex(toWrite);
    form_->takeKeyboard();
    emit stateChanged();
  });
}

void ThingDesk::askRemove() {
  if (ref_.empty() || editing()) return;
  tell(tr("Delete %1? The change log keeps it, so that it can come back.").arg(nameOf(ref_)), true);
  question_->show();
  sure_->setFocus(Qt::OtherFocusReason);
}

void ThingDesk::remove() {
  question_->hide();
  clerk_.tell([this, ref = ref_, units = settings_.units()](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    workflow::Editing done;
    auto thing = workflow::readThing(open.catalogue(), ref.kind, ref.key, units);
    if (!thing) {
      workflow::EditRefusal gone;
      gone.reasons.push_back(thing.error());
      done = tl::make_unexpected(gone);
    } else {
      try {
        done = open.session(units).remove(*thing);
      } catch (const catalog::CatalogueError& error) {
        done = tl::make_unexpected(refusalOf(error));
      }
    }
    return [this, ref, done = std::move(done)] {
      if (!done) {
        tell(tr("Not deleted. %1").arg(sentenceOf(done.error(), ref.kind)), true);
        edit_->setFocus(Qt::OtherFocusReason);
        return;
      }
      reload();
      emit changed(*done);
    };
  });
}

void ThingDesk::save() {
  if (editing()) form_->save();
}

void ThingDesk::escape() {
  if (editing()) {
    form_->close();
    return;
  }
  if (question_->isVisible()) tell({}, false);
  question_->hide();
  stock_->giveUp();
  takeKeyboard();
}

void ThingDesk::takeKeyboard() {
  if (editing()) form_->takeKeyboard();
  else if (sheets_->currentIndex() == toRead) edit_->setFocus(Qt::OtherFocusReason);
}

QString ThingDesk::asText() const { return ref_.empty() ? QString() : view_->thing().asText(); }

void ThingDesk::tell(const QString& sentence, bool refused) {
  toldOf_ = ref_;
  told_->painted(refused ? Paint::warning : Paint::accent)->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

}  // namespace ohmkin::shelves
