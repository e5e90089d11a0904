#include <catalog/catalogue_error.h>
#include <look/type.h>
#include <measure/answer_view.h>
#include <measure/curve_picture.h>
#include <measure/file_desk.h>
#include <measure/file_words.h>
#include <measure/lanes.h>
#include <QFileDialog>
#include <QFileInfo>
#include <QStandardPaths>
#include <array>
#include <fstream>

namespace ohmkin::measure {
namespace {

using desk::plain;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

/// What the person said of the file's curves or of the bench is unknown; how the file is read stands.
bool isOfWords(const Refusal& refusal) {
  static const std::array<std::string_view, 5> codes{"part-unknown", "family-unknown", "family-without-curve",
                                                     "meter-unknown", "thermometer-unknown"};
  return std::find(codes.begin(), codes.end(), refusal.code) != codes.end();
}

/// Where the plan cannot be read by, what was proposed is shown all the same, so that it can be put right.
std::shared_ptr<const exchange::Proposal> proposedOf(const workflow::ReadingsFile& file,
                                                     const exchange::ProposalHints& hints) {
  std::ifstream in(file.path, std::ios::binary);
  std::string sample(exchange::kSampleBytes, '\0');
  in.read(sample.data(), static_cast<std::streamsize>(sample.size()));
  sample.resize(static_cast<std::size_t>(in.gcount()));
  auto proposal = exchange::propose(sample, file.name, hints);
  return proposal ? std::make_shared<const exchange::Proposal>(*std::move(proposal)) : nullptr;
}

}  // namespace

FileDesk::FileDesk(desk::CatalogueThread& thread, desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      thread_(thread),
      settings_(settings),
      stop_(std::make_shared<std::atomic<bool>>(false)),
      stack_(new QStackedWidget(this)),
      blank_(new parts::BlankSheet(this)) {
  blank_->say(tr("Drop a file of readings here"),
              tr("A table of temperature and ohms as a spreadsheet, a logger or a meter writes it: comma, semicolon or "
                 "tab, any decimal mark, °C, °F or K, one curve or many. How it was read is shown first and can be put "
                 "right; nothing is written until you bring it in."));
  blank_->offer(tr("&Open a file…"));
  stack_->addWidget(blank_);
  stack_->addWidget(makeWork());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(stack_);
  showWork(false);
  wire();
}

/// The one that is not shown takes no room: what is empty has nothing to scroll.
void FileDesk::showWork(bool work) {
  stack_->setCurrentIndex(work ? 1 : 0);
  for (int i = 0; i < stack_->count(); ++i)
    stack_->widget(i)->setSizePolicy(QSizePolicy::Expanding,
                                     i == stack_->currentIndex() ? QSizePolicy::Preferred : QSizePolicy::Ignored);
}

QWidget* FileDesk::makeWork() {
  auto* work = new QWidget(this);
  head_ = new FileHead;
  questions_ = new OpenQuestions;
  chips_ = new parts::ChipRow;
  chips_->setAccessibleName(tr("How the file was read"));
  columns_ = new FileColumns;
  rejectedName_ = (new parts::Words)->painted(Paint::warning);
  rejected_ = new CalmTable(tr("Cells that could not be read"), {tr("Line : column"), tr("Found"), tr("Expected")});
  rejected_->showAtMost(6);
  found_ = makeFound();
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(head_);
  column->addWidget(questions_);
  column->addWidget(headedPanel(tr("How it was read"), {chips_, columns_, rejectedName_, rejected_}, work));
  column->addWidget(found_);
  column->addStretch(1);
  return work;
}

QWidget* FileDesk::makeFound() {
  runs_ = new RunTable;
  runs_->showAtMost(6);
  plot_ = new CurvePlot;
  bars_ = new SuspectBars;
  remarks_ = new parts::FindingList;
  remarks_->setMinimumHeight(space(160));
  auto* answer = new QWidget;
  auto* side = new QVBoxLayout;
  side->setSpacing(space(8));
  side->addWidget((new parts::Words(tr("Whose curve is it?")))->sized(typeface(Text::strong)));
  side->addWidget(bars_);
  side->addWidget(remarks_, 1);
  auto* row = new QHBoxLayout(answer);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(16));
  row->addWidget(plot_, 6);
  row->addLayout(side, 5);
  runsNote_ = (new parts::Words)->sized(typeface(Text::small));
  return headedPanel(tr("Curves found"), {runs_, runsNote_, answer}, this);
}

void FileDesk::wire() {
  connect(blank_, &parts::BlankSheet::exampleTaken, this, &FileDesk::choose);
  connect(head_, &FileHead::openAsked, this, &FileDesk::choose);
  connect(head_, &FileHead::bringInAsked, this, &FileDesk::bringIn);
  connect(head_, &FileHead::cancelAsked, this, &FileDesk::stop);
  connect(head_, &FileHead::equipmentChanged, this, &FileDesk::asked);
  connect(questions_, &OpenQuestions::answered, this, [this](const QString& given) {
    correct(correction_.isEmpty() ? given : correction_ + QStringLiteral(", ") + given);
  });
  connect(columns_, &FileColumns::corrected, this, &FileDesk::correct);
  connect(runs_, &RunTable::chosen, this, &FileDesk::displayRun);
  connect(
      runs_, &RunTable::edited, this,
      [this] {
        said_ = runs_->said();
        asked();
      },
      Qt::QueuedConnection);  // the table is filled anew, not from inside its own editor
  connect(&settings_, &desk::Settings::unitsChanged, this, &FileDesk::asked);
}

void FileDesk::setShop(const QString& file, const SharedShop& shop) {
  catalogue_ = file;
  shop_ = shop;
  head_->setEquipment(shop->meters, shop->thermometers);
  asked();
}

void FileDesk::forget() {
  stop();
  shop_.reset();
  preview_.reset();
}

void FileDesk::takeKeyboard() {
  if (stack_->currentIndex() == 0) blank_->example()->setFocus(Qt::ShortcutFocusReason);
  else head_->bringIn().setFocus(Qt::ShortcutFocusReason);
}

void FileDesk::choose() {
  const QString start = path_.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) : path_;
  const QString file = QFileDialog::getOpenFileName(this, tr("Open a file of readings"), start,
                                                    tr("Tables (*.csv *.tsv *.txt *.dat *.log);;All files (*)"));
  if (!file.isEmpty()) openFile(file);
}

