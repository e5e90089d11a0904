#include <catalog/catalogue_error.h>
#include <catalog/layouts.h>
#include <date/layout_bench.h>
#include <look/type.h>
#include <workflow/date_engine.h>
#include <workflow/layouts.h>
#include <QGridLayout>
#include <QHBoxLayout>
#include <array>

namespace ohmkin::castings {
namespace {

using dating::FoundOn;
using look::Paint;
using look::space;
using parts::fieldName;

constexpr std::array kPlaces{FoundOn::head, FoundOn::block, FoundOn::intake, FoundOn::housing, FoundOn::assemblyStamp};
constexpr std::array kSources{catalog::SourceKind::commonPractice, catalog::SourceKind::bench,
                              catalog::SourceKind::makerSheet, catalog::SourceKind::published};
constexpr std::size_t kMostChips = 8;
enum BenchLane { trying = 2, saving = 3 };  // of the page's thread

QString word(std::string_view text) { return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())); }

}  // namespace

LayoutBench::LayoutBench(desk::CatalogueThread& thread, QWidget* parent)
    : QWidget(parent), thread_(thread), list_(new LayoutList(this)), fields_(new LayoutFields(this)) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(16));
  auto* left = new parts::Panel(parts::Panel::Kind::sheet, this);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(space(12), space(12), space(8), space(12));
  column->setSpacing(space(6));
  column->addWidget(fieldName(tr("Layouts of this catalogue: take one to begin with"), left));
  column->addWidget(list_, 1);
  row->addWidget(left, 4);
  row->addWidget(makeEditor(), 9);
  connect(list_, &QListWidget::currentRowChanged, this, &LayoutBench::take);
}

QWidget* LayoutBench::makeEditor() {
  auto* editor = new parts::Panel(parts::Panel::Kind::sheet, this);
  name_ = new parts::Entry(tr("Name of the layout"), editor);
  place_ = new parts::Choice(tr("Found on"), editor);
  id_ = new parts::Entry(tr("Short id"), editor);
  sample_ = new parts::Entry(tr("Code to try"), editor);
  readings_ = new parts::ChipRow(editor);
  said_ = new parts::Words({}, editor);
  for (const FoundOn place : kPlaces) place_->addItem(word(dating::text(place)));
  name_->setPlaceholderText(tr("month letter, day, year digit"));
  sample_->setPlaceholderText(tr("a code as you read it, for example H 22 1"));
  sample_->setMinimumWidth(space(200));

  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(4));
  grid->addWidget(fieldName(tr("Name"), editor), 0, 0);
  grid->addWidget(fieldName(tr("Found on"), editor), 0, 1);
  grid->addWidget(fieldName(tr("Short id"), editor), 0, 2);
  grid->addWidget(name_, 1, 0);
  grid->addWidget(place_, 1, 1);
  grid->addWidget(id_, 1, 2);
  grid->setColumnStretch(0, 5);
  grid->setColumnStretch(1, 3);
  grid->setColumnStretch(2, 4);
  auto* column = new QVBoxLayout(editor);
  column->setContentsMargins(space(16), space(12), space(16), space(14));
  column->setSpacing(space(6));
  column->addLayout(grid);
  column->addSpacing(space(6));
  column->addWidget(fieldName(tr("Fields, in the order they are cast"), editor));
  column->addWidget(fields_);
  column->addSpacing(space(6));
  column->addWidget(fieldName(tr("Try it on a code"), editor));
  column->addWidget(sample_);
  column->addWidget(readings_);
  column->addWidget(said_);
  column->addSpacing(space(6));
  column->addWidget(makeSaving());
  column->addStretch(1);

  connect(name_, &QLineEdit::textChanged, this, [this](const QString& text) {
    if (!ownId_) id_->setText(desk::plain(workflow::layoutIdFrom(text.toStdString())));
  });
  connect(id_, &QLineEdit::textEdited, this, [this](const QString& text) { ownId_ = !text.isEmpty(); });
  connect(fields_, &LayoutFields::changed, this, &LayoutBench::tried);
  connect(sample_, &QLineEdit::textChanged, this, &LayoutBench::tried);
  return editor;
}

