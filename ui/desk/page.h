#pragma once
#include <desk/file_thread.h>
#include <desk/settings.h>
#include <QAction>
#include <QKeySequence>
#include <QUndoStack>
#include <QWidget>
#include <functional>
#include <vector>

/// A page of the window. The rail knows no page by name: a page says its title, its key and how it is made.
namespace ohmkin::desk {

class Page : public QWidget {
  Q_OBJECT

 public:
  explicit Page(QWidget* parent = nullptr);
  /// Opens this catalogue on the page's own thread; what becomes of it comes back as opened or refused.
  virtual void openCatalogue(const QString& file) = 0;
  /// Closes the catalogue here, once what was told of it is done, because another file takes its place; `then` is
  /// called when it is closed. openCatalogue() follows.
  virtual void letGo(const std::function<void()>& then) = 0;
  /// What was typed here and would go with the catalogue, in words: "sender BR-2215, being edited"; empty: nothing.
  [[nodiscard]] virtual QString unsaved() const { return {}; }
  /// Nothing to open: says how to get a catalogue.
  virtual void showNoCatalogue() = 0;
  virtual void takeKeyboard() = 0;
  [[nodiscard]] virtual QString asText()
      const = 0;  ///< what is shown, to paste elsewhere; empty where there is nothing
  /// A file was dropped on the window; only pages whose entry says so are given any.
  virtual void takeFile(const QString& /*file*/) {}

  /// What can be taken back and done again. A page that changes rows or text pushes commands on it (or text snapshots,
  /// see desk/snapshot.h) and the window's Undo and Redo, with the command's text, are done. A page that keeps its
  /// history elsewhere overrides this with a stack of its own making.
  [[nodiscard]] virtual QUndoStack& history() { return history_; }

  /// How the page is laid out, to be found so tomorrow. Every QSplitter and every header of a view that has an
  /// objectName is kept; a page that has more to keep overrides both and calls these for the rest.
  [[nodiscard]] virtual QVariantMap layoutState() const;
  virtual void restoreLayout(const QVariantMap& state);
  /// Goes on with work of the schema its entry names. A document that cannot be read is refused in words on the page.
  virtual void goOnWith(const QString& /*document*/) {}

 protected:
  /// Something that can be done here: the key, the list of actions, the sheet of keys and tooltips all know it from
  /// this one place (QWidget::actions() of the page). `name` comes through tr() and reads as an order: "Print the
  /// sheet". Without keys it stands in the list only. `group` is its heading on the sheet of keys; none means the
  /// page's title. Disable the action handed back where it cannot be done now.
  QAction* offer(const QString& name, const QKeySequence& keys, std::function<void()> what, const QString& group = {});

 signals:
  void opened(const QString& file);
  void refused(const QString& file, const QString& sentence);
  void openRequested();  ///< the page's own Open… button
  void demoRequested();
  void copiesRequested();   ///< the list of the catalogue's copies
  void salvageRequested();  ///< to save what still reads of it
  /// Work that was kept elsewhere, to be gone on with by the page whose entry names its schema.
  void goOnRequested(const QString& schema, const QString& document);

 private:
  QUndoStack history_;
};

/// All of them; `then` once the last is closed.
void letGo(const std::vector<FileThread*>& threads, const std::function<void()>& then);

/// The heading under which an action was offered.
QString groupOf(const QAction& action);
/// "Print the sheet (Ctrl+P)": what a button that does the same says of itself.
QString tipOf(const QAction& action);

struct PageEntry {
  QString title;
  QKeySequence shortcut;
  std::function<Page*(Settings& settings, QWidget* parent)> make;
  bool takesFiles = false;  ///< files dropped on the window that are no catalogues
  QString goesOnWith = {};  ///< schema of the documents it goes on with, "ohmkin.fault-session"; empty: none
};

}  // namespace ohmkin::desk