void FileDesk::openFile(const QString& path) {
  stop();
  bringing_ = false;
  thread_.drop(bringing);
  path_ = path;
  correction_.clear();
  said_.clear();
  preview_.reset();
  head_->tell({}, false);
  asked();
}

void FileDesk::stop() { stop_->store(true); }

void FileDesk::correct(const QString& line) {
  correction_ = line;
  said_.clear();
  asked();
}

workflow::ImportAsked FileDesk::request() const {
  workflow::ImportAsked request;
  request.correction = correction_.toStdString();
  request.hints.corrections = request.correction;
  request.runs = said_;
  request.meter = head_->meter().text().trimmed().toStdString();
  request.bath = head_->bath().text().trimmed().toStdString();
  request.units = settings_.units();
  return request;
}

/// Told from the thread that reads; shown here.
workflow::OnProgress FileDesk::reporting(const std::shared_ptr<std::atomic<bool>>& stopped) {
  return [this, stopped](const workflow::ImportProgress& progress) {
    if (stopped->load()) return false;
    QMetaObject::invokeMethod(
        this,
        [this, stopped, progress] {
          if (!stopped->load() && working_) head_->setProgress(progress);
        },
        Qt::QueuedConnection);
    return true;
  };
}

void FileDesk::asked() {
  // What is being brought in is looked at again when it is in.
  if (!shop_ || path_.isEmpty() || bringing_) return;
  stop();
  stop_ = std::make_shared<std::atomic<bool>>(false);
  head_->name(QFileInfo(path_).fileName(), path_);
  setWorking(true, tr("Reading…"));
  if (!preview_) {
    // Nothing to show of it yet but that it is read, and how to stop that.
    head_->say({}, false);
    head_->sayAlready({});
    questions_->hide();
    columns_->parentWidget()->hide();
    found_->hide();
    showWork(true);
  }
  thread_.ask(preview,
              [this, shop = shop_, request = request(), stopped = stop_, report = reporting(stop_),
               path = path_](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                const auto file = workflow::readingsFile(path.toStdString());
                auto made = workflow::previewImport(open.catalogue, shop->families, file, request, report);
                if (stopped->load()) return [this] { displayStopped(); };
                if (!made)
                  return [this, refusal = made.error(), proposal = proposedOf(file, request.hints)] {
                    displayRefused(refusal, proposal);
                  };
                return [this, shared = std::make_shared<const workflow::ImportPreview>(*std::move(made))] {
                  display(shared);
                };
              });
}

void FileDesk::display(const std::shared_ptr<const workflow::ImportPreview>& preview) {
  setWorking(false, {});
  preview_ = preview;
  head_->say(fileSentence(*preview), false);
  head_->sayAlready(alreadyWords(*preview));
  columns_->parentWidget()->show();
  questions_->display(preview->proposal.questions);
  chips_->display(readingChips(*preview));
  columns_->display(preview->proposal, preview->plan);
  displayRejected(*preview);
  runs_->display(preview->runs, shop_->families, settings_.units());
  noteRuns({});
  found_->show();
  displayRun(std::max(0, runs_->currentRow()));
  head_->bringIn().setEnabled(!preview->already && preview->tally.rows > 0);
  showWork(true);
}

