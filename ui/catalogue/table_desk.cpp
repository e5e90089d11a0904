#include <catalogue/field_words.h>
#include <catalogue/lanes.h>
#include <catalogue/table_desk.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLocale>
#include <QVBoxLayout>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using look::Paint;
using look::space;

namespace {

constexpr int kSettleMilliseconds = 200;

QString capital(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

}  // namespace

TableDesk::TableDesk(Clerk& reader, Clerk& writer, const desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      writer_(writer),
      reader_(reader),
      settings_(settings),
      kinds_(new parts::Choice(tr("Kind of row"), this)),
      filter_(new parts::Entry(tr("Only rows that hold"), this)),
      count_((new parts::Words({}, this))->sized(look::typeface(look::Text::small))->painted(Paint::quiet)),
      told_(new parts::Words({}, this)),
      view_(new parts::CellView(tr("Rows"), this)),
      model_(new RowModel(reader, settings, this)),
      busy_(new parts::BusyLine(this)) {
  for (const workflow::EditKind& kind : workflow::editKinds())
    kinds_->addItem(capital(plain(kind.plural)), plain(kind.name));
  kinds_->setCurrentIndex(std::max(0, kinds_->findData(QStringLiteral("sender"))));
  filter_->setPlaceholderText(tr("only rows that hold …"));
  view_->setModel(model_);
  view_->setSelectionBehavior(QAbstractItemView::SelectItems);
  view_->setSortingEnabled(false);
  view_->horizontalHeader()->setSectionsClickable(true);
  view_->horizontalHeader()->setSortIndicatorShown(true);
  view_->horizontalHeader()->setSortIndicator(0, Qt::AscendingOrder);
  view_->setCheck(
      [this](const QModelIndex& index, const QString& text) {
        return complaintOf(model_->kind()->fields.at(static_cast<std::size_t>(index.column())), text.trimmed(),
                           settings_.units());
      },
      false);
  auto* head = new QHBoxLayout;
  head->setSpacing(space(8));
  head->addWidget(kinds_, 2);
  head->addWidget(filter_, 3);
  head->addWidget(count_, 2);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(14), space(14), space(14), space(10));
  column->setSpacing(space(8));
  column->addLayout(head);
  column->addWidget(busy_);
  column->addWidget(view_, 1);
  column->addWidget(told_);
  told_->hide();
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, &TableDesk::ask);
  connect(kinds_, &QComboBox::currentIndexChanged, this, [this] {
    const QSignalBlocker quiet(filter_);
    filter_->clear();
    sortColumn_ = 0;
    descending_ = false;
    view_->horizontalHeader()->setSortIndicator(0, Qt::AscendingOrder);
    ask();
  });
  connect(filter_, &QLineEdit::textChanged, &settle_, qOverload<>(&QTimer::start));
  connect(filter_, &parts::Entry::left, this, [this] { view_->setFocus(Qt::OtherFocusReason); });
  connect(view_->horizontalHeader(), &QHeaderView::sectionClicked, this, [this](int section) {
    descending_ = section == sortColumn_ && !descending_;
    sortColumn_ = section;
    view_->horizontalHeader()->setSortIndicator(section, descending_ ? Qt::DescendingOrder : Qt::AscendingOrder);
    ask();
  });
  connect(view_, &parts::CellView::opened, this, [this](const QModelIndex& index) {
    if (const Ref ref = model_->refAt(index.row()); !ref.empty()) emit opened(ref);
  });
  connect(model_, &RowModel::edited, this, &TableDesk::save);
  connect(model_, &RowModel::busy, busy_, &parts::BusyLine::setRunning);
  connect(model_, &RowModel::refused, this, [this](const Refusal& why) { tell(desk::refusalSentence(why), true); });
  connect(model_, &RowModel::came, this, [this](int rows, bool all) {
    if (!fitted_) {
      fitted_ = true;
      const auto kept = columns_.constFind(plain(shownKind_));
      if (kept == columns_.constEnd() || !view_->horizontalHeader()->restoreState(kept->toByteArray()))
        view_->fitColumns();
      view_->horizontalHeader()->setSortIndicator(sortColumn_, descending_ ? Qt::DescendingOrder : Qt::AscendingOrder);
    }
    const QLocale locale;
    const QString kind = plain(model_->kind()->plural);
    if (all) count_->setText(rows == 0 ? tr("No such row") : tr("%1 rows").arg(locale.toString(rows)));
    else if (filter_->text().isEmpty() && total_ >= 0)
      count_->setText(tr("%1 of %2 read").arg(locale.toString(rows), locale.toString(total_)));
    else count_->setText(tr("%1 and more").arg(locale.toString(rows)));
  });
}

