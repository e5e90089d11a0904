#include <desk/sheet_options.h>
#include <jobs/jobs_page.h>
#include <look/type.h>
#include <parts/words.h>
#include <workflow/job_sheet.h>
#include <workflow/sheets.h>
#include <workflow/stock_label.h>
#include <QFileDialog>
#include <QFileInfo>
#include <QStandardPaths>

namespace ohmkin::jobs {

using desk::plain;
using look::Paint;
using look::space;

namespace {

enum Lane { listing, showing, again };
constexpr int kMostListed = 200;

}  // namespace

JobsPage::JobsPage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      blank_(new parts::BlankSheet(this)),
      stack_(new QStackedWidget(this)),
      busy_(new parts::BusyLine(this)),
      split_(new QSplitter(Qt::Horizontal)),
      search_(new parts::Entry(tr("Find a job"), this)),
      begin_(new QPushButton(tr("&New job"), this)),
      count_((new parts::Words({}, this))->sized(look::typeface(look::Text::small))->painted(Paint::quiet)),
      list_(new JobList(this)),
      desk_(new JobDesk(this)) {
  setAcceptDrops(true);
  search_->setPlaceholderText(tr("reference, vehicle, part, note"));
  search_->setClearButtonEnabled(false);
  split_->setObjectName(QStringLiteral("jobSplit"));
  split_->setChildrenCollapsible(false);
  split_->setHandleWidth(space(14));
  split_->addWidget(makeLeft());
  split_->addWidget(desk_);
  split_->setStretchFactor(0, 4);
  split_->setStretchFactor(1, 7);
  stack_->addWidget(blank_);
  stack_->addWidget(split_);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(20), space(24), space(16));
  outer->setSpacing(space(4));
  outer->addWidget(busy_);
  outer->addWidget(stack_, 1);
  parts::sayNoCatalogue(*blank_, {});
  wire();
  offerActions();
  showState();
}

QWidget* JobsPage::makeLeft() {
  auto* left = new QWidget(split_);
  auto* row = new QHBoxLayout;
  row->setSpacing(space(8));
  row->addWidget(search_, 1);
  row->addWidget(begin_);
  begin_->setMinimumHeight(search_->sizeHint().height());
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addLayout(row);
  column->addWidget(count_);
  column->addWidget(list_, 1);
  return left;
}

void JobsPage::wire() {
  parts::askThrough(*this, *blank_);
  connect(search_, &QLineEdit::textChanged, this, &JobsPage::load);
  connect(search_, &parts::Entry::left, this, [this](int direction) {
    list_->setFocus(Qt::TabFocusReason);
    list_->step(list_->currentIndex().isValid() ? 0 : direction);
  });
  connect(list_, &JobList::chosen, this, [this](qint64 id) {
    const bool stays = desk_->form() == nullptr || desk_->form() == &desk_->fields();
    if (stays || !view_ || givesUp()) showJob({id});
    else list_->choose(view_->job.id);
  });
  connect(desk_, &JobDesk::sent, this, &JobsPage::send);
  connect(desk_, &JobDesk::formLeft, this, [this] {
    desk_->open(nullptr);
    takeKeyboard();
  });
  connect(desk_, &JobDesk::goOnAsked, this, &Page::goOnRequested);
  connect(desk_, &JobDesk::removeAsked, this, [this](int ordinal) {
    const auto id = shownJob();
    if (!id) return;
    write(Kind::step, tr("remove what was kept"), [id = *id, ordinal](catalog::Catalogue& catalogue, const auto& who) {
      return catalog::removeDocument(catalogue, id, ordinal, who).map([id] { return id; });
    });
  });
  connect(&thread_, &desk::CatalogueThread::opened, this, [this](const QString& file) {
    file_ = file;
    history().clear();
    newest_.clear();
    view_.reset();
    stack_->setCurrentIndex(1);
    sayNothing();
    load();
    emit opened(file);
  });
  connect(&thread_, &desk::CatalogueThread::openingRefused, this, [this](const QString& file, const Refusal& refusal) {
    forget(refusal);
    emit refused(file, desk::refusalSentence(refusal));
  });
  connect(&thread_, &desk::CatalogueThread::failed, this, [this](const Refusal& refusal) { forget(refusal); });
  connect(&settings_, &desk::Settings::unitsChanged, this, [this] {
    if (view_) showJob(view_->job.id);
  });
}

