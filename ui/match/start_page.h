#pragma once
#include <parts/panel.h>
#include <QPushButton>
#include <QStringList>
#include <QVBoxLayout>

namespace ohmkin::match {

/// What stands in the page while there is no answer: what to type, or what went wrong and what to do about it.
class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);
  void showNoCatalogue(const QString& sentence);  ///< empty: none was ever opened
  void showOpening(const QString& file);
  void showEmpty();
  /// The question as typed has no answer yet; one sentence says why.
  void showRefused(const QString& sentence);
  void setExamples(const QStringList& examples);
  [[nodiscard]] QString said() const;
  [[nodiscard]] const std::vector<QPushButton*>& examples() const { return examples_; }

 signals:
  void exampleChosen(const QString& text);
  void openRequested();
  void demoRequested();

 private:
  void say(const QString& heading, const QString& text, bool buttons, bool examples);
  void tellExamples();
  parts::Words* heading_;
  parts::Words* text_;
  QWidget* buttons_;
  parts::Words* exampleHeading_;
  QVBoxLayout* exampleColumn_;
  std::vector<QPushButton*> examples_;
  QWidget* legend_;
  bool wantsExamples_ = false;
};

}  // namespace ohmkin::match
