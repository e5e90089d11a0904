#include <catalogue/field_words.h>
#include <catalogue/lanes.h>
#include <catalogue/thing_form.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/scrolling.h>
#include <QApplication>
#include <QPointer>
#include <QScrollArea>

namespace ohmkin::shelves {

using desk::plain;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

constexpr int kSettleMilliseconds = 250;
constexpr std::size_t kNamesOffered = 20;

bool sameTexts(const workflow::FieldTexts& a, const workflow::FieldTexts& b) {
  const auto holds = [](const workflow::FieldTexts& all, const workflow::FieldTexts& some) {
    return std::all_of(some.begin(), some.end(), [&](const auto& each) {
      const auto at = all.find(each.first);
      return each.second.empty() || (at != all.end() && at->second == each.second);
    });
  };
  return holds(a, b) && holds(b, a);
}

}  // namespace

ThingForm::ThingForm(Clerk& clerk, const desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      clerk_(clerk),
      settings_(settings),
      kindWords_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      name_((new parts::Words({}, this))->sized(typeface(Text::headline))),
      whose_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      fields_(new FieldGrid),
      sources_(new SourceBox),
      body_(new QWidget),
      partColumn_(new QVBoxLayout),
      help_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      told_(new parts::Words({}, this)),
      save_(new QPushButton(tr("&Save"), this)),
      revert_(new QPushButton(tr("&Revert"), this)),
      close_(new QPushButton(tr("&Close"), this)) {
  save_->setToolTip(tr("Save what the form says (Ctrl+S)"));
  revert_->setToolTip(tr("Back to what is kept"));
  close_->setToolTip(tr("Close the form (Esc)"));
  auto* inner = new QVBoxLayout(body_);
  inner->setContentsMargins(0, 0, space(8), 0);
  inner->setSpacing(space(14));
  inner->addWidget(fields_);
  inner->addWidget(sources_);
  partColumn_->setSpacing(space(14));
  inner->addLayout(partColumn_);
  inner->addStretch(1);
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(space(8));
  for (QPushButton* button : {save_, revert_, close_}) {
    button->setMinimumHeight(space(36));
    buttons->addWidget(button);
  }
  buttons->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(18), space(14), space(10), space(14));
  column->setSpacing(space(8));
  for (QWidget* each : std::initializer_list<QWidget*>{kindWords_, name_, whose_}) column->addWidget(each);
  column->addWidget(parts::scrolling(body_, this), 1);
  for (QWidget* each : std::initializer_list<QWidget*>{help_, told_}) column->addWidget(each);
  column->addLayout(buttons);
  told_->hide();
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, &ThingForm::askCheck);
  connect(save_, &QPushButton::clicked, this, &ThingForm::save);
  connect(revert_, &QPushButton::clicked, this, &ThingForm::revert);
  connect(close_, &QPushButton::clicked, this, &ThingForm::close);
  connect(sources_, &SourceBox::changed, this, [this] {
    if (FieldRow* row = fields_->row("source")) row->editor()->setEnabled(!sources_->open());
    typed();
  });
  connect(qApp, &QApplication::focusChanged, this, [this] { sayHelp(); });
}

void ThingForm::edit(const workflow::Thing& thing) {
  kind_ = workflow::editKind(thing.kind);
  if (kind_ == nullptr) return;
  original_ = thing;
  units_ = settings_.units();
  waiting_ = pressed_ = asked_ = false;
  kindWords_->setText(thing.isNew() ? tr("new %1").arg(plain(kind_->label)) : plain(kind_->label));
  const QString name = plain(workflow::nameOf(thing));
  name_->setText(thing.isNew()
                     ? tr("Not saved yet")
                     : name.mid(name.indexOf(QLatin1Char(' ')) < 0 ? 0 : static_cast<int>(kind_->label.size()) + 1));
  const bool packs = !thing.isNew() && thing.pack != "shop";
  whose_->setText(packs ? tr("It belongs to the pack %1. Once it is changed it is the shop's own; a later version of "
                             "the pack is then held against it, and leaves it as it is.")
                              .arg(plain(thing.pack))
                        : plain(kind_->help));
  fields_->setFields(kind_->fields);
  for (FieldRow* row : fields_->rows()) {
    const auto at = thing.fields.find(row->field().name);
    row->setText(at == thing.fields.end() ? QString() : plain(at->second));
    connect(row, &FieldRow::changed, this, &ThingForm::typed);
    connect(row, &FieldRow::namesAsked, this, [this, row](const QString& text) { names(*row, text); });
  }
  sources_->clear();
  sources_->setVisible(kind_->needsSource);
  for (PartTable* table : tables_) {
    table->hide();
    table->deleteLater();
  }
  tables_.clear();
  for (const workflow::EditPart& part : kind_->parts) {
    auto* table = new PartTable(part, units_, body_);
    const auto at = thing.parts.find(part.name);
    table->model().setRows(at == thing.parts.end() ? std::vector<workflow::FieldTexts>() : at->second);
    connect(table, &PartTable::changed, this, &ThingForm::typed);
    partColumn_->addWidget(table);
    tables_.push_back(table);
  }
  tell({}, false);
  save_->setEnabled(true);
  revert_->setEnabled(dirty());
}

PartTable* ThingForm::part(std::string_view name) const {
  const auto at = std::find_if(tables_.begin(), tables_.end(),
                               [&](PartTable* table) { return table->model().part().name == name; });
  return at == tables_.end() ? nullptr : *at;
}

workflow::Thing ThingForm::thing() const {
  workflow::Thing thing = original_;
  for (const FieldRow* row : fields_->rows()) thing.fields[row->field().name] = row->text().toStdString();
  for (const PartTable* table : tables_) thing.parts[table->model().part().name] = table->model().rows();
  return thing;
}

