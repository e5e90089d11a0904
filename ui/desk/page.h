#pragma once
#include <desk/settings.h>
#include <QKeySequence>
#include <QWidget>
#include <functional>
#include <vector>

/// A page of the window. The rail knows no page by name: a page says its title, its key and how it is made.
namespace ohmkin::desk {

class Page : public QWidget {
  Q_OBJECT

 public:
  using QWidget::QWidget;
  /// Opens this catalogue on the page's own thread; what becomes of it comes back as opened or refused.
  virtual void openCatalogue(const QString& file) = 0;
  /// Nothing to open: says how to get a catalogue.
  virtual void showNoCatalogue() = 0;
  virtual void takeKeyboard() = 0;
  [[nodiscard]] virtual QString asText()
      const = 0;  ///< what is shown, to paste elsewhere; empty where there is nothing
  /// A file was dropped on the window; only pages whose entry says so are given any.
  virtual void takeFile(const QString& /*file*/) {}

 protected:
  /// A key of this page, wherever in it the keyboard is.
  void onKey(const QKeySequence& keys, std::function<void()> what);

 signals:
  void opened(const QString& file);
  void refused(const QString& file, const QString& sentence);
  void openRequested();  ///< the page's own Open… button
  void demoRequested();
};

struct PageEntry {
  QString title;
  QKeySequence shortcut;
  std::function<Page*(Settings& settings, QWidget* parent)> make;
  bool takesFiles = false;  ///< files dropped on the window that are no catalogues
};

}  // namespace ohmkin::desk
