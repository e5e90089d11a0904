#pragma once
#include <QCompleter>
#include <QLineEdit>
#include <QStandardItemModel>
#include <vector>

/// The one text box: year, line, option, casting in any order, with completion of the last word.
namespace ohmkin::parts {

struct CompletionWords {
  QString insert;
  int from = 0;  ///< where in the text (UTF-16) the word it replaces begins
  QString kind;
  QString note;
};

class QueryBox : public QWidget {
  Q_OBJECT

 public:
  explicit QueryBox(QWidget* parent = nullptr);
  [[nodiscard]] QString text() const { return edit_->text(); }
  void setText(const QString& text);  ///< nothing is offered for a text that the program put here
  void takeFocus();
  /// Ways to go on, for exactly this text; ignored when the person has typed on since.
  void offer(const QString& forText, const std::vector<CompletionWords>& ways);
  [[nodiscard]] bool offering() const;
  [[nodiscard]] QLineEdit* edit() const { return edit_; }

 signals:
  void asked(const QString& text);  ///< on every change
  void left();                      ///< Enter or Down with nothing offered: on to the senders

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void take(const QModelIndex& index);
  QLineEdit* edit_;
  QStandardItemModel* ways_;
  QCompleter* completer_;
  QString settled_;  ///< text put here by the program: nothing is offered for it
};

}  // namespace ohmkin::parts
