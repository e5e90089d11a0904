#pragma once
#include <QWidget>
#include <optional>
#include <vector>

/// Ohms over temperature, ohms on a logarithmic axis: readings with their doubt, the fitted curve with its band where
/// it is established, dashed beyond, and the families as thin lines. Temperatures are in the person's unit already.
namespace ohmkin::measure {

struct PlottedReading {
  double at = 0;
  double ohms = 0;
  double uAt = 0;  ///< expanded (k = 2), as are the next
  double uLn = 0;
  bool outlier = false;
  bool cooling = false;
};

struct PlottedPoint {
  double at = 0;
  double ohms = 0;
  double low = 0;  ///< of the band; both 0: none known
  double high = 0;
};

struct PlottedFamily {
  QString name;
  std::vector<PlottedPoint> points;  ///< by rising temperature; no band
  bool claimed = false;
  bool likeliest = false;
};

struct CurvePicture {
  std::vector<PlottedReading> readings;
  std::vector<PlottedPoint> curve;                ///< established
  std::vector<std::vector<PlottedPoint>> beyond;  ///< on either side of it
  std::vector<PlottedFamily> families;
  std::optional<double> next;  ///< temperature to measure next
  double from = 0;             ///< ends of the temperature axis
  double to = 100;
  QString unit;     ///< "°C"
  QString summary;  ///< the same in words, for those who do not see it
};

class CurvePlot : public QWidget {
  Q_OBJECT

 public:
  explicit CurvePlot(QWidget* parent = nullptr);
  void display(const CurvePicture& picture);
  [[nodiscard]] const CurvePicture& picture() const { return picture_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  /// Ends of the ohms axis: what is measured and the families near it.
  [[nodiscard]] std::pair<double, double> ohmsAxis() const;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Map;
  [[nodiscard]] QRectF canvas() const;
  void drawAxes(QPainter& painter, const Map& map) const;
  void drawFamilies(QPainter& painter, const Map& map) const;
  void drawNames(QPainter& painter, const Map& map) const;
  [[nodiscard]] static bool crosses(const Map& map, const std::vector<PlottedPoint>& points, const QRectF& box);
  [[nodiscard]] std::optional<QRectF> placeName(const Map& map, const PlottedFamily& family, const QSizeF& size,
                                                const std::vector<QRectF>& taken, bool clear) const;
  void drawCurve(QPainter& painter, const Map& map) const;
  void drawReadings(QPainter& painter, const Map& map) const;
  CurvePicture picture_;
};

/// 1, 2 and 5 of every power of ten from low to high; with too few of them to read, more.
std::vector<double> ohmTicks(double low, double high);

}  // namespace ohmkin::measure
