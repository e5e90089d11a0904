#pragma once
#include <parts/caution_panel.h>
#include <parts/panel.h>
#include <QAbstractButton>
#include <QGridLayout>
#include <QHBoxLayout>
#include <vector>

/// One step of the search, to be understood in five seconds: what to do, where, with what, and what may come of it.
namespace ohmkin::fault {

struct StepFact {
  QString name;   ///< "Where"
  QString words;  ///< "under the hood"
  friend bool operator==(const StepFact&, const StepFact&) = default;
};

struct StepOutcome {
  QString words;
  bool chosen = false;  ///< what was answered before
  friend bool operator==(const StepOutcome&, const StepOutcome&) = default;
};

struct StepWords {
  QString above;  ///< "Next test"
  QString title;  ///< what to do
  std::vector<StepFact> facts;
  QString note;  ///< under the facts: torque, what follows on the same set-up
  QStringList cautions;
  QString question;                   ///< over the outcomes; may be empty
  std::vector<StepOutcome> outcomes;  ///< keys 1 to 9
  QString unsure;                     ///< key 0; empty: none
  friend bool operator==(const StepWords&, const StepWords&) = default;
};

/// A big button with the key that presses it.
class OutcomeButton : public QAbstractButton {
  Q_OBJECT

 public:
  explicit OutcomeButton(QWidget* parent);
  void display(int key, const StepOutcome& outcome, bool quiet);
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;

 private:
  int key_ = 0;
  bool chosen_ = false;
  bool quiet_ = false;
};

class StepCard : public parts::Panel {
  Q_OBJECT

 public:
  explicit StepCard(QWidget* parent = nullptr);
  void display(const StepWords& words);
  [[nodiscard]] const StepWords& words() const { return words_; }
  /// A key of the page: 1 to 9 an outcome, 0 not sure. Nothing happens where there is none.
  void press(int key);
  void takeKeyboard();
  [[nodiscard]] const std::vector<OutcomeButton*>& buttons() const { return buttons_; }

 signals:
  void chosen(int outcome);  ///< counted from 0
  void unsure();

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fillFacts();
  void placeButtons();
  [[nodiscard]] std::size_t count() const { return words_.outcomes.size() + (words_.unsure.isEmpty() ? 0 : 1); }
  StepWords words_;
  parts::Words* above_;
  parts::Words* title_;
  QGridLayout* facts_;
  std::vector<std::pair<parts::Words*, parts::Words*>> factWords_;
  parts::Words* note_;
  parts::CautionPanel* cautions_;
  parts::Words* question_;
  QGridLayout* grid_;
  std::vector<OutcomeButton*> buttons_;  ///< as many as were ever needed
  int columns_ = 0;
};

}  // namespace ohmkin::fault