void JobsPage::offerActions() {
  offer(tr("Find a job"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] {
    search_->setFocus(Qt::ShortcutFocusReason);
    search_->selectAll();
  });
  QAction* begin = offer(tr("Begin a new job"), QKeySequence(Qt::CTRL | Qt::Key_N), [this] {
    if (!ready()) return;
    desk_->tell({}, false);
    desk_->fields().begin();
    desk_->open(&desk_->fields());
  });
  begin_->setToolTip(parts::plainTip(desk::tipOf(*begin)));
  connect(begin_, &QPushButton::clicked, begin, &QAction::trigger);
  QAction* note = offer(tr("Add a note to the job"), QKeySequence(Qt::CTRL | Qt::Key_E), [this] {
    desk_->noteForm().begin();
    desk_->open(&desk_->noteForm());
  });
  QAction* close =
      offer(tr("Close the job, or open it again"), QKeySequence(Qt::CTRL | Qt::Key_M), [this] { closeOrOpen(); });
  QAction* print =
      offer(tr("Print of the job"), QKeySequence(Qt::CTRL | Qt::Key_P), [this] { desk_->print().click(); });
  QAction* edit = offer(tr("Edit the job"), QKeySequence(Qt::Key_F2), [this] {
    desk_->fields().begin(view_->job);
    desk_->open(&desk_->fields());
  });
  QAction* attach = offer(tr("Attach a file to the job…"), QKeySequence(Qt::CTRL | Qt::Key_T), [this] {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::PicturesLocation);
    const QString file = QFileDialog::getOpenFileName(this, tr("Attach a photo or another file"), folder);
    if (!file.isEmpty()) this->attach(file);
  });
  QAction* duplicate = offer(tr("Duplicate the job"), QKeySequence(Qt::CTRL | Qt::Key_D), [this] {
    write(Kind::newJob, tr("duplicate the job"),
          [id = view_->job.id](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
            return catalog::duplicateJob(catalogue, id, who).map([](const auto& job) { return job.id; });
          });
  });
  QAction* remove = offer(tr("Delete the job"), QKeySequence(Qt::CTRL | Qt::Key_Delete), [this] {
    write(Kind::step, tr("delete the job"),
          [id = view_->job.id](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
            return workflow::deleteJob(catalogue, id, who).map([](const auto& job) { return job.id; });
          });
  });
  QAction* erase = offer(tr("Erase the job for good…"), {}, [this] {
    desk_->eraseForm().begin(view_->job);
    desk_->open(&desk_->eraseForm());
  });
  onJob_ = {note, close, print, edit, attach, duplicate, remove, erase};
  auto* menu = new QMenu(&desk_->more());
  menu->addActions({edit, attach, duplicate});
  menu->addSeparator();
  menu->addActions({remove, erase});
  connect(&desk_->more(), &QPushButton::clicked, menu, [this, menu] {
    menu->popup(desk_->more().mapToGlobal(QPoint(0, desk_->more().height())));
    menu->setActiveAction(menu->actions().front());
  });
  connect(desk_, &JobDesk::noteAsked, note, &QAction::trigger);
  connect(desk_, &JobDesk::closeAsked, close, &QAction::trigger);
  desk_->noteButton().setToolTip(parts::plainTip(desk::tipOf(*note)));
  desk_->closeButton().setToolTip(parts::plainTip(desk::tipOf(*close)));
  desk_->print().setToolTip(parts::plainTip(desk::tipOf(*print)));
  printing::sheetButton(desk_->print(), {{tr("Job sheet"), [this] { return jobSheet(); }},
                                         {tr("Offset card"), [this] { return offsetCard(); }},
                                         {tr("Shelf label"), [this] { return shelfLabel(); }}});
  offer(tr("Save what the form says"), QKeySequence(Qt::CTRL | Qt::Key_S), [this] {
    if (desk_->form() != nullptr) desk_->form()->send();
  });
  offer(tr("Out of the form"), QKeySequence(Qt::Key_Escape), [this] {
    if (!givesUp()) return;
    desk_->open(nullptr);
    takeKeyboard();
  });
}

void JobsPage::openCatalogue(const QString& file) {
  parts::sayOpening(*blank_, file);
  stack_->setCurrentIndex(0);
  thread_.open(file);
}

/// What is typed in a form is given up when that is asked a second time.
bool JobsPage::givesUp() {
  const Form* form = desk_->form();
  if (form == nullptr || !form->typed() || std::exchange(askedOf_, form->said()) == form->said()) {
    askedOf_.clear();
    desk_->tell({}, false);
    return true;
  }
  desk_->tell(tr("This is not saved yet. Once more to give it up."), true);
  return false;
}

QString JobsPage::unsaved() const {
  const Form* form = desk_->form();
  if (form == nullptr || !form->typed()) return {};
  if (form == &desk_->fields() && !desk_->fields().job())
    return tr("a new job, “%1”").arg(desk_->fields().reference().text().trimmed());
  return tr("what is being written of the job “%1”").arg(desk_->heading());
}

void JobsPage::showNoCatalogue() { forget({}); }

void JobsPage::forget(const std::optional<Refusal>& whyNot) {
  file_.clear();
  view_.reset();
  history().clear();
  parts::sayNoCatalogue(*blank_, whyNot);
  stack_->setCurrentIndex(0);
  showState();
}

void JobsPage::takeKeyboard() { search_->setFocus(Qt::OtherFocusReason); }

std::optional<catalog::JobNumber> JobsPage::shownJob() const {
  return view_ ? std::optional(view_->job.id) : std::nullopt;
}

/// Another page may have kept something meanwhile.
void JobsPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  if (ready()) load();
}

