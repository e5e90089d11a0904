#include <catalog/change_log.h>
#include <catalogue/change_list.h>
#include <catalogue/field_words.h>
#include <catalogue/lanes.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/words.h>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

constexpr std::size_t kFew = 8;
constexpr std::size_t kMany = 200;

QString whenOf(const std::string& utc) { return plain(utc.substr(0, 16)).replace(QLatin1Char('T'), QLatin1Char(' ')); }

QString fieldsInWords(const workflow::ChangeShown& change) {
  QStringList lines;
  for (const workflow::FieldChange& each : change.fields)
    lines << ChangeList::tr("%1: %2 → %3")
                 .arg(plain(each.label), each.before.empty() ? ChangeList::tr("nothing") : shown(each.before),
                      each.after.empty() ? ChangeList::tr("nothing") : shown(each.after));
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

ChangeList::ChangeList(Of of, Clerk& clerk, const desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      of_(of),
      clerk_(clerk),
      settings_(settings),
      none_((new parts::Words(of == Of::oneThing ? tr("Nobody has changed it here.") : tr("Nothing was changed yet."),
                              this))
                ->painted(Paint::quiet)),
      view_(new parts::CellView(tr("Changes, newest first"), this)),
      rows_(new QStandardItemModel(this)),
      detail_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      revert_(new QPushButton(tr("&Take this change back"), this)),
      older_(new QPushButton(tr("Older ones"), this)),
      told_(new parts::Words({}, this)),
      most_(of == Of::oneThing ? kFew : kMany) {
  view_->setModel(rows_);
  view_->setObjectName(of == Of::oneThing ? QStringLiteral("changesOfThing") : QStringLiteral("changes"));
  if (of == Of::oneThing) view_->showAtMost(static_cast<int>(kFew));
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(space(8));
  for (QPushButton* button : {revert_, older_}) {
    button->setMinimumHeight(space(32));
    buttons->addWidget(button);
  }
  buttons->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(6));
  if (of == Of::oneThing) column->addWidget((new parts::Words(tr("Changes"), this))->sized(typeface(Text::strong)));
  column->addWidget(none_);
  column->addWidget(view_, of == Of::everything ? 1 : 0);
  for (QWidget* each : std::initializer_list<QWidget*>{detail_, told_}) column->addWidget(each);
  column->addLayout(buttons);
  told_->hide();
  connect(view_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &ChangeList::chosen);
  connect(revert_, &QPushButton::clicked, this, &ChangeList::revert);
  connect(older_, &QPushButton::clicked, this, [this] {
    most_ *= 4;
    reload();
  });
  display({});
}

void ChangeList::show(const std::string& subject) {
  if (subject != subject_) {
    tell({}, false);
    if (of_ == Of::oneThing) most_ = kFew;
  }
  subject_ = subject;
  reload();
}

void ChangeList::reload() {
  if (of_ == Of::oneThing && subject_.empty()) return;
  clerk_.ask(of_ == Of::oneThing ? history : logging,
             [this, subject = subject_, most = most_, units = settings_.units()](
                 OpenFile& open, const std::stop_token&) -> Clerk::Then {
               catalog::ChangeFilter filter;
               filter.of = subject;
               filter.most = most;
               std::vector<workflow::ChangeShown> all;
               for (const catalog::ChangeLine& line : catalog::changes(open.catalogue(), filter))
                 all.push_back(workflow::shownChange(line, units));
               return [this, all = std::move(all)] { display(all); };
             });
}

void ChangeList::display(std::vector<workflow::ChangeShown> changes) {
  changes_ = std::move(changes);
  rows_->setRowCount(0);
  rows_->setHorizontalHeaderLabels({tr("When"), tr("By"), tr("What")});
  for (const workflow::ChangeShown& each : changes_) {
    QList<QStandardItem*> cells;
    for (const QString& text : {whenOf(each.line.at), plain(each.line.who), shown(each.sentence)}) {
      auto* cell = new QStandardItem(text);
      cell->setToolTip(parts::plainTip(text));
      cells << cell;
    }
    rows_->appendRow(cells);
  }
  view_->fitColumns();
  const bool some = !changes_.empty();
  none_->setVisible(!some);
  view_->setVisible(some);
  older_->setVisible(changes_.size() == most_);
  if (some) view_->setCurrentIndex(rows_->index(0, 0));
  chosen();
}

void ChangeList::chosen() {
  const int row = view_->currentIndex().row();
  const bool any = row >= 0 && row < static_cast<int>(changes_.size());
  const workflow::ChangeShown* change = any ? &changes_[static_cast<std::size_t>(row)] : nullptr;
  detail_->setText(change == nullptr ? QString() : fieldsInWords(*change));
  detail_->setVisible(!detail_->text().isEmpty());
  revert_->setVisible(any);
  revert_->setEnabled(any && change->line.kept());
}

void ChangeList::revert() {
  const int row = view_->currentIndex().row();
  if (row < 0 || row >= static_cast<int>(changes_.size())) return;
  const std::int64_t id = changes_[static_cast<std::size_t>(row)].line.id;
  revert_->setEnabled(false);
  clerk_.tell([this, id, units = settings_.units()](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    workflow::Editing done;
    try {
      done = open.session(units).revert(id);
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(refusalOf(error));
    }
    return [this, done = std::move(done)] {
      tell(done ? shown(done->sentence) : tr("Not taken back. %1").arg(sentenceOf(done.error(), {})), !done);
      reload();
      if (done) emit reverted(*done);
    };
  });
}

void ChangeList::tell(const QString& sentence, bool refused) {
  told_->painted(refused ? Paint::warning : Paint::accent)->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

}  // namespace ohmkin::shelves
