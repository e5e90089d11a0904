#include <desk/catalogue_thread.h>
#include <measure/curve_picture.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::measure {
namespace {

using desk::plain;

constexpr int kSteps = 60;
constexpr double kExpanded = 2;     // k
constexpr double kPossible = 0.01;  // a family less likely is not drawn, nor named alone
constexpr std::size_t kMostNamed = 5;
constexpr double kWorthSaying = 0.015;  // of ohms

QString tr(const char* text) { return CurvePlot::tr(text); }

struct Axis {
  TemperatureSpan span;
  TemperatureUnit unit;
  [[nodiscard]] double of(Temperature t) const { return inUnit(t, unit); }
};

/// From ice to boiling water and wherever a reading lies beyond.
TemperatureSpan spanOf(const Pictured& pictured) {
  double low = 0;
  double high = 120;
  for (const curve::Sample& sample : pictured.samples) {
    low = std::min(low, inCelsius(sample.at) - 5);
    high = std::max(high, inCelsius(sample.at) + 5);
  }
  return {celsius(low), celsius(high)};
}

std::vector<PlottedPoint> along(const curve::Curve& curve, TemperatureSpan span, const Axis& axis,
                                const curve::Fit* fit) {
  std::vector<PlottedPoint> points;
  const double from = inKelvin(std::max(span.low, axis.span.low));
  const double to = inKelvin(std::min(span.high, axis.span.high));
  for (int i = 0; i <= kSteps && to > from; ++i) {
    const Temperature t = kelvin(from + (to - from) * i / kSteps);
    const auto r = curve.resistance(t);
    if (!r) continue;
    PlottedPoint point{axis.of(t), inOhms(*r), 0, 0};
    if (fit != nullptr) {
      if (const auto band = fit->band(t)) {
        point.low = inOhms(band->low);
        point.high = inOhms(band->high);
      }
    }
    points.push_back(point);
  }
  return points;
}

/// Where the curve was not measured it is drawn on all the same, dashed, wherever it can be.
std::vector<std::vector<PlottedPoint>> beyond(const curve::Curve& curve, const Axis& axis) {
  std::vector<std::vector<PlottedPoint>> parts;
  const TemperatureSpan known = curve.established();
  for (const TemperatureSpan& side :
       {TemperatureSpan{axis.span.low, known.low}, TemperatureSpan{known.high, axis.span.high}}) {
    if (!(side.low < side.high)) continue;
    const auto wider = curve.extendedTo({std::min(side.low, known.low), std::max(side.high, known.high)});
    if (wider) parts.push_back(along(*wider, side, axis, nullptr));
  }
  return parts;
}

std::vector<PlottedFamily> familiesOf(const workflow::BenchFamilies& families, const Pictured& pictured,
                                      const Axis& axis) {
  std::vector<PlottedFamily> drawn;
  const auto add = [&](std::size_t family, bool likeliest) {
    const bench::FamilyCurve& each = families.curves[family];
    drawn.push_back({plain(each.name), along(each.curve, each.curve.valid(), axis, nullptr), pictured.claimed == family,
                     likeliest});
  };
  if (pictured.whose == nullptr) {
    for (std::size_t i = 0; i < families.curves.size(); ++i) add(i, false);
    return drawn;
  }
  bool first = true;
  for (const bench::Suspect& suspect : pictured.whose->suspects) {
    const bool possible = suspect.probability >= kPossible && drawn.size() < kMostNamed;
    if (possible || pictured.claimed == suspect.family || first)
      add(suspect.family, first && suspect.probability > pictured.whose->none);
    first = false;
  }
  return drawn;
}

QString summaryOf(const CurvePicture& picture, const Pictured& pictured, const DisplayUnits& units) {
  QStringList words{CurvePlot::tr("%n reading(s)", nullptr, static_cast<int>(picture.readings.size()))};
  if (pictured.fit != nullptr) {
    const TemperatureSpan known = pictured.fit->curve.established();
    words
        << tr("a curve established from %1 to %2").arg(plain(print(known.low, units)), plain(print(known.high, units)));
  }
  QStringList names;
  for (const PlottedFamily& family : picture.families) names << family.name;
  if (!names.isEmpty()) words << tr("families drawn: %1").arg(names.join(QStringLiteral(", ")));
  return words.join(QStringLiteral("; ")) + QLatin1Char('.');
}

}  // namespace

CurvePicture pictureOf(const workflow::BenchFamilies& families, const Pictured& pictured, const DisplayUnits& units) {
  const Axis axis{spanOf(pictured), units.temperature};
  CurvePicture picture;
  picture.from = axis.of(axis.span.low);
  picture.to = axis.of(axis.span.high);
  picture.unit = units.temperature == TemperatureUnit::celsius ? QStringLiteral("°C") : QStringLiteral("°F");
  for (std::size_t i = 0; i < pictured.samples.size(); ++i) {
    const curve::Sample& sample = pictured.samples[i];
    const auto thisOne = [i](const curve::Outlier& outlier) { return outlier.index == i; };
    picture.readings.push_back(
        {axis.of(sample.at), inOhms(sample.ohms), kExpanded * inUnit(kelvins(sample.uKelvin), units.temperature),
         kExpanded * sample.uLnOhms,
         pictured.fit != nullptr && std::any_of(pictured.fit->outliers.begin(), pictured.fit->outliers.end(), thisOne),
         sample.direction == curve::Direction::cooling});
  }
  if (pictured.fit != nullptr) {
    picture.curve = along(pictured.fit->curve, pictured.fit->curve.established(), axis, pictured.fit);
    picture.beyond = beyond(pictured.fit->curve, axis);
  }
  picture.families = familiesOf(families, pictured, axis);
  if (pictured.next) picture.next = axis.of(*pictured.next);
  picture.summary = summaryOf(picture, pictured, units);
  return picture;
}

std::vector<SuspectRow> suspectsOf(const workflow::BenchFamilies& families, const bench::Identification& whose,
                                   std::optional<std::size_t> claimed) {
  std::vector<SuspectRow> rows;
  double gathered = 0;
  int others = 0;
  for (const bench::Suspect& suspect : whose.suspects) {
    const bool isClaimed = claimed == suspect.family;
    if ((suspect.probability < kPossible || rows.size() >= kMostNamed) && !isClaimed) {
      gathered += suspect.probability;
      ++others;
      continue;
    }
    QStringList aside;
    if (isClaimed) aside << SuspectBars::tr("what it claims to be");
    const double percent = 100 * std::expm1(suspect.partScale);
    if (std::abs(suspect.partScale) >= kWorthSaying)
      aside << (percent > 0 ? SuspectBars::tr("this part reads %1 % above it")
                            : SuspectBars::tr("this part reads %1 % below it"))
                   .arg(std::abs(percent), 0, 'f', 0);
    rows.push_back(
        {plain(families.curves[suspect.family].name), aside.join(QStringLiteral(" · ")), suspect.probability, false});
  }
  const SuspectRow none{SuspectBars::tr("none of these"), {}, whose.none, false};
  rows.insert(std::find_if(rows.begin(), rows.end(), [&](const SuspectRow& row) { return row.chance < none.chance; }),
              none);
  if (others > 0)
    rows.push_back(
        {others == 1 ? SuspectBars::tr("another family") : SuspectBars::tr("%1 other families together").arg(others),
         {},
         gathered,
         true});
  return rows;
}

}  // namespace ohmkin::measure