void JobsPage::load() {
  if (file_.isEmpty()) return;
  thread_.ask(listing,
              [this, text = search_->text().trimmed().toStdString()](
                  const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                catalog::JobFilter filter;
                filter.text = text;
                filter.state = catalog::JobState::open;
                auto jobs = workflow::findJobs(open.catalogue, filter, kMostListed);
                filter.state = catalog::JobState::done;
                for (auto& each : workflow::findJobs(open.catalogue, filter, kMostListed))
                  jobs.push_back(std::move(each));
                return [this, jobs = std::move(jobs), all = static_cast<qint64>(catalog::jobCount(open.catalogue))] {
                  take(jobs, all);
                };
              });
}

void JobsPage::take(std::vector<catalog::JobRecord> jobs, qint64 all) {
  const catalog::JobRecord* latest = nullptr;
  int open = 0;
  for (const auto& each : jobs) {
    if (latest == nullptr || each.changed > latest->changed) latest = &each;
    if (each.said.state == catalog::JobState::open) ++open;
  }
  std::optional<catalog::JobNumber> choose = wanted_;
  const bool elsewhere = latest != nullptr && !newest_.empty() && latest->changed > newest_;
  if (!choose && elsewhere) choose = latest->id;
  if (!choose) choose = shownJob();
  if (latest != nullptr) newest_ = std::max(newest_, latest->changed);
  else if (all == 0) newest_.assign(1, '0');  // before any change
  const auto there = [&](catalog::JobNumber id) {
    return std::any_of(jobs.begin(), jobs.end(), [&](const auto& each) { return each.id == id; });
  };
  if ((!choose || !there(*choose)) && !jobs.empty()) choose = jobs.front().id;
  wanted_.reset();
  const auto found = static_cast<int>(jobs.size());
  if (all == 0) count_->setText({});
  else if (search_->text().trimmed().isEmpty())
    count_->setText(tr("%n jobs", nullptr, found) + tr(", %1 open").arg(open));
  else count_->setText(tr("%n jobs found", nullptr, found) + tr(", %1 open").arg(open));
  if (found >= kMostListed) count_->setText(count_->text() + tr("; type to find others"));
  list_->setJobs(std::move(jobs));
  if (found == 0) {
    view_.reset();
    if (desk_->form() == nullptr) sayNothing();
    showState();
    return;
  }
  list_->choose(*choose);
  showJob(*choose);
}

void JobsPage::sayNothing() {
  if (search_->text().trimmed().isEmpty())
    desk_->displayNothing(tr("No jobs yet"),
                          tr("Begin one here with Ctrl+N, or keep an answer with one: Ctrl+K on the page it is on."));
  else
    desk_->displayNothing(tr("No job says that"), tr("Every word is looked for in references, vehicles, engines, "
                                                     "parts and notes."));
}

void JobsPage::showJob(catalog::JobNumber id) {
  if (desk_->form() != nullptr && view_ && view_->job.id != id && desk_->form() != &desk_->fields())
    desk_->open(nullptr);
  thread_.ask(showing, [this, id](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    auto view = workflow::jobView(open.catalogue, id, true);
    if (!view) return [this, why = desk::refusalSentence(view.error())] { desk_->tell(why, true); };
    return [this, shared = std::make_shared<const workflow::JobView>(std::move(*view))] { display(shared); };
  });
}

void JobsPage::display(const std::shared_ptr<const workflow::JobView>& view) {
  if (view_ && view_->job.id != view->job.id && writing_ == 0) desk_->tell({}, false);
  view_ = view;
  today_.clear();
  jobSheet_.reset();
  shelfLabel_.reset();
  desk_->display(*view, settings_.units());
  showState();
  askToday();
}

void JobsPage::askToday() {
  thread_.ask(
      again,
      [this, view = view_, units = settings_.units()](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
        workflow::MatchOptions options;
        options.units = units;
        std::vector<std::pair<int, Expected<workflow::AnsweredAgain>>> all;
        for (const auto& document : view->documents)
          if (document.kept.kind == catalog::DocumentKind::match && document.asWritten)
            all.emplace_back(document.kept.ordinal,
                             workflow::answerAgain(open.catalogue, view->job.id, document.kept.ordinal, options));
        const workflow::SheetOptions paper = desk::todaysSheet(units);
        auto sheet = workflow::jobSheet(open.catalogue, view->job.id, paper);
        const std::string part = partOf(*view);
        auto label = part.empty() ? Expected<sheet::Pages>(ohmkin::refuse(
                                        "no-labels", tr("Shelf label").toStdString(), tr("no part").toStdString(),
                                        tr("a part fitted or recommended").toStdString()))
                                  : workflow::shelfLabels(open.catalogue, {part}, paper, true);
        return [this, all = std::move(all), sheet = std::move(sheet), label = std::move(label)] {
          jobSheet_ = sheet;
          shelfLabel_ = label;
          for (const auto& [ordinal, said] : all) {
            if (!said) {
              desk_->sayToday(ordinal, desk::refusalSentence(said.error()));
              continue;
            }
            desk_->sayToday(ordinal, *said);
            today_.emplace_back(ordinal, *said);
          }
        };
      });
}

/// What can be done now follows what is shown.
void JobsPage::showState() {
  for (QAction* action : onJob_) action->setEnabled(view_ != nullptr && ready());
}

}  // namespace ohmkin::jobs
