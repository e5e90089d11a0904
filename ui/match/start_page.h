#pragma once
#include <parts/blank_sheet.h>
#include <QStringList>

namespace ohmkin::match {

/// What stands in the page while there is no answer: what to type, or what went wrong and what to do about it; and
/// questions to try.
class StartPage : public parts::BlankSheet {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);
  void showNoCatalogue(const std::optional<Refusal>& whyNot);  ///< none: nothing was ever opened
  void showOpening(const QString& file);
  void showEmpty();
  /// The question as typed has no answer yet; one sentence says why.
  void showRefused(const QString& sentence);
  void setExamples(const QStringList& examples);
  [[nodiscard]] const std::vector<QPushButton*>& examples() const { return examples_; }

 signals:
  void exampleChosen(const QString& text);

 private:
  void tellExamples(bool wanted);
  QWidget* below_;
  QVBoxLayout* exampleColumn_ = nullptr;
  std::vector<QPushButton*> examples_;
  QWidget* legend_;
  bool wanted_ = false;
};

}  // namespace ohmkin::match