void TableDesk::catalogueOpened() {
  tell({}, false);
  ask();
}

void TableDesk::showKind(const std::string& kind) {
  kinds_->setCurrentIndex(std::max(0, kinds_->findData(plain(kind))));
}

void TableDesk::rememberColumns() {
  if (fitted_ && !shownKind_.empty()) columns_[plain(shownKind_)] = view_->horizontalHeader()->saveState();
}

void TableDesk::ask() {
  settle_.stop();
  rememberColumns();
  const std::string kind = kinds_->currentData().toString().toStdString();
  if (kind != shownKind_) {
    fitted_ = false;
    total_ = -1;
    reader_.ask(counting, [this, kind](OpenFile& open, const std::stop_token&) -> Clerk::Then {
      return [this, total = workflow::countRows(open.catalogue(), kind)] { total_ = total; };
    });
  }
  shownKind_ = kind;
  view_->setAccessibleName(kinds_->currentText());
  model_->ask(kind, filter_->text().trimmed(), sortColumn_, descending_);
}

void TableDesk::refresh() { model_->refresh(); }

void TableDesk::takeKeyboard() {
  if (model_->rowCount() > 0) view_->setFocus(Qt::ShortcutFocusReason);
  else filter_->setFocus(Qt::ShortcutFocusReason);
}

/// One cell typed over: the thing is read, the one field set, and all of it saved as a form would.
void TableDesk::save(const Ref& ref, const std::string& field, const QString& text) {
  if (ref.empty()) return;
  tell({}, false);
  writer_.tell([this, ref, field, text = text.toStdString(), units = settings_.units()](
                   OpenFile& open, const std::stop_token&) -> Clerk::Then {
    workflow::Editing done;
    auto thing = workflow::readThing(open.catalogue(), ref.kind, ref.key, units);
    if (!thing) {
      workflow::EditRefusal gone;
      gone.reasons.push_back(thing.error());
      done = tl::make_unexpected(gone);
    } else {
      thing->fields[field] = text;
      try {
        done = open.session(units).save(*thing);
      } catch (const catalog::CatalogueError& error) {
        done = tl::make_unexpected(refusalOf(error));
      }
    }
    return [this, ref, done = std::move(done)] {
      tell(done ? shown(done->sentence) : tr("Not changed. %1").arg(sentenceOf(done.error(), ref.kind)), !done);
      model_->refresh();
      if (done) emit saved(*done);
    };
  });
}

void TableDesk::tell(const QString& sentence, bool refused) {
  told_->painted(refused ? Paint::warning : Paint::accent)->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

QVariantMap TableDesk::layoutState() const {
  const_cast<TableDesk*>(this)->rememberColumns();  // NOLINT: what is on the screen now belongs to it
  QVariantMap state;
  state[QStringLiteral("kind")] = kinds_->currentData();
  state[QStringLiteral("columns")] = columns_;
  return state;
}

void TableDesk::restoreLayout(const QVariantMap& state) {
  columns_ = state.value(QStringLiteral("columns")).toMap();
  const QSignalBlocker quiet(kinds_);
  kinds_->setCurrentIndex(std::max(0, kinds_->findData(state.value(QStringLiteral("kind"), QStringLiteral("sender")))));
}

}  // namespace ohmkin::shelves
