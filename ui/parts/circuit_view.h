#pragma once
#include <QWidget>

/// A trim network drawn as it is wired: feed, gauge, resistors behind the dash, lead, sender in the head, ground.
namespace ohmkin::parts {

struct Circuit {
  QString series;                 ///< "12 Ω"; empty where there is none
  QString parallel;               ///< from the post (or past the series resistor) to ground
  QString feed;                   ///< from the feed post to the sender post, with a fuse
  bool parallelAtSender = false;  ///< (R ∥ p) + s: the parallel resistor stands on the sender's side of the series one
  QString sender;                 ///< "AM-4107"
  QString words;                  ///< the same said: "(sender ∥ 510 Ω) + 12 Ω"
};

class CircuitView : public QWidget {
  Q_OBJECT

 public:
  explicit CircuitView(QWidget* parent = nullptr);
  void display(const Circuit& circuit);
  [[nodiscard]] const Circuit& circuit() const { return circuit_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Circuit circuit_;
};

}  // namespace ohmkin::parts
