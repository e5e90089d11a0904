#pragma once
#include <app/action_list.h>
#include <app/backup_sheet.h>
#include <app/key_sheet.h>
#include <app/rail.h>
#include <desk/page.h>
#include <desk/settings.h>
#include <QMenu>
#include <QMessageBox>
#include <QStackedWidget>
#include <QTimer>
#include <QUndoGroup>

namespace ohmkin::app {

/// The window: the rail, the pages, and what can be done on all of them.
class Window : public QWidget {
  Q_OBJECT

 public:
  explicit Window(desk::Settings& settings, QWidget* parent = nullptr);
  /// Asks first where something is typed on a page that would go with the catalogue open now.
  void openCatalogue(const QString& file);
  /// A catalogue is opened; any other file goes to the page that takes files.
  void takeFile(const QString& file);
  /// The catalogue used last, or what to do where there is none.
  void openLast();
  [[nodiscard]] desk::Page& page() const;
  [[nodiscard]] QMenu& menu() const { return *menu_; }
  /// All that can be done now: on the page, by going elsewhere, and on the window.
  [[nodiscard]] std::vector<Offered> offered() const;
  [[nodiscard]] ActionList& actionList() const { return *list_; }
  [[nodiscard]] KeySheet& keySheet() const { return *keys_; }
  [[nodiscard]] BackupSheet& backupSheet() const { return *backups_; }
  /// What is typed on the pages and would go with the catalogue: "Jobs: a new job".
  [[nodiscard]] QStringList unsaved() const;

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QAction* act(const QString& words, const QKeySequence& keys, std::function<void()> what);
  void addPages();
  void fillMenu();
  void fillRecent();
  void addChoices();
  void addLanguages();
  void addUndo();
  desk::Page& makePage(std::size_t index);
  void choosePage(int index);
  void openNow(const QString& file);
  void whenNothingIsLost(const QString& order, const std::function<void()>& then);
  void showBackups();
  void wireBackups();
  void tellMissedBackups();
  void goOnWith(const QString& schema, const QString& document);
  void chooseCatalogue();
  void makeDemo();
  void copyAnswer() const;
  void popMenu();
  void showAbout();
  void keepLayout(const desk::Page& page);

  desk::Settings& settings_;
  QMenu* menu_;
  QMenu* recent_;
  Rail* rail_;
  RailButton* more_;
  RailButton* units_;
  QStackedWidget* stack_;
  QUndoGroup histories_;
  ActionList* list_;
  KeySheet* keys_;
  BackupSheet* backups_;
  std::vector<QAction*> goes_;     ///< to the pages
  std::vector<desk::Page*> made_;  ///< by entry; null until first shown
  QString file_;
  QTimer missedAsked_;
  bool exchanging_ = false;  ///< the catalogue for a backup of it: no page opens it meanwhile
  bool leaving_ = false;     ///< and whatever is typed is given up
};

/// One sentence of the window's own, that goes when it is closed.
QMessageBox* messageBox(QWidget* parent, const QString& text);

/// Puts the tone chosen into effect; `desktop` is the palette the desktop gave the program at its start.
void applyTone(desk::ToneChoice choice, const QPalette& desktop);

}  // namespace ohmkin::app
