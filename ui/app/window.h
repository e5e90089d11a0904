#pragma once
#include <app/rail.h>
#include <desk/page.h>
#include <desk/settings.h>
#include <QMenu>
#include <QStackedWidget>

namespace ohmkin::app {

/// The window: the rail, the pages, and what can be done on all of them.
class Window : public QWidget {
  Q_OBJECT

 public:
  explicit Window(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file);
  /// A catalogue is opened; any other file goes to the page that takes files.
  void takeFile(const QString& file);
  /// The catalogue used last, or what to do where there is none.
  void openLast();
  [[nodiscard]] desk::Page& page() const;
  [[nodiscard]] QMenu& menu() const { return *menu_; }

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  QAction* act(const QString& words, const QKeySequence& keys, std::function<void()> what);
  void fillMenu();
  void fillRecent();
  void addChoices();
  void choosePage(int index);
  void chooseCatalogue();
  void makeDemo();
  void copyAnswer();
  void popMenu();
  void showAbout();

  desk::Settings& settings_;
  QMenu* menu_;
  QMenu* recent_;
  Rail* rail_;
  RailButton* more_;
  RailButton* units_;
  QStackedWidget* stack_;
  std::vector<desk::Page*> made_;  ///< by entry; null until first shown
  QString file_;
};

/// Puts the tone chosen into effect; `desktop` is the palette the desktop gave the program at its start.
void applyTone(desk::ToneChoice choice, const QPalette& desktop);

}  // namespace ohmkin::app