QWidget* LayoutBench::makeSaving() {
  auto* saving = new QWidget(this);
  day_ = new parts::Entry(tr("The day that code names"), saving);
  sourceKind_ = new parts::Choice(tr("Kind of source"), saving);
  citation_ = new parts::Entry(tr("Where you know it from"), saving);
  replace_ = new parts::Tick(tr("Replace the layout that has this id"), saving);
  save_ = new QPushButton(tr("&Save as the shop's own"), saving);
  outcome_ = new parts::Words({}, saving);
  for (const auto kind : kSources) sourceKind_->addItem(word(catalog::text(kind)));
  day_->setPlaceholderText(QStringLiteral("1981-08-22"));
  citation_->setPlaceholderText(tr("what you saw and where, or page and table"));
  save_->setMinimumHeight(space(36));
  replace_->hide();
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(4));
  grid->addWidget(fieldName(tr("Day the code names"), saving), 0, 0);
  grid->addWidget(fieldName(tr("Source"), saving), 0, 1);
  grid->addWidget(fieldName(tr("Where you know it from"), saving), 0, 2);
  grid->addWidget(day_, 1, 0);
  grid->addWidget(sourceKind_, 1, 1);
  grid->addWidget(citation_, 1, 2);
  grid->setColumnStretch(0, 2);
  grid->setColumnStretch(1, 3);
  grid->setColumnStretch(2, 6);
  auto* column = new QVBoxLayout(saving);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addLayout(grid);
  auto* row = new QHBoxLayout;
  row->setSpacing(space(12));
  row->addWidget(save_);
  row->addWidget(replace_);
  row->addStretch(1);
  column->addLayout(row);
  column->addWidget(outcome_);
  outcome_->hide();
  connect(save_, &QPushButton::clicked, this, &LayoutBench::save);
  connect(day_, &QLineEdit::textEdited, this, [this](const QString& text) { ownDay_ = !text.isEmpty(); });
  return saving;
}

void LayoutBench::catalogueOpened(const QString& file) {
  file_ = file;
  thread_.ask(saving, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    std::vector<dating::Layout> layouts;
    std::vector<std::pair<QString, QString>> examples;
    for (const auto& record : catalog::dateLayouts(open.catalogue)) {
      layouts.push_back(workflow::layoutOf(record));
      examples.emplace_back(desk::plain(record.example), desk::plain(isoDate(record.exampleDate)));
    }
    return [this, layouts, examples] { fillList(layouts, examples); };
  });
}

void LayoutBench::fillList(const std::vector<dating::Layout>& layouts,
                           const std::vector<std::pair<QString, QString>>& examples) {
  const QSignalBlocker quiet(list_);
  const QString kept = id_->text();
  layouts_ = layouts;
  examples_ = examples;
  list_->display(layouts_, examples_);
  for (std::size_t i = 0; i < layouts_.size(); ++i)
    if (desk::plain(layouts_[i].id) == kept) list_->setCurrentRow(static_cast<int>(i));
  if (kept.isEmpty() && !layouts_.empty() && fields_->rows().empty()) {
    list_->setCurrentRow(0);
    take(0);
  }
}

/// A copy to change: keeping it under the same id has to be asked for.
void LayoutBench::take(int index) {
  if (index < 0 || static_cast<std::size_t>(index) >= layouts_.size()) return;
  const dating::Layout& taken = layouts_[static_cast<std::size_t>(index)];
  ownId_ = true;
  ownDay_ = false;
  name_->setText(desk::plain(taken.name));
  id_->setText(desk::plain(taken.id));
  place_->setCurrentIndex(static_cast<int>(taken.foundOn));
  sample_->setText(examples_[static_cast<std::size_t>(index)].first);
  day_->setText(examples_[static_cast<std::size_t>(index)].second);
  // What is longer than its field is read from its beginning.
  for (parts::Entry* entry : {name_, id_, sample_}) entry->home(false);
  fields_->setFields(taken.fields);
  replace_->setChecked(false);
  replace_->hide();
  outcome_->hide();
}

void LayoutBench::takeKeyboard() {
  sample_->setFocus(Qt::ShortcutFocusReason);
  sample_->selectAll();
}

dating::Layout LayoutBench::layout() const {
  return {id_->text().trimmed().toStdString(), name_->text().trimmed().toStdString(),
          static_cast<FoundOn>(std::max(0, place_->currentIndex())), fields_->fields()};
}

