#include <catalog/catalogue_error.h>
#include <look/type.h>
#include <parts/keep_with_job.h>
#include <parts/names.h>
#include <workflow/job_work.h>
#include <workflow/person.h>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <optional>

namespace ohmkin::parts {
namespace {

using desk::plain;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kOpenJobsOffered = 500;

QString asideOf(const catalog::JobRecord& job) {
  const QString number = KeepWithJob::tr("job %1").arg(job.id.value);
  return job.said.vehicle.empty() ? number : number + QStringLiteral(", ") + plain(job.said.vehicle);
}

}  // namespace

KeepWithJob::KeepWithJob(const QString& file, const QString& what, KeepIn keep, QWidget* parent)
    : QDialog(parent),
      keep_(std::move(keep)),
      reference_(new Entry(tr("Reference of the job"), this)),
      where_((new Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      told_((new Words({}, this))->painted(Paint::warning)),
      keepNow_(new QPushButton(tr("&Keep"), this)) {
  setWindowTitle(tr("Keep with a job"));
  auto* heading = (new Words(tr("Keep with a job"), this))->sized(typeface(Text::heading));
  auto* thing = (new Words(what, this))->painted(Paint::quiet);
  reference_->setAccessibleDescription(tr("The customer's own word for the job, or the number of an open one"));
  reference_->setPlaceholderText(tr("reference, or number of an open job"));
  auto* cancel = new QPushButton(tr("Cancel"), this);
  for (QPushButton* button : {keepNow_, cancel}) {
    button->setMinimumHeight(space(36));
    button->setMinimumWidth(space(96));
    button->setAutoDefault(false);
  }
  auto* row = new QHBoxLayout;
  row->setSpacing(space(8));
  row->addStretch(1);
  row->addWidget(cancel);
  row->addWidget(keepNow_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(24), space(20), space(24), space(20));
  column->setSpacing(space(8));
  for (QWidget* each : std::initializer_list<QWidget*>{heading, thing, reference_, where_, told_})
    column->addWidget(each);
  column->addStretch(1);
  column->addLayout(row);
  setMinimumWidth(space(460));
  setTabOrder(reference_, keepNow_);
  setTabOrder(keepNow_, cancel);
  told_->hide();
  sayWhere();
  connect(reference_, &QLineEdit::textChanged, this, &KeepWithJob::sayWhere);
  connect(reference_, &Entry::left, this, [this](int direction) {
    if (direction > 0) keepIt();
  });
  connect(keepNow_, &QPushButton::clicked, this, &KeepWithJob::keepIt);
  connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
  connect(&thread_, &desk::CatalogueThread::opened, this, [this] {
    thread_.ask(0, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
      catalog::JobFilter filter;
      filter.state = catalog::JobState::open;
      auto jobs = workflow::findJobs(open.catalogue, filter, kOpenJobsOffered);
      return [this, jobs = std::move(jobs)] { take(jobs); };
    });
  });
  connect(&thread_, &desk::CatalogueThread::openingRefused, this,
          [this](const QString&, const Refusal& refusal) { refuse(desk::refusalSentence(refusal)); });
  connect(&thread_, &desk::CatalogueThread::failed, this,
          [this](const Refusal& refusal) { refuse(desk::refusalSentence(refusal)); });
  thread_.open(file);
  reference_->setFocus(Qt::OtherFocusReason);
}

void KeepWithJob::take(std::vector<catalog::JobRecord> open) {
  open_ = std::move(open);
  ready_ = true;
  std::vector<NameWords> names;
  names.reserve(open_.size());
  for (const catalog::JobRecord& job : open_) names.push_back({plain(job.said.reference), asideOf(job)});
  offerNames(*reference_, names);
  sayWhere();
}

const catalog::JobRecord* KeepWithJob::meant() const {
  const QString typed = reference_->text().trimmed();
  const auto number = workflow::readJobNumber(typed.toStdString(), {});
  for (const catalog::JobRecord& job : open_)
    if (plain(job.said.reference).compare(typed, Qt::CaseInsensitive) == 0) return &job;
  for (const catalog::JobRecord& job : open_)
    if (number && job.id == *number) return &job;
  return nullptr;
}

void KeepWithJob::sayWhere() {
  told_->hide();
  const QString typed = reference_->text().trimmed();
  keepNow_->setEnabled(!typed.isEmpty());
  if (typed.isEmpty()) {
    QString help = plain(workflow::kReferenceHelp);
    help[0] = help[0].toUpper();
    where_->setText(help + QLatin1Char('.'));
  } else if (const catalog::JobRecord* job = meant()) {
    where_->setText(tr("Enter keeps it with %1: %2.").arg(asideOf(*job), plain(job->said.reference)));
  } else {
    where_->setText(tr("Enter begins a new job, “%1”.").arg(typed));
  }
}

void KeepWithJob::keepIt() {
  const QString typed = reference_->text().trimmed();
  if (typed.isEmpty() || !keepNow_->isEnabled()) return;
  keepNow_->setEnabled(false);
  thread_.tell([this, typed = typed.toStdString(), keep = keep_,
                known = meant() != nullptr ? std::optional(meant()->id) : std::nullopt](
                   const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    const auto refused = [this](const Refusal& why) {
      return [this, sentence = desk::refusalSentence(why)] { refuse(sentence); };
    };
    try {
      auto catalogue = catalog::Catalogue::open(open.catalogue.file(), catalog::Access::readWrite);
      const std::string who = workflow::personLoggedIn();
      std::optional<catalog::JobNumber> job = known;
      if (!job) {
        catalog::JobFields said;
        said.reference = typed;
        const auto begun = workflow::openJob(catalogue, said, who);
        if (!begun) return refused(begun.error());
        job = begun->id;
      }
      if (const auto kept = keep(catalogue, *job, who); !kept) {
        // A job that was begun for it alone holds nothing; that it cannot be put away is no second refusal.
        if (!known) (void)workflow::deleteJob(catalogue, *job, who);
        return refused(kept.error());
      }
      const auto now = catalog::job(catalogue, *job);
      return [this, id = job->value, reference = now ? plain(now->said.reference) : QString()] {
        emit kept(tr("Kept with job %1, “%2”.").arg(id).arg(reference));
        accept();
      };
    } catch (const catalog::CatalogueError& error) {
      return refused(error.refusal());
    }
  });
}

void KeepWithJob::refuse(const QString& sentence) {
  told_->setText(tr("Not kept. %1").arg(sentence));
  told_->show();
  keepNow_->setEnabled(!reference_->text().trimmed().isEmpty());
}

KeepWithJob* keepWithJob(const QString& file, const QString& what, KeepIn keep, QWidget* page,
                         const std::function<void(const QString&)>& said) {
  auto* dialog = new KeepWithJob(file, what, std::move(keep), page);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  QObject::connect(dialog, &KeepWithJob::kept, page, said);
  dialog->open();
  return dialog;
}

}  // namespace ohmkin::parts
