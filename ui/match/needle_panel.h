#pragma once
#include <parts/dial_view.h>
#include <parts/needle_key.h>
#include <parts/panel.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <QSlider>

namespace ohmkin::match {

/// The dial, what its needles say, and the slider that sets the coolant's temperature.
class NeedlePanel : public parts::Panel {
  Q_OBJECT

 public:
  explicit NeedlePanel(QWidget* parent = nullptr);
  /// Keeps the temperature where it was, as long as it is on the slider.
  void display(const workflow::Branch* branch, const workflow::Candidate* candidate, const DisplayUnits& units);
  void setCoolant(Temperature coolant);
  void nudge(int steps);  ///< by so many degrees of the unit in use
  [[nodiscard]] Temperature coolant() const { return coolant_; }
  [[nodiscard]] QSlider* slider() const { return slider_; }
  [[nodiscard]] const parts::DialView& dial() const { return *dial_; }
  [[nodiscard]] QString said() const;  ///< all that stands under the dial

 signals:
  void coolantChanged();

 private:
  void scaleSlider();
  void turnNeedles();
  parts::Words* nothing_;
  parts::DialView* dial_;
  parts::NeedleKey* truth_;
  parts::NeedleKey* shown_;
  parts::NeedleKey* now_;
  QSlider* slider_;
  const workflow::Branch* branch_ = nullptr;
  const workflow::Candidate* candidate_ = nullptr;
  DisplayUnits units_;
  Temperature coolant_ = celsius(95);
};

}  // namespace ohmkin::match
