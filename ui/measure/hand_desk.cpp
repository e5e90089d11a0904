#include <catalog/catalogue_error.h>
#include <look/type.h>
#include <measure/hand_desk.h>
#include <measure/lanes.h>
#include <QHBoxLayout>

namespace ohmkin::measure {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSideBySide = 780;

/// What the page asks: everything but the readings, which are read on the thread.
struct Asked {
  std::vector<RowText> rows;
  SetUpSaid setUp;
  std::string part;
  std::string lot;
  std::string family;
  DisplayUnits units;
};

Expected<workflow::BenchQuestion> questionOf(const Asked& asked, const RowsRead& read) {
  workflow::BenchQuestion question;
  auto leads = leadsOf(asked.setUp);
  if (!leads) return tl::make_unexpected(leads.error());
  question.readings = read.readings;
  question.meter = asked.setUp.meter.toStdString();
  question.leads = *leads;
  question.part = asked.part;
  question.lot = asked.lot;
  question.family = asked.family;
  question.units = asked.units;
  return question;
}

Asked askedBy(const ReadingTable& table, const SetUp& setUp, const KeepForm& keep, const DisplayUnits& units) {
  return {table.rows(),
          setUp.said(),
          keep.part().text().trimmed().toStdString(),
          keep.lot().text().trimmed().toStdString(),
          keep.familySaid().toStdString(),
          units};
}

}  // namespace

HandDesk::HandDesk(desk::CatalogueThread& thread, desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      thread_(thread),
      settings_(settings),
      cautions_(new parts::CautionPanel(this)),
      sides_(new QBoxLayout(QBoxLayout::LeftToRight)),
      view_(new AnswerView(this)) {
  QStringList before;
  for (const Finding& caution : bench::cautions(bench::BathKind::heatedWater)) before << desk::shown(caution.sentence);
  cautions_->display(before);
  sides_->setSpacing(space(16));
  left_ = makeLeft();
  sides_->addWidget(left_, 9);
  sides_->addWidget(view_, 11);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(cautions_);
  column->addLayout(sides_, 1);
  wire();
}

/// Where type is large there is no room for two columns: the answer follows below.
void HandDesk::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  const bool beside = width() >= space(kSideBySide);
  sides_->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
  left_->setMaximumWidth(beside ? space(620) : QWIDGETSIZE_MAX);
}

QWidget* HandDesk::makeLeft() {
  auto* left = new QWidget(this);
  setUp_ = new SetUp;
  table_ = new ReadingTable;
  note_ = (new parts::Words)->sized(typeface(Text::small))->painted(Paint::quiet);
  clear_ = new QPushButton(tr("C&lear the table"));
  keep_ = new KeepForm;
  auto* readings = new parts::Panel(parts::Panel::Kind::sheet, left);
  auto* column = new QVBoxLayout(readings);
  column->setContentsMargins(space(16), space(12), space(16), space(12));
  column->setSpacing(space(8));
  column->addWidget(setUp_);
  column->addSpacing(space(2));
  column->addWidget(table_);
  auto* foot = new QHBoxLayout;
  foot->setSpacing(space(12));
  foot->addWidget(note_, 1);
  foot->addWidget(clear_, 0, Qt::AlignTop);
  column->addLayout(foot);
  auto* outer = new QVBoxLayout(left);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->setSpacing(space(12));
  outer->addWidget(readings);
  outer->addWidget(headedPanel(tr("The part"), {keep_}, left));
  outer->addStretch(1);
  return left;
}

void HandDesk::wire() {
  connect(table_, &ReadingTable::changed, this, [this] {
    keep_->tell({}, false);
    asked();
  });
  connect(table_, &ReadingTable::rowChosen, this, &HandDesk::showNote);
  connect(setUp_, &SetUp::changed, this, &HandDesk::asked);
  connect(keep_, &KeepForm::changed, this, &HandDesk::asked);
  connect(keep_, &KeepForm::kept, this, &HandDesk::keep);
  connect(clear_, &QPushButton::clicked, this, &HandDesk::clearAll);
  connect(&settings_, &desk::Settings::unitsChanged, this, &HandDesk::asked);
}

void HandDesk::setShop(const QString& file, const SharedShop& shop) {
  file_ = file;
  shop_ = shop;
  setUp_->setEquipment(shop->meters, shop->thermometers);
  keep_->setNames(shop->parts, shop->familyNames);
  asked();
}

void HandDesk::forget() {
  shop_.reset();
  answer_.reset();
  file_.clear();
}

void HandDesk::clearAll() {
  table_->setRows({});
  table_->takeKeyboard();
}

