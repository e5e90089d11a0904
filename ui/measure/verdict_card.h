#pragma once
#include <parts/fit.h>
#include <parts/panel.h>

namespace ohmkin::measure {

struct VerdictWords {
  parts::Fit fit = parts::Fit::look;  ///< dot: pass; two strokes: fail; dots: undecided
  QString word;                       ///< "Pass", "Fail", "Undecided"; empty: nothing to say
  QString sentence;
  QString risk;
  friend bool operator==(const VerdictWords&, const VerdictWords&) = default;
};

/// Is it good: shape, word, sentence, and how likely the decision is wrong.
class VerdictCard : public QWidget {
  Q_OBJECT

 public:
  explicit VerdictCard(QWidget* parent = nullptr);
  void display(const VerdictWords& words);
  [[nodiscard]] const VerdictWords& words() const { return words_; }

 private:
  class Mark;
  VerdictWords words_;
  Mark* mark_;
  parts::Words* word_;
  parts::Words* sentence_;
  parts::Words* risk_;
};

}  // namespace ohmkin::measure
