#pragma once
#include <QWidget>
#include <optional>
#include <vector>

/// Indicated minus true over the temperature, with the band of k = 2. Values are in the person's units already.
namespace ohmkin::parts {

struct PlotPoint {
  double at = 0;
  double error = 0;
  double uncertainty = 0;  ///< expanded; half the band's height
};

/// Where 95 % of the draws lie, found another way than the band.
struct PlotInterval {
  double at = 0;
  double low = 0;
  double high = 0;
};

struct PlotSeries {
  QString name;
  std::vector<PlotPoint> points;  ///< by rising temperature
  bool now = false;               ///< the one in the head now: dashed, no band
  bool misreads = false;
  std::vector<PlotInterval> drawn;  ///< by rising temperature; a thin outline over the band
};

struct PlotPicture {
  std::vector<PlotSeries> series;
  double from = 0;  ///< ends of the temperature axis
  double to = 0;
  double bandFrom = 0;  ///< where people look
  double bandTo = 0;
  std::optional<double> hotMark;
  QString temperatureUnit;  ///< "°C"
  QString errorUnit;        ///< "K"
  QString bandName;         ///< "where people look"
  QString summary;          ///< the same in words, for those who do not see it
};

struct Ticks {
  double first = 0;
  double step = 1;
  double last = 0;
};
/// Round steps (1, 2 or 5 of a power of ten) that cover low … high in about `count`.
Ticks ticksOver(double low, double high, int count);

class ErrorPlot : public QWidget {
  Q_OBJECT

 public:
  explicit ErrorPlot(QWidget* parent = nullptr);
  void display(const PlotPicture& picture);
  /// The outline of the first series; empty: none.
  void outline(std::vector<PlotInterval> drawn);
  void setCursor(std::optional<double> temperature);
  [[nodiscard]] const PlotPicture& picture() const { return picture_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  /// The error axis of what is shown: zero is always on it, and at least two units either way.
  [[nodiscard]] Ticks errorTicks(int count) const;

 signals:
  void pointed(double temperature);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  [[nodiscard]] QRectF canvas() const;
  void point(const QPointF& at);
  PlotPicture picture_;
  std::optional<double> cursor_;
};

}  // namespace ohmkin::parts
