#pragma once
#include <exchange/reading_proposal.h>
#include <parts/panel.h>
#include <QPushButton>

namespace ohmkin::measure {

/// What a file leaves open, each question with its answers as buttons; the first is the one that was taken.
class OpenQuestions : public parts::Panel {
  Q_OBJECT

 public:
  explicit OpenQuestions(QWidget* parent = nullptr);
  void display(const std::vector<exchange::PlanQuestion>& questions);  ///< hides itself where there are none
  [[nodiscard]] const std::vector<QPushButton*>& answers() const { return answers_; }

 signals:
  void answered(const QString& line);  ///< for exchange::parsePlan

 private:
  std::vector<QPushButton*> answers_;
};

}  // namespace ohmkin::measure
