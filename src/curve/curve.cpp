#include <curve/curve.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::curve {
namespace {

constexpr std::size_t kSmall = 16;  // parameters of all but long tables: propagated without touching the heap
constexpr double kMostLn = 230;     // R stays a finite double, with room for arithmetic

Expected<void> checkSpan(const TemperatureSpan& span) {
  const auto [low, high] = bareKelvin(span);
  if (std::isfinite(low) && std::isfinite(high) && low > 0 && low < high) return {};
  return refuse("curve-span", "curve", fmt::format("{:.2f} to {:.2f} °C", low - kZeroCelsius, high - kZeroCelsius),
                "a span above absolute zero whose low end lies below its high end");
}

Expected<void> checkCovariance(const Covariance& covariance, std::size_t parameters) {
  if (covariance.size == 0 && covariance.values.empty()) return {};
  if (covariance.size != parameters || covariance.values.size() != parameters * parameters)
    return refuse(
        "curve-covariance", "curve",
        fmt::format("{} numbers for a {}×{} covariance", covariance.values.size(), covariance.size, covariance.size),
        fmt::format("{}×{} numbers for a model of {} parameters", parameters, parameters, parameters));
  bool sound =
      std::all_of(covariance.values.begin(), covariance.values.end(), [](double v) { return std::isfinite(v); });
  for (std::size_t i = 0; i < parameters; ++i) sound = sound && covariance.values[i * parameters + i] >= 0;
  if (sound) return {};
  return refuse("curve-covariance", "curve", "a variance below 0 or not finite",
                "finite numbers, variances not below 0");
}

Expected<void> checkTableSpan(const Model& model, const TemperatureSpan& established) {
  const auto* table = std::get_if<MonotoneTable>(&model);
  if (!table || (table->points.front().first <= established.low && established.high <= table->points.back().first))
    return {};
  return refuse("curve-span", "curve",
                fmt::format("{:.2f} to {:.2f} °C", inCelsius(established.low), inCelsius(established.high)),
                fmt::format("a span within the table's points, {:.2f} to {:.2f} °C",
                            inCelsius(table->points.front().first), inCelsius(table->points.back().first)));
}

double propagated(const Covariance& covariance, const double* gradient) {
  double sum = 0;
  for (std::size_t i = 0; i < covariance.size; ++i)
    for (std::size_t j = 0; j < covariance.size; ++j)
      sum += gradient[i] * covariance.values[i * covariance.size + j] * gradient[j];
  return std::sqrt(std::max(sum, 0.0));
}

}  // namespace

Curve::Curve(Model model, Law law, TemperatureSpan established, Covariance covariance, double floor)
    : model_(std::move(model)),
      law_(std::move(law)),
      established_(established),
      valid_(established),
      covariance_(std::move(covariance)),
      floor_(floor) {
  settleEnds();
}

void Curve::settleEnds() {
  lnAtLow_ = lnOhms(inKelvin(valid_.low));
  lnAtHigh_ = lnOhms(inKelvin(valid_.high));
}

Expected<Curve> Curve::make(Model model, TemperatureSpan established, Covariance covariance, double floor) {
  if (const auto span = checkSpan(established); !span) return tl::make_unexpected(span.error());
  if (!std::isfinite(floor) || floor < 0)
    return refuse("curve-numbers", "curve", fmt::format("a floor of {:g}", floor),
                  "a standard uncertainty of ln R, 0 or above");
  auto law = lawOf(model, bareKelvin(established));
  if (!law) return tl::make_unexpected(law.error());
  if (const auto table = checkTableSpan(model, established); !table) return tl::make_unexpected(table.error());
  const std::size_t parameters = std::visit([](const auto& l) { return l.parameters(); }, *law);
  if (const auto known = checkCovariance(covariance, parameters); !known) return tl::make_unexpected(known.error());

  Curve curve(std::move(model), std::move(*law), established, std::move(covariance), floor);
  // Algebra says monotone; this says that it is still so in doubles, and that no resistance overflows.
  if (!(std::abs(curve.lnAtLow_) < kMostLn && std::abs(curve.lnAtHigh_) < kMostLn) || curve.lnAtLow_ == curve.lnAtHigh_)
    return refuse("curve-not-monotone", "curve",
                  fmt::format("ln R of {:g} and {:g} at its ends", curve.lnAtLow_, curve.lnAtHigh_),
                  "a curve whose ohms differ at its ends and can be written down");
  return curve;
}

