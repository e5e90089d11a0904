#pragma once
#include <desk/page.h>
#include <finding/refusal.h>
#include <parts/panel.h>
#include <QPushButton>
#include <QVBoxLayout>
#include <optional>

namespace ohmkin::parts {

/// What stands in a page while there is nothing to show: what to do, or what went wrong.
class BlankSheet : public QWidget {
  Q_OBJECT

 public:
  explicit BlankSheet(QWidget* parent = nullptr);
  void say(const QString& heading, const QString& text, bool openButtons = false);
  /// What may help where a catalogue cannot be opened, as buttons before those that open another.
  void offerRescue(bool copies, bool salvage);
  /// One thing to try, as a button; empty: none.
  void offer(const QString& example);
  /// More of a page's own, under what is said.
  void addBelow(QWidget* widget);
  [[nodiscard]] QString said() const;
  [[nodiscard]] QPushButton* example() const { return example_; }
  [[nodiscard]] QPushButton& copies() const { return *copies_; }
  [[nodiscard]] QPushButton& salvage() const { return *salvage_; }

 signals:
  void openRequested();
  void demoRequested();
  void copiesRequested();
  void salvageRequested();
  void exampleTaken();

 private:
  Words* heading_;
  Words* text_;
  QWidget* buttons_;
  QPushButton* copies_;
  QPushButton* salvage_;
  QPushButton* example_;
  QVBoxLayout* column_;
};

/// The three states before there is anything to show: none is open, it cannot be opened, it is being opened.
void sayNoCatalogue(BlankSheet& sheet, const std::optional<Refusal>& whyNot);
void sayOpening(BlankSheet& sheet, const QString& file);
/// What is pressed on the sheet is asked of the window through the page.
void askThrough(desk::Page& page, BlankSheet& sheet);

}  // namespace ohmkin::parts
