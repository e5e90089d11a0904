#pragma once
#include <parts/panel.h>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmkin::parts {

/// What stands in a page while there is nothing to show: what to do, or what went wrong.
class BlankSheet : public QWidget {
  Q_OBJECT

 public:
  explicit BlankSheet(QWidget* parent = nullptr);
  void say(const QString& heading, const QString& text, bool openButtons = false);
  /// One thing to try, as a button; empty: none.
  void offer(const QString& example);
  /// More of a page's own, under what is said.
  void addBelow(QWidget* widget);
  [[nodiscard]] QString said() const;
  [[nodiscard]] QPushButton* example() const { return example_; }

 signals:
  void openRequested();
  void demoRequested();
  void exampleTaken();

 private:
  Words* heading_;
  Words* text_;
  QWidget* buttons_;
  QPushButton* example_;
  QVBoxLayout* column_;
};

/// The three states before there is anything to show.
void sayNoCatalogue(BlankSheet& sheet, const QString& whyNot);
void sayOpening(BlankSheet& sheet, const QString& file);

}  // namespace ohmkin::parts
