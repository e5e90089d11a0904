#pragma once
#include <QWidget>
#include <optional>
#include <vector>

/// The dial as it is in the dash, and its needles. Angles in degrees, clockwise from straight up.
namespace ohmkin::parts {

struct DialMark {
  enum class Kind { tick, numbered, cold, normalLow, normalHigh, hot };
  double degrees = 0;
  QString text;
  Kind kind = Kind::tick;
};

struct DialPicture {
  std::vector<DialMark> marks;
  double lowStop = 0;
  double highStop = 0;
  QString note;  ///< in a corner: what its figures mean, where that is not what the person reads elsewhere
  std::optional<double> truth;  ///< where the needle would stand if it told the truth
  std::optional<double> shown;  ///< with the chosen sender
  std::optional<double> now;    ///< with the one in the head now
  bool misreads = false;        ///< the chosen sender's needle is one to be warned of
  bool nowMisreads = false;     ///< and that of the one in the head
};

/// The three needles differ in stroke as well as in colour; the key under the dial draws them the same way.
enum class Needle { truth, shown, now };
void drawNeedle(QPainter& painter, const QPointF& from, const QPointF& to, Needle needle, bool misreads);

class DialView : public QWidget {
  Q_OBJECT

 public:
  explicit DialView(QWidget* parent = nullptr);
  void display(const DialPicture& picture);
  /// Leaves the dial itself as it is.
  void setNeedles(const DialPicture& needles);
  [[nodiscard]] const DialPicture& picture() const { return picture_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

  /// Where everything falls in a rectangle; a mark's label that would touch another one is left out, the ends last.
  struct Placed {
    QPointF pivot;
    double radius = 0;
    std::vector<std::pair<std::size_t, QRectF>> labels;  ///< index of the mark, box of its text
  };
  [[nodiscard]] Placed placed(const QRectF& box) const;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  DialPicture picture_;
};

}  // namespace ohmkin::parts
