#include <app/backup_sheet.h>
#include <app/backup_words.h>
#include <app/catalogue_files.h>
#include <catalog/catalogue_error.h>
#include <desk/catalogue_thread.h>
#include <QDir>
#include <QFileInfo>

/// What the sheet does to files, on its own thread.
namespace ohmkin::app {

void BackupSheet::askBack(int row) {
  const workflow::BackupState* one = at(row);
  if (working_ || one == nullptr) return;
  list_->setCurrentIndex(rows_->index(row, 0));
  if (one->fault) return;
  const catalog::Backup backup = one->backup;
  wanted_ = backup;
  worker_.ask(asking, [this, backup, file = std::filesystem::path(file_.toStdString())](const auto&) {
    return [this, backup, apart = workflow::apart(file, backup)] {
      if (!wanted_ || wanted_->file != backup.file) return;
      QStringList words{whatGoingBackDoes(backup, apart)};
      if (apart || apart.error().code != "catalogue-missing")
        words << tr("As it is now it is kept as a backup first, so that this can be undone.");
      if (const QStringList typed = unsaved_(); !typed.isEmpty())
        words << tr("Not saved yet, and given up: %1.").arg(typed.join(QStringLiteral("; ")));
      questionWords_->setText(words.join(QLatin1Char(' ')));
      tell({}, false);
      question_->show();
      goBack_->setFocus(Qt::OtherFocusReason);
    };
  });
}

void BackupSheet::giveUp() {
  const bool had = question_->isVisible();
  wanted_.reset();
  worker_.drop(asking);
  question_->hide();
  if (had) list_->setFocus(Qt::OtherFocusReason);
}

void BackupSheet::beginWork() {
  working_ = true;
  worker_.drop(checking);
  showState();
  busy_->setRunning(true);
}

void BackupSheet::work(desk::Worker::Task task) {
  beginWork();
  worker_.tell([this, task = std::move(task)](const std::stop_token& stop) -> desk::Worker::Then {
    const auto over = [this](const desk::Worker::Then& then) {
      working_ = false;
      then();
      showState();
      load();
    };
    try {
      return [over, then = task(stop)] { over(then); };
    } catch (const catalog::CatalogueError& error) {
      return [this, over, refusal = error.refusal()] {
        over([this, refusal] { tell(desk::refusalSentence(refusal), true); });
      };
    }
  });
}

void BackupSheet::makeOne() {
  if (working_) return;
  giveUp();
  tell({}, false);
  work([this, file = std::filesystem::path(file_.toStdString())](const auto&) -> desk::Worker::Then {
    const auto made = catalog::backUp(catalog::Catalogue::openToRead(file));
    return [this, made] { tell(tr("Backup made: %1, %2.").arg(whenTaken(made), sizeOf(made)), false); };
  });
}

void BackupSheet::goBack() {
  if (working_ || !wanted_) return;
  going_ = *wanted_;
  giveUp();
  beginWork();
  tell(tr("Going back …"), false);
  emit closeAsked();
}

void BackupSheet::filesClosed() {
  work([this, backup = going_, file = std::filesystem::path(file_.toStdString())](const auto&) -> desk::Worker::Then {
    // Whatever became of it, the pages open what is there now.
    try {
      const auto restored = catalog::restore(file, backup);
      return [this, restored] {
        kept_ = restored.kept;
        tell(whatWasPutBack(restored), false);
        emit openAsked(file_);
      };
    } catch (const catalog::CatalogueError& error) {
      return [this, refusal = error.refusal()] {
        tell(tr("Not gone back. %1").arg(desk::refusalSentence(refusal)), true);
        emit openAsked(file_);
      };
    }
  });
}

void BackupSheet::askSalvage() {
  if (working_) return;
  const QFileInfo damaged(file_);
  const QString file =
      askForNewCatalogue(this, tr("Where to save what still reads"),
                         damaged.dir().filePath(tr("%1-saved.ohmkin").arg(damaged.completeBaseName())));
  if (!file.isEmpty()) salvageInto(file);
}

void BackupSheet::salvageInto(const QString& file) {
  if (working_) return;
  giveUp();
  tell(tr("What still reads is being saved …"), false);
  work([this, file, damaged = std::filesystem::path(file_.toStdString())](const auto&) -> desk::Worker::Then {
    const auto salvaged = catalog::salvage(damaged, std::filesystem::path(file.toStdString()));
    return [this, file, salvaged] {
      saved_ = file;
      tell(tr("Saved as %1.").arg(QFileInfo(file).fileName()) + QLatin1Char(' ') +
               whatWasSaved(salvaged).join(QLatin1Char('\n')),
           false);
      openSaved_->show();
      openSaved_->setFocus(Qt::OtherFocusReason);
    };
  });
}

}  // namespace ohmkin::app