const Model& Curve::model() const { return model_; }
TemperatureSpan Curve::valid() const { return valid_; }
TemperatureSpan Curve::established() const { return established_; }
bool Curve::extrapolates(Temperature t) const { return valid_.holds(t) && !established_.holds(t); }
bool Curve::falls() const { return lnAtHigh_ < lnAtLow_; }

double Curve::lnOhms(double kelvin) const {
  return std::visit([kelvin](const auto& law) { return law.lnOhms(kelvin); }, law_);
}
double Curve::kelvinAt(double lnOhms) const {
  return std::visit([lnOhms](const auto& law) { return law.kelvinAt(lnOhms); }, law_);
}
double Curve::lnOhmsSlope(double kelvin) const {
  return std::visit([kelvin](const auto& law) { return law.slope(kelvin); }, law_);
}

std::optional<Ohms> Curve::resistance(Temperature t) const {
  if (!valid_.holds(t)) return std::nullopt;
  return ohms(std::exp(lnOhms(inKelvin(t))));
}

std::optional<Temperature> Curve::temperature(Ohms r) const {
  if (!(inOhms(r) > 0)) return std::nullopt;
  const double l = std::log(inOhms(r));
  const double rounding = 4e-15 * (1 + std::abs(l));  // exp and log at the very ends: below 1e-10 K
  if (std::abs(l - lnAtLow_) <= rounding) return valid_.low;
  if (std::abs(l - lnAtHigh_) <= rounding) return valid_.high;
  if (!(l > std::min(lnAtLow_, lnAtHigh_) && l < std::max(lnAtLow_, lnAtHigh_))) return std::nullopt;
  return kelvin(std::clamp(kelvinAt(l), inKelvin(valid_.low), inKelvin(valid_.high)));
}

std::optional<double> Curve::slope(Temperature t) const {
  if (!valid_.holds(t)) return std::nullopt;
  return lnOhmsSlope(inKelvin(t));
}

double Curve::bowAt(double kelvin) const {
  const double atHigh = 1 / inKelvin(established_.high);
  const double across = (1 / kelvin - atHigh) / (1 / inKelvin(established_.low) - atHigh);
  return bow_ * 4 * across * (1 - across);
}

std::optional<double> Curve::knowledge(Temperature t) const {
  if (!valid_.holds(t)) return std::nullopt;
  double known = 0;
  if (covariance_.size > 0) {
    std::array<double, kSmall> few{};
    std::vector<double> many(covariance_.size > kSmall ? covariance_.size : 0);
    double* gradient = many.empty() ? few.data() : many.data();
    std::visit([&](const auto& law) { law.gradient(inKelvin(t), {gradient, covariance_.size}); }, law_);
    known = propagated(covariance_, gradient);
  }
  return std::hypot(std::max(known, floor_), bowAt(inKelvin(t)));
}

Expected<Curve> Curve::extendedTo(TemperatureSpan wider) const {
  if (const auto span = checkSpan(wider); !span) return tl::make_unexpected(span.error());
  Curve out = *this;
  out.valid_ = {std::min(valid_.low, wider.low), std::max(valid_.high, wider.high)};
  auto law = lawOf(model_, bareKelvin(out.valid_));
  if (!law) return tl::make_unexpected(law.error());
  out.law_ = std::move(*law);
  out.settleEnds();
  if (!(std::abs(out.lnAtLow_) < kMostLn && std::abs(out.lnAtHigh_) < kMostLn) || out.falls() != falls())
    return refuse("curve-not-monotone", "curve",
                  fmt::format("{:.2f} to {:.2f} °C", inCelsius(out.valid_.low), inCelsius(out.valid_.high)),
                  "a span over which the curve keeps rising or falling");
  return out;
}

Curve Curve::withBow(double middle) const {
  Curve out = *this;
  out.bow_ = std::abs(middle);
  return out;
}

}  // namespace ohmkin::curve
