#include <catalog/catalogue_error.h>
#include <jobs/jobs_page.h>
#include <workflow/person.h>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QMimeData>
#include <QUndoCommand>

/// What is written: made on the page's thread, undone and done again.
namespace ohmkin::jobs {

using desk::plain;

namespace {

/// A change of a job that is made elsewhere: undone and done again by asking for it.
class JobCommand : public QUndoCommand {
 public:
  JobCommand(const QString& what, std::function<void(bool back)> go) : QUndoCommand(what), go_(std::move(go)) {}
  void undo() override { go_(true); }
  void redo() override {
    if (made_) go_(false);
    made_ = true;
  }

 private:
  std::function<void(bool)> go_;
  bool made_ = false;
};

bool same(const std::optional<catalog::JobStep>& one, const catalog::JobStep& other) {
  return one && one->at == other.at && one->what == other.what && one->who == other.who;
}

QString localFile(const QMimeData& data) {
  const QList<QUrl> urls = data.urls();
  if (urls.size() != 1 || !urls.front().isLocalFile()) return {};
  const QString file = urls.front().toLocalFile();
  return QFileInfo(file).suffix() == QStringLiteral("ohmkin") ? QString() : file;  // the window opens those
}

}  // namespace

void JobsPage::write(Kind kind, const QString& what, Write work) {
  ++writing_;
  busy_->setRunning(true);
  desk_->tell({}, false);
  thread_.tell([this, kind, what,
                work = std::move(work)](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    const auto refused = [this, kind](const Refusal& why) {
      return [this, kind, sentence = desk::refusalSentence(why)] { refuse(kind, sentence); };
    };
    try {
      auto catalogue = catalog::Catalogue::open(open.catalogue.file(), catalog::Access::readWrite);
      const auto id = work(catalogue, workflow::personLoggedIn());
      if (!id) return refused(id.error());
      return [this, kind, what, done = Done{*id, catalog::steps(catalogue, *id).undo}] { written(kind, what, done); };
    } catch (const catalog::CatalogueError& error) {
      return refused(error.refusal());
    }
  });
}

void JobsPage::written(Kind kind, const QString& what, const Done& done) {
  busy_->setRunning(--writing_ > 0);
  desk_->open(nullptr);
  wanted_ = done.id;
  if (kind == Kind::step && done.step)
    history().push(
        new JobCommand(what, [this, id = done.id, step = *done.step](bool back) { takeBack(id, step, back); }));
  else if (kind == Kind::newJob)
    history().push(new JobCommand(what, [this, id = done.id](bool back) { takeBackNew(id, back); }));
  else if (kind == Kind::erasing) history().clear();
  if (kind == Kind::erasing) desk_->tell(what, false);
  else if (kind == Kind::there) desk_->tell(tr("Done again: %1.").arg(what), false);
  else if (kind == Kind::back) desk_->tell(tr("Undone: %1.").arg(what), false);
  if (!search_->text().isEmpty() && kind == Kind::newJob) search_->clear();  // loads
  else load();
  if (isVisible() && isActiveWindow()) list_->setFocus(Qt::OtherFocusReason);
}

void JobsPage::refuse(Kind kind, const QString& sentence) {
  busy_->setRunning(--writing_ > 0);
  if (kind == Kind::there || kind == Kind::back) {
    history().clear();  // it no longer says what is in the file
    desk_->tell(sentence, true);
    load();
  } else if (desk_->form() != nullptr) {
    desk_->form()->refuse(sentence);
    desk_->form()->takeKeyboard();
  } else {
    desk_->tell(sentence, true);
  }
}

void JobsPage::takeBack(catalog::JobNumber id, const catalog::JobStep& step, bool back) {
  write(back ? Kind::back : Kind::there, plain(step.what),
        [id, step, back](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
          const auto steps = catalog::steps(catalogue, id);
          if (!same(back ? steps.undo : steps.redo, step))
            return ohmkin::refuse("job-changed", tr("Job %1").arg(id.value).toStdString(),
                                  tr("one that was changed since").toStdString(),
                                  tr("the job as it was left here").toStdString());
          return (back ? catalog::undoJob(catalogue, id, who) : catalog::redoJob(catalogue, id, who))
              .map([id](const auto&) { return id; });
        });
}

void JobsPage::takeBackNew(catalog::JobNumber id, bool back) {
  write(back ? Kind::back : Kind::there, tr("new job"),
        [id, back](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
          return (back ? workflow::deleteJob(catalogue, id, who) : workflow::restoreJob(catalogue, id, who))
              .map([](const auto& job) { return job.id; });
        });
}

void JobsPage::send() {
  Form* form = desk_->form();
  if (form == nullptr || busy()) return;
  form->refuse({});
  if (form == &desk_->fields()) {
    const auto id = desk_->fields().job();
    write(id ? Kind::step : Kind::newJob, id ? tr("edit the job") : tr("new job"),
          [id, said = desk_->fields().fields(), seen = desk_->fields().seenAs()](
              catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
            return (id ? workflow::changeJob(catalogue, *id, said, who, seen) : workflow::openJob(catalogue, said, who))
                .map([](const auto& job) { return job.id; });
          });
    return;
  }
  if (!view_) return;
  const catalog::JobNumber id = view_->job.id;
  if (form == &desk_->noteForm()) {
    write(Kind::step, tr("add a note"),
          [id, note = desk_->noteForm().note()](catalog::Catalogue& catalogue,
                                                const auto& who) -> Expected<catalog::JobNumber> {
            return workflow::addNote(catalogue, id, note, who).map([](const auto& job) { return job.id; });
          });
  } else if (form == &desk_->closeForm()) {
    const auto closing = desk_->closeForm().closing();
    if (!closing) {
      form->refuse(desk::refusalSentence(closing.error()));
      desk_->closeForm().cause().setWrong(true);
      return;
    }
    write(Kind::step, tr("close the job"),
          [id, closing = *closing](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
            return workflow::closeJob(catalogue, id, closing, who).map([](const auto& job) { return job.id; });
          });
  } else if (form == &desk_->eraseForm()) {
    write(Kind::erasing, tr("Job %1 is erased.").arg(id.value),
          [id](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
            return catalog::eraseJob(catalogue, id, who).map([](const auto& erased) { return erased.id; });
          });
  }
}

void JobsPage::closeOrOpen() {
  if (view_->job.said.state == catalog::JobState::open) {
    desk_->closeForm().begin(*view_);
    desk_->open(&desk_->closeForm());
    return;
  }
  write(Kind::step, tr("open the job again"),
        [id = view_->job.id](catalog::Catalogue& catalogue, const auto& who) -> Expected<catalog::JobNumber> {
          return workflow::reopenJob(catalogue, id, who).map([](const auto& job) { return job.id; });
        });
}

void JobsPage::attach(const QString& file) {
  if (!view_) return;
  write(Kind::step, tr("attach a file"),
        [id = view_->job.id, path = file.toStdString()](catalog::Catalogue& catalogue,
                                                        const auto& who) -> Expected<catalog::JobNumber> {
          return workflow::attachFile(catalogue, id, path, {}, who).map([id](const auto&) { return id; });
        });
}

void JobsPage::dragEnterEvent(QDragEnterEvent* event) {
  if (view_ && !localFile(*event->mimeData()).isEmpty()) event->acceptProposedAction();
  else event->ignore();
}

void JobsPage::dropEvent(QDropEvent* event) {
  const QString file = localFile(*event->mimeData());
  if (!view_ || file.isEmpty()) {
    event->ignore();
    return;
  }
  event->acceptProposedAction();
  attach(file);
}

}  // namespace ohmkin::jobs