void HandDesk::asked() {
  if (!shop_) return;
  table_->setBathHeading(settings_.units().temperature == TemperatureUnit::celsius ? tr("Bath, °C") : tr("Bath, °F"));
  const auto boils = [](const RowText& row) { return saysBoiling(row.cells[bathColumn]); };
  const auto rows = table_->rows();
  setUp_->askForBoiling(std::any_of(rows.begin(), rows.end(), boils));
  thread_.ask(asking,
              [this, shop = shop_, now = askedBy(*table_, *setUp_, *keep_, settings_.units())](
                  const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                auto read = readRows(open.catalogue, now.rows, now.setUp, now.units.temperature);
                const auto question = questionOf(now, read);
                if (!question)
                  return [this, read, why = desk::refusalSentence(question.error())] { displayRefused(why, read); };
                auto answer = workflow::benchWork(open.catalogue, shop->families, *question);
                if (!answer)
                  return [this, read, why = desk::refusalSentence(answer.error())] { displayRefused(why, read); };
                return [this, read, shared = std::make_shared<const workflow::BenchAnswer>(std::move(*answer))] {
                  display(shared, read);
                };
              });
}

void HandDesk::display(const std::shared_ptr<const workflow::BenchAnswer>& answer, const RowsRead& read) {
  answer_ = answer;
  auto troubles = read.troubles;
  const auto ofLines = troublesOf(*answer, read.rows);
  troubles.insert(troubles.end(), ofLines.begin(), ofLines.end());
  table_->setTroubles(troubles);
  setUp_->askAboutBarometer(barometerQuestion(*answer));
  QStringList cautions;
  for (const Finding& caution : answer->cautions) cautions << desk::shown(caution.sentence);
  cautions_->display(cautions);
  view_->display(shop_->families, *answer, settings_.units());
  const auto ofPart = [](const Finding& finding) { return finding.code == "part-unknown"; };
  const auto doubt = std::find_if(answer->findings.begin(), answer->findings.end(), ofPart);
  keep_->doubtPart(doubt == answer->findings.end() ? QString() : desk::shown(doubt->sentence));
  keep_->keep().setEnabled(!answer->readings.empty());
  showNote(table_->currentRow());
}

/// What is shown stays: half a number is often refused while it is typed.
void HandDesk::displayRefused(const QString& sentence, const RowsRead& read) {
  table_->setTroubles(read.troubles);
  keep_->keep().setEnabled(false);
  note_->setText(sentence);
  note_->painted(Paint::warning);
}

void HandDesk::showNote(int row) {
  const auto& troubles = table_->troubles();
  const RowTrouble* told = nullptr;
  for (const RowTrouble& trouble : troubles)
    if (told == nullptr || trouble.row == row) told = &trouble;
  note_->painted(told != nullptr ? Paint::warning : Paint::quiet);
  if (told != nullptr) {
    note_->setText(tr("Row %1: %2").arg(told->row + 1).arg(told->sentence));
    return;
  }
  QStringList words{
      tr("Enter goes on: bath, ohms, next row. A bath is a temperature, ice, cubes or boil; OL is "
         "overload; Space ticks; a block from a spreadsheet can be pasted.")};
  if (shop_ && !shop_->baths.isEmpty())
    words << tr("The shop's baths: %1.").arg(shop_->baths.join(QStringLiteral(", ")));
  note_->setText(words.join(QLatin1Char(' ')));
}

void HandDesk::keep() {
  if (!shop_) return;
  keep_->keep().setEnabled(false);
  thread_.ask(keeping,
              [this, shop = shop_, file = file_, who = keep_->who().text().trimmed().toStdString(),
               now = askedBy(*table_, *setUp_, *keep_, settings_.units())](
                  const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                const auto read = readRows(open.catalogue, now.rows, now.setUp, now.units.temperature);
                const auto tell = [this](const QString& sentence, bool refused) -> desk::CatalogueThread::Then {
                  return [this, sentence, refused] {
                    keep_->tell(sentence, refused);
                    keep_->keep().setEnabled(true);
                  };
                };
                if (!read.troubles.empty())
                  return tell(tr("Row %1: %2").arg(read.troubles.front().row + 1).arg(read.troubles.front().sentence),
                              true);
                const auto question = questionOf(now, read);
                if (!question) return tell(desk::refusalSentence(question.error()), true);
                try {
                  auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
                  const auto done = workflow::keepBench(catalogue, shop->families, *question, who);
                  if (!done) return tell(desk::refusalSentence(done.error()), true);
                  QStringList words{desk::shown(done->sentence)};
                  for (const Finding& finding : done->findings) words << desk::shown(finding.sentence);
                  return [this, sentence = words.join(QLatin1Char(' '))] {
                    keep_->tell(sentence, false);
                    emit kept();
                    asked();
                  };
                } catch (const catalog::CatalogueError& error) {
                  // Not to be written: what is open can still be read.
                  return tell(desk::refusalSentence(error.refusal()), true);
                }
              });
}

QString HandDesk::asText() const {
  return answer_ && shop_ && !answer_->readings.empty() ? answerAsText(shop_->families, *answer_, settings_.units())
                                                        : QString();
}

}  // namespace ohmkin::measure
