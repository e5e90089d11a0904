#pragma once
#include <app/overlay.h>
#include <desk/worker.h>
#include <parts/busy_line.h>
#include <parts/cell_view.h>
#include <workflow/backup.h>
#include <QHBoxLayout>
#include <QPushButton>
#include <QStandardItemModel>
#include <QVBoxLayout>

namespace ohmkin::app {

/// The backups of a catalogue: made, checked, gone back to; and what still reads of a damaged one saved.
class BackupSheet : public Overlay {
  Q_OBJECT

 public:
  /// `unsaved`: what was typed on the pages and would go with the catalogue.
  BackupSheet(QWidget& window, std::function<QStringList()> unsaved);
  void offer(const QString& file);
  void makeOne();
  void checkAll();
  void askBack(int row);  ///< says what going back to that one does; goBack() does it
  void goBack();
  void filesClosed();  ///< after closeAsked(): no page has the catalogue open
  void askSalvage();   ///< where to
  void salvageInto(const QString& file);

  [[nodiscard]] parts::CellView& list() const { return *list_; }
  [[nodiscard]] const std::vector<workflow::BackupState>& backups() const { return backups_; }
  [[nodiscard]] QString trouble() const { return troubleWords_->isHidden() ? QString() : troubleWords_->text(); }
  [[nodiscard]] QString question() const { return question_->isHidden() ? QString() : questionWords_->text(); }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] QPushButton& goBackButton() const { return *goBack_; }
  [[nodiscard]] QPushButton& undoButton() const { return *undo_; }
  [[nodiscard]] QPushButton& openSavedButton() const { return *openSaved_; }
  [[nodiscard]] bool working() const { return working_; }

 signals:
  void closeAsked();                         ///< every page is to let go of the catalogue; filesClosed() goes on
  void openAsked(const QString& file);       ///< again, after another file took its place
  void savedOpenAsked(const QString& file);  ///< the file that salvage made

 protected:
  [[nodiscard]] QRect place(const QSize& window) const override;
  [[nodiscard]] bool mayVanish() const override { return !working_; }
  void hideEvent(QHideEvent* event) override;

 private:
  enum Column { when, why, size, state };
  enum Lane { listing, checking, asking };
  QLayout* makeHead();
  QWidget* makeTrouble();
  QWidget* makeQuestion();
  QLayout* makeFoot();
  void wire();
  void load();
  void display(std::vector<workflow::BackupState> backups, const std::optional<Refusal>& whyNot);
  void displayState(int row);
  void chosen();
  void checkNext();
  void beginWork();                    ///< the sheet waits
  void work(desk::Worker::Task task);  ///< a change: the sheet waits for it
  void tell(const QString& sentence, bool refused);
  void giveUp();
  void showState();
  [[nodiscard]] int rowOf(const std::filesystem::path& file) const;
  [[nodiscard]] const workflow::BackupState* at(int row) const;  ///< null: no such row

  std::function<QStringList()> unsaved_;
  QString file_;
  std::vector<workflow::BackupState> backups_;
  std::vector<bool> looked_;  ///< of each: whether it was checked
  bool checks_ = false;
  std::optional<catalog::Backup> wanted_;  ///< asked about
  catalog::Backup going_;                  ///< being gone back to
  std::filesystem::path kept_;             ///< what was there before going back
  QString saved_;                          ///< what salvage made
  bool working_ = false;

  parts::Words* title_ = nullptr;
  parts::Words* where_ = nullptr;
  QWidget* trouble_ = nullptr;
  parts::Words* troubleWords_ = nullptr;
  QPushButton* salvage_ = nullptr;
  parts::BusyLine* busy_;
  parts::Words* none_;
  parts::CellView* list_;
  QStandardItemModel* rows_;
  parts::Words* fault_;  ///< of the one chosen
  QWidget* question_ = nullptr;
  parts::Words* questionWords_ = nullptr;
  QPushButton* goBack_ = nullptr;
  QWidget* outcome_ = nullptr;
  parts::Words* told_ = nullptr;
  QPushButton* undo_ = nullptr;
  QPushButton* openSaved_ = nullptr;
  QPushButton* choose_ = nullptr;
  QPushButton* make_ = nullptr;
  QPushButton* check_ = nullptr;
  QPushButton* close_ = nullptr;
  desk::Worker worker_;  // last: it is waited for before the rest goes
};

}  // namespace ohmkin::app
