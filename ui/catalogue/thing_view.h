#pragma once
#include <catalogue/thing_words.h>
#include <parts/panel.h>
#include <QScrollArea>
#include <QVBoxLayout>

namespace ohmkin::shelves {

/// Everything that is said about a thing, to be read; what is named in it can be followed.
class ThingView : public QWidget {
  Q_OBJECT

 public:
  explicit ThingView(QWidget* parent = nullptr);
  void display(const ThingShown& thing);
  [[nodiscard]] const ThingShown& thing() const { return thing_; }
  void addAbove(QWidget* widget);
  /// More about the thing, below its facts: the shelf, the changes.
  void addBelow(QWidget* widget);
  void takeKeyboard();  ///< to the first link, or the facts themselves

 signals:
  void followed(const ohmkin::shelves::Ref& ref);

 private:
  void addSection(const SectionShown& section);
  ThingShown thing_;
  QScrollArea* scroll_;
  QWidget* facts_;
  QVBoxLayout* column_;
  QVBoxLayout* below_;
};

}  // namespace ohmkin::shelves