void LayoutBench::tried() {
  thread_.ask(
      trying,
      [this, tried = layout(),
       code = sample_->text().toStdString()](const desk::OpenCatalogue&) -> desk::CatalogueThread::Then {
        const auto sound = dating::checkedLayout(tried);
        if (!sound)
          return [this, why = tr("This layout cannot be kept. %1").arg(desk::refusalSentence(sound.error()))] {
            readings_->display({});
            said_->setText(why);
            said_->painted(Paint::warning);
          };
        const QString wouldBe =
            tr("This layout writes 22 Aug 1981 as '%1'.").arg(desk::plain(dating::encode(*sound, date(1981, 8, 22))));
        auto decoded = workflow::tryLayout(*sound, code);
        if (!decoded)
          return [this, wouldBe] {
            readings_->display({});
            said_->setText(wouldBe);
            said_->painted(Paint::quiet);
          };
        return [this, wouldBe, shared = std::make_shared<const dating::Decoded>(std::move(*decoded))] {
          displayTried(*shared, wouldBe);
        };
      });
}

void LayoutBench::displayTried(const dating::Decoded& decoded, const QString& wouldBe) {
  std::vector<parts::ChipWords> chips;
  const dating::Reading* first = nullptr;
  for (const dating::Reading& reading : decoded.readings) {
    if (chips.size() == kMostChips) break;
    QStringList words{desk::plain(dating::plainReading(reading))};
    for (const std::string& assumed : dating::assumptions(decoded, reading)) words << desk::plain(assumed);
    chips.push_back(
        {words.join(QStringLiteral(" · ")), reading.plain() ? parts::ChipKind::understood : parts::ChipKind::inferred});
    if (first == nullptr && reading.plain()) first = &reading;
  }
  if (decoded.readings.size() > kMostChips)
    chips.push_back({tr("%1 more").arg(decoded.readings.size() - kMostChips), parts::ChipKind::unknown});
  readings_->display(chips);
  QStringList words;
  for (const Finding& finding : decoded.findings) words << desk::plain(finding.sentence);
  said_->painted(decoded.readings.empty() ? Paint::warning : Paint::quiet);
  if (words.isEmpty()) words << wouldBe;
  said_->setText(words.join(QLatin1Char(' ')));
  const auto today = parseDate(day_->text().toStdString());
  const bool agrees =
      today && std::any_of(decoded.readings.begin(), decoded.readings.end(), [&](const dating::Reading& reading) {
        return reading.plain() && reading.from <= *today && *today < reading.until;
      });
  if (!ownDay_ && !agrees) day_->setText(first != nullptr ? desk::plain(isoDate(first->from)) : QString());
}

void LayoutBench::save() {
  workflow::LayoutToSave asked{
      layout(), sample_->text().trimmed().toStdString(), {}, {}, replace_->isVisibleTo(this) && replace_->isChecked()};
  asked.source = {kSources.at(static_cast<std::size_t>(std::max(0, sourceKind_->currentIndex()))),
                  citation_->text().trimmed().toStdString()};
  const auto day = parseDate(day_->text().trimmed().toStdString(), tr("Day the code names").toStdString());
  if (!day) {
    tellOutcome(desk::refusalSentence(day.error()), true);
    return;
  }
  asked.exampleDate = *day;
  thread_.ask(saving, [this, asked, file = file_](const desk::OpenCatalogue&) -> desk::CatalogueThread::Then {
    try {
      auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
      const auto saved = workflow::saveLayout(catalogue, asked, "ohmkin-window");
      if (!saved)
        return [this, refusal = saved.error()] {
          if (refusal.code == "layout-exists") replace_->show();
          tellOutcome(desk::refusalSentence(refusal), true);
        };
      return [this, sentence = desk::plain(saved->sentence)] {
        replace_->setChecked(false);
        replace_->hide();
        tellOutcome(sentence, false);
        catalogueOpened(file_);
        emit this->saved();
      };
    } catch (const catalog::CatalogueError& error) {
      // Not to be written: what is open can still be read.
      return [this, refusal = error.refusal()] { tellOutcome(desk::refusalSentence(refusal), true); };
    }
  });
}

void LayoutBench::tellOutcome(const QString& sentence, bool refused) {
  outcome_->setText(refused ? tr("Not saved. %1").arg(sentence) : sentence);
  outcome_->painted(refused ? Paint::warning : Paint::accent);
  outcome_->show();
}

}  // namespace ohmkin::castings