void FileDesk::displayRejected(const workflow::ImportPreview& preview) {
  rejected_->setRowCount(0);
  for (const exchange::RejectedCell& cell : preview.rejected)
    rejected_->addWords(
        {QStringLiteral("%1 : %2").arg(cell.line).arg(cell.column), plain(cell.text), plain(cell.expected)});
  rejected_->fitColumns();
  rejected_->setVisible(!preview.rejected.empty());
  rejectedName_->setVisible(!preview.rejected.empty());
  rejectedName_->setText(preview.rejected.size() < preview.tally.rejected
                             ? tr("%1 cells could not be read; their rows are left out. The first %2:")
                                   .arg(preview.tally.rejected)
                                   .arg(preview.rejected.size())
                             : tr("Cells that could not be read; their rows are left out:"));
}

void FileDesk::displayStopped() {
  setWorking(false, {});
  if (!preview_) head_->say(tr("Stopped before it was read; nothing was brought in."), true);
}

void FileDesk::noteRuns(const QString& refused) {
  runsNote_->painted(refused.isEmpty() ? Paint::quiet : Paint::warning);
  runsNote_->setText(!refused.isEmpty() ? refused
                                        : tr("Write the number of the part where the file does not say it, and leave "
                                             "out what does not belong: a curve without a part is kept, but matching "
                                             "cannot use it."));
}

void FileDesk::displayRun(int run) {
  if (!preview_ || run < 0 || run >= static_cast<int>(preview_->runs.size())) return;
  const auto at = static_cast<std::size_t>(run);
  const workflow::RunPreview& each = preview_->runs[at];
  Pictured pictured;
  pictured.samples = each.points;
  pictured.fit = each.fit ? &*each.fit : nullptr;
  pictured.whose = each.whose ? &*each.whose : nullptr;
  pictured.claimed = each.claimed;
  plot_->display(pictureOf(shop_->families, pictured, settings_.units()));
  bars_->display(each.whose ? suspectsOf(shop_->families, *each.whose, each.claimed) : std::vector<SuspectRow>());
  remarks_->display(runRemarks(*preview_, at, settings_.units()));
}

void FileDesk::displayRefused(const Refusal& refusal, const std::shared_ptr<const exchange::Proposal>& proposal) {
  setWorking(false, {});
  if (preview_ && isOfWords(refusal)) {
    // What was found stays on the screen, so that the word can be put right where it was typed.
    noteRuns(desk::refusalSentence(refusal));
    head_->say(desk::refusalSentence(refusal), true);
    head_->bringIn().setEnabled(false);
    return;
  }
  preview_.reset();
  head_->say(desk::refusalSentence(refusal), true);
  head_->sayAlready({});
  found_->hide();
  rejected_->hide();
  rejectedName_->hide();
  head_->bringIn().setEnabled(false);
  chips_->display({});
  columns_->parentWidget()->setVisible(proposal != nullptr);
  questions_->display(proposal ? proposal->questions : std::vector<exchange::PlanQuestion>());
  if (proposal) columns_->display(*proposal, proposal->plan);
  showWork(true);
}

void FileDesk::bringIn() {
  if (!shop_ || !preview_) return;
  stop_ = std::make_shared<std::atomic<bool>>(false);
  bringing_ = true;
  setWorking(true, tr("Bringing in…"));
  thread_.ask(bringing,
              [this, shop = shop_, request = request(), stopped = stop_, report = reporting(stop_), path = path_,
               catalogue = catalogue_, who = head_->who().text().trimmed().toStdString()](
                  const desk::OpenCatalogue&) -> desk::CatalogueThread::Then {
                try {
                  auto open = catalog::Catalogue::open(catalogue.toStdString(), catalog::Access::readWrite);
                  const auto done = workflow::importFile(
                      open, shop->families, workflow::readingsFile(path.toStdString()), request, who, report);
                  if (!done)
                    return [this, refusal = done.error()] {
                      setWorking(false, {});
                      head_->tell(refusal.code == "import-cancelled"
                                      ? tr("Cancelled; nothing was brought in.")
                                      : tr("Not brought in. %1").arg(desk::refusalSentence(refusal)),
                                  true);
                    };
                  QString words = desk::shown(done->sentence());
                  if (done->remembers) words += QLatin1Char(' ') + tr("How such files are read is remembered.");
                  return [this, words] {
                    setWorking(false, {});
                    head_->tell(words, false);
                    emit broughtIn();
                    asked();
                  };
                } catch (const catalog::CatalogueError& error) {
                  return [this, why = desk::refusalSentence(error.refusal())] {
                    setWorking(false, {});
                    head_->tell(tr("Not brought in. %1").arg(why), true);
                  };
                }
              });
}

void FileDesk::setWorking(bool working, const QString& words) {
  working_ = working;
  bringing_ = bringing_ && working;
  head_->setWorking(working, words);
  head_->bringIn().setEnabled(!working && preview_ && !preview_->already);
}

QString FileDesk::asText() const {
  return preview_ && shop_ ? previewAsText(*preview_, shop_->families, settings_.units()) : QString();
}

}  // namespace ohmkin::measure