bool ThingForm::dirty() const {
  if (kind_ == nullptr) return false;
  const workflow::Thing now = thing();
  if (sources_->open() || !sameTexts(now.fields, original_.fields)) return true;
  for (const PartTable* table : tables_) {
    const std::string& name = table->model().part().name;
    const auto before = original_.parts.find(name);
    const std::vector<workflow::FieldTexts> rows = table->model().rows();
    const std::size_t were = before == original_.parts.end() ? 0 : before->second.size();
    if (rows.size() != were) return true;
    for (std::size_t i = 0; i < were; ++i)
      if (!sameTexts(rows[i], before->second[i])) return true;
  }
  return false;
}

void ThingForm::takeKeyboard() {
  for (FieldRow* row : fields_->rows()) {
    if (row->field().key && !original_.isNew()) continue;  // what names it is seldom what is changed
    row->takeKeyboard();
    return;
  }
  if (!fields_->rows().empty()) fields_->rows().front()->takeKeyboard();
}

void ThingForm::typed() {
  asked_ = false;
  tell({}, false);
  checkTyped();
  revert_->setEnabled(dirty());
  settle_.start();
}

/// What can be said at once, from the text alone.
void ThingForm::checkTyped() {
  for (FieldRow* row : fields_->rows()) {
    if (!row->touched() && !pressed_) continue;
    const bool stated = row->field().name == "source" && sources_->open();
    row->setWrong(row->text().isEmpty() || stated ? QString() : complaintOf(row->field(), row->text(), units_));
  }
}

/// What only the catalogue knows, once the keys rest.
void ThingForm::askCheck() {
  if (kind_ == nullptr || waiting_) return;
  clerk_.ask(checking,
             [this, asked = thing(), source = sources_->source(), units = units_](
                 OpenFile& open, const std::stop_token&) -> Clerk::Then {
               auto refusals = workflow::checkThing(open.reading(), asked, source, units);
               return [this, refusals = std::move(refusals)] {
                 checkTyped();
                 place(refusals, pressed_);
               };
             });
}

/// At the fields they speak of; `all`: also at fields that were not touched.
void ThingForm::place(const std::vector<Refusal>& refusals, bool all) {
  for (PartTable* table : tables_) table->model().clearSaid();
  for (const Refusal& refusal : refusals) {
    const workflow::FieldPlace at = workflow::fieldPlace(refusal.where);
    if (PartTable* table = at.part.empty() ? nullptr : part(at.part)) {
      const auto rows = table->model().rows();
      const bool filled = at.row < rows.size() && rows[at.row].contains(at.field);
      if (all || filled) table->model().setWrong(at.row, at.field, sentenceAt(refusal));
      continue;
    }
    FieldRow* row = fields_->row(at.field);
    if (row == nullptr) {
      if (all && sources_->open()) sources_->setWrong(at.field.empty() ? "citation" : at.field, sentenceAt(refusal));
      continue;
    }
    const bool stated = at.field == "source" && sources_->open();
    if (stated) {
      if (all) sources_->citation().setWrong(sentenceAt(refusal));
    } else if (all || (row->touched() && !row->text().isEmpty())) {
      row->setWrong(sentenceAt(refusal));
    }
  }
}

void ThingForm::save() {
  if (kind_ == nullptr || waiting_) return;
  settle_.stop();
  clerk_.drop(checking);
  waiting_ = true;
  pressed_ = true;
  save_->setEnabled(false);
  tell({}, false);
  clerk_.tell([this, asked = thing(), source = sources_->source(), units = units_](
                  OpenFile& open, const std::stop_token&) -> Clerk::Then {
    workflow::Editing done;
    try {
      done = open.session(units).save(asked, source);
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(refusalOf(error));
    }
    return [this, done = std::move(done)] {
      waiting_ = false;
      save_->setEnabled(true);
      if (done) emit saved(*done);
      else refused(done.error());
    };
  });
}

void ThingForm::refused(const workflow::EditRefusal& refusal) {
  checkTyped();
  place(refusal.reasons, true);
  tell(tr("Not saved. %1").arg(sentenceOf(refusal, original_.kind)), true);
  for (FieldRow* row : fields_->rows())
    if (!row->wrong().isEmpty()) {
      row->takeKeyboard();
      break;
    }
}

void ThingForm::revert() { edit(workflow::Thing(original_)); }

void ThingForm::close() {
  if (dirty() && !asked_) {
    asked_ = true;
    tell(tr("This is not saved yet. Close once more to give it up."), true);
    return;
  }
  emit closed();
}

void ThingForm::tell(const QString& sentence, bool wrong) {
  told_->painted(wrong ? Paint::warning : Paint::accent)->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

void ThingForm::sayHelp() {
  const QWidget* focus = QApplication::focusWidget();
  if (focus == nullptr || !isAncestorOf(focus)) return;
  for (const FieldRow* row : fields_->rows())
    if (row->editor() == focus) {
      help_->setText(helpOf(row->field()));
      return;
    }
  help_->setText({});
}

void ThingForm::names(FieldRow& row, const QString& typed) {
  clerk_.ask(naming,
             [row = QPointer<FieldRow>(&row), typed, kind = row.field().refersTo](
                 OpenFile& open, const std::stop_token&) -> Clerk::Then {
               std::vector<parts::NameWords> found;
               for (const workflow::KnownKey& each :
                    workflow::completions(open.catalogue(), kind, typed.toStdString(), kNamesOffered))
                 found.push_back({plain(each.key), plain(each.name)});
               return [row, typed, found = std::move(found)] {
                 if (row != nullptr) row->offer(typed, found);
               };
             });
}

}  // namespace ohmkin::shelves
