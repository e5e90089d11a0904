#pragma once
#include <QWidget>
#include <vector>

/// What is known of time, on one axis of years: spans as bars, days as marks, the posterior over them.
namespace ohmkin::castings {

enum class TimeKind { production, reading, stamp, vehicle, clusterChange };

struct TimeMark {
  double from = 0;  ///< years, 1981.64
  double until = 0;
  double weight = 1;  ///< 0 … 1: how probable, for readings
};

struct TimeRow {
  QString name;
  TimeKind kind = TimeKind::production;
  std::vector<TimeMark> marks;
};

/// Probability of each of equal steps of time; drawn over the rows.
struct TimeDensity {
  double from = 0;
  double step = 0;  ///< years
  std::vector<double> probability;
};

struct TimeLinePicture {
  std::vector<TimeRow> rows;
  TimeDensity density;
  QString densityName;  ///< "engine assembled"
  double from = 1900;   ///< ends of the axis
  double to = 2000;
  QString summary;  ///< the same in words, for those who do not see it
};

class TimeLineView : public QWidget {
  Q_OBJECT

 public:
  explicit TimeLineView(QWidget* parent = nullptr);
  void display(const TimeLinePicture& picture);
  [[nodiscard]] const TimeLinePicture& picture() const { return picture_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  /// Where the years lie: the drawing without its names and its axis.
  [[nodiscard]] QRectF canvas() const;
  [[nodiscard]] double xOf(double year) const;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void drawAxis(QPainter& painter) const;
  void drawDensity(QPainter& painter) const;
  void drawRow(QPainter& painter, const TimeRow& row, double top) const;
  TimeLinePicture picture_;
};

}  // namespace ohmkin::castings
