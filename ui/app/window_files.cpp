#include <app/catalogue_files.h>
#include <app/demo_catalogue.h>
#include <app/pages.h>
#include <app/window.h>
#include <desk/catalogue_thread.h>
#include <workflow/missed_backup.h>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QMimeData>
#include <QPushButton>
#include <QStandardPaths>
#include <algorithm>

/// The window's file: opened, dropped on it, made, exchanged for a backup of it.
namespace ohmkin::app {
namespace {

constexpr int kMissedMilliseconds = 2000;

}  // namespace

void Window::openCatalogue(const QString& file) {
  if (exchanging_) return;
  whenNothingIsLost(
      tr("&Give it up and open %1").arg(QFileInfo(file).fileName().replace(QLatin1Char('&'), QStringLiteral("&&"))),
      [this, file] { openNow(file); });
}

void Window::openNow(const QString& file) {
  file_ = file;
  for (desk::Page* each : made_)
    if (each != nullptr) each->openCatalogue(file);
}

QStringList Window::unsaved() const {
  QStringList all;
  for (std::size_t i = 0; i < made_.size(); ++i)
    if (made_[i] != nullptr)
      if (const QString words = made_[i]->unsaved(); !words.isEmpty())
        all << tr("%1: %2").arg(pages().at(i).title, words);
  return all;
}

/// At once where nothing is typed; else a person says whether it is given up.
void Window::whenNothingIsLost(const QString& order, const std::function<void()>& then) {
  const QStringList typed = unsaved();
  if (typed.isEmpty()) {
    then();
    return;
  }
  QMessageBox* question =
      messageBox(this, tr("Not saved yet:") + QStringLiteral("\n\n") + typed.join(QLatin1Char('\n')));
  question->setStandardButtons(QMessageBox::NoButton);
  QPushButton* back = question->addButton(tr("Go &back to it"), QMessageBox::RejectRole);
  QPushButton* giveUp = question->addButton(order, QMessageBox::DestructiveRole);
  question->setDefaultButton(back);
  question->setEscapeButton(back);
  connect(giveUp, &QPushButton::clicked, this, [then] { then(); });
  connect(back, &QPushButton::clicked, this, [this] {
    const auto typedOn = std::find_if(made_.begin(), made_.end(),
                                      [](const auto* each) { return each != nullptr && !each->unsaved().isEmpty(); });
    if (typedOn == made_.end()) return;
    rail_->choose(static_cast<int>(typedOn - made_.begin()));
    page().takeKeyboard();
  });
  question->open();
}

void Window::takeFile(const QString& file) {
  if (QFileInfo(file).suffix() == QStringLiteral("ohmkin")) {
    openCatalogue(file);
    return;
  }
  const auto takes = std::find_if(pages().begin(), pages().end(), [](const auto& entry) { return entry.takesFiles; });
  if (takes == pages().end()) return;
  rail_->choose(static_cast<int>(takes - pages().begin()));
  page().takeFile(file);
}

/// One file at a time: several would be answered one after another, and only the last would be seen.
void Window::dragEnterEvent(QDragEnterEvent* event) {
  const QList<QUrl> urls = event->mimeData()->urls();
  if (urls.size() == 1 && urls.front().isLocalFile()) event->acceptProposedAction();
}

void Window::dropEvent(QDropEvent* event) {
  const QList<QUrl> urls = event->mimeData()->urls();
  if (urls.size() != 1) return;
  event->acceptProposedAction();
  takeFile(urls.front().toLocalFile());
}

void Window::openLast() {
  const QStringList files = settings_.recent();
  if (files.isEmpty()) page().showNoCatalogue();
  else openCatalogue(files.front());
}

void Window::chooseCatalogue() {
  const QString start = file_.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) : file_;
  const QString file = QFileDialog::getOpenFileName(this, tr("Open a catalogue"), start, catalogueFilter());
  if (!file.isEmpty()) openCatalogue(file);
}

void Window::makeDemo() {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  const QString file =
      askForNewCatalogue(this, tr("Where to put the demo catalogue"), folder + QStringLiteral("/demo.ohmkin"));
  if (file.isEmpty()) return;
  writeDemoCatalogue(file, this, [this, file](const QString& whyNot) {
    if (whyNot.isEmpty()) openCatalogue(file);
    else messageBox(this, tr("The demo catalogue was not made. %1").arg(whyNot))->open();
  });
}

void Window::showBackups() {
  if (file_.isEmpty()) messageBox(this, tr("No catalogue is open. Open one first: its backups lie beside it."))->open();
  else backups_->offer(file_);
}

/// Whoever changes the file does it on a thread of its own, so that it is asked now and then.
void Window::tellMissedBackups() {
  for (const Finding& missed : workflow::missedBackups()) {
    QMessageBox* told = messageBox(this, desk::shown(missed.sentence));
    QPushButton* look = told->addButton(tr("&Backups…"), QMessageBox::ActionRole);
    told->setDefaultButton(QMessageBox::Ok);
    told->setEscapeButton(QMessageBox::Ok);
    connect(look, &QPushButton::clicked, this, &Window::showBackups);
    told->open();
  }
}

/// The file is exchanged while nobody has it open: every page lets go of it first, and opens what is there then.
void Window::wireBackups() {
  connect(backups_, &BackupSheet::closeAsked, this, [this] {
    exchanging_ = true;
    std::vector<desk::Page*> open;
    std::copy_if(made_.begin(), made_.end(), std::back_inserter(open),
                 [](const auto* each) { return each != nullptr; });
    const auto closed = desk::lastOf(open.size(), [this] { backups_->filesClosed(); });
    for (desk::Page* each : open) each->letGo(closed);
  });
  connect(backups_, &BackupSheet::openAsked, this, [this](const QString& file) {
    exchanging_ = false;
    openNow(file);
  });
  connect(backups_, &BackupSheet::savedOpenAsked, this, &Window::openCatalogue);
  missedAsked_.setInterval(kMissedMilliseconds);
  connect(&missedAsked_, &QTimer::timeout, this, &Window::tellMissedBackups);
  missedAsked_.start();
}

}  // namespace ohmkin::app
