#include <curve/two_point.h>
#include <fmt/format.h>
#include <array>
#include <cmath>

namespace ohmkin::curve {
namespace {

constexpr double kFallingBow = 13;  // K
constexpr double kRisingBow = 41;   // K

Temperature middle(const TemperatureSpan& span) { return kelvin((inKelvin(span.low) + inKelvin(span.high)) / 2); }

double uniformVariance(double width) { return width * width / 12; }

double reciprocalWidth(const TwoPoint& stated) {
  return 1 / inKelvin(middle(stated.coldAt)) - 1 / inKelvin(middle(stated.hotAt));
}

bool sound(const TemperatureSpan& span) {
  return std::isfinite(inKelvin(span.low)) && std::isfinite(inKelvin(span.high)) && inKelvin(span.low) > 0 &&
         span.low <= span.high;
}

/// First-order propagation (GUM 5.1.2) of the four stated numbers into r0, t0 and b.
Covariance covarianceOf(const TwoPoint& stated, const Beta& model) {
  const double tc = inKelvin(model.t0);
  const double th = inKelvin(middle(stated.hotAt));
  const double width = 1 / tc - 1 / th;
  struct Input {
    double variance;
    std::array<double, 3> effect;  // on r0, t0, b
  };
  const std::array<Input, 4> inputs{{
      {uniformVariance(2 * halfStepOf(inOhms(stated.cold))), {1, 0, 1 / (inOhms(stated.cold) * width)}},
      {uniformVariance(2 * halfStepOf(inOhms(stated.hot))), {0, 0, -1 / (inOhms(stated.hot) * width)}},
      {uniformVariance(inKelvin(stated.coldAt.high) - inKelvin(stated.coldAt.low)),
       {0, 1, model.b / (width * tc * tc)}},
      {uniformVariance(inKelvin(stated.hotAt.high) - inKelvin(stated.hotAt.low)), {0, 0, -model.b / (width * th * th)}},
  }};
  Covariance covariance{std::vector<double>(9, 0.0), 3};
  for (const Input& input : inputs)
    for (std::size_t i = 0; i < 3; ++i)
      for (std::size_t j = 0; j < 3; ++j)
        covariance.values[3 * i + j] += input.variance * input.effect[i] * input.effect[j];
  return covariance;
}

}  // namespace

double halfStepOf(double stated) {
  const double leading = std::floor(std::log10(stated));
  for (int digits = 2; digits < 7; ++digits) {
    const double step = std::pow(10.0, leading + 1 - digits);
    const double steps = stated / step;
    if (std::abs(steps - std::round(steps)) < 1e-6 * steps) return step / 2;
  }
  return std::pow(10.0, leading - 6) / 2;
}

double bowBetween(const TwoPoint& stated) {
  const double ratio = std::log(inOhms(stated.cold) / inOhms(stated.hot));
  return (ratio > 0 ? kFallingBow : kRisingBow) * std::abs(ratio) * reciprocalWidth(stated);
}

Expected<Curve> fromTwoPoints(const TwoPoint& stated) {
  const double cold = inOhms(stated.cold);
  const double hot = inOhms(stated.hot);
  if (!std::isfinite(cold) || !std::isfinite(hot) || cold <= 0 || hot <= 0 || cold == hot)
    return refuse("two-point-ohms", "family", fmt::format("{:g} Ω cold and {:g} Ω hot", cold, hot),
                  "two different ohms, both above 0");
  if (!sound(stated.coldAt) || !sound(stated.hotAt) || stated.coldAt.high >= stated.hotAt.low)
    return refuse("two-point-temperatures", "family",
                  fmt::format("cold at {:.2f} to {:.2f} °C, hot at {:.2f} to {:.2f} °C", inCelsius(stated.coldAt.low),
                              inCelsius(stated.coldAt.high), inCelsius(stated.hotAt.low), inCelsius(stated.hotAt.high)),
                  "spans of temperature in order, cold wholly below hot");
  const Beta model{stated.cold, middle(stated.coldAt), std::log(cold / hot) / reciprocalWidth(stated)};
  const auto curve = Curve::make(model, {model.t0, middle(stated.hotAt)}, covarianceOf(stated, model));
  if (!curve) return curve;
  return curve->withBow(bowBetween(stated));
}

}  // namespace ohmkin::curve
