#include <curve/choice.h>
#include <curve/fit.h>
#include <curve/lag.h>
#include <fmt/format.h>
#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <functional>

namespace ohmkin::curve {
namespace {

struct Known {
  Form form;
  std::string_view name;
  std::size_t parameters;
  double leastRange;
};
constexpr std::array<Known, 8> kForms{{
    {Form::beta, "B-parameter curve", 2, 10},
    {Form::steinhartHart3, "Steinhart–Hart with 3 terms", 3, 20},
    {Form::steinhartHart4, "Steinhart–Hart with 4 terms", 4, 30},
    {Form::exponential, "a·exp(b/(T + c))", 3, 20},
    {Form::straight, "straight line in temperature", 2, 10},
    {Form::quadratic, "polynomial of degree 2", 3, 20},
    {Form::cubic, "polynomial of degree 3", 4, 30},
    {Form::table, "monotone table", 0, 5},
}};
const Known& known(Form form) { return kForms.at(static_cast<std::size_t>(form)); }

constexpr int kMostShifts = 6;

Expected<void> check(const std::vector<Sample>& samples) {
  std::size_t stated = 0;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const Sample& s = samples[i];
    const bool numbers =
        std::isfinite(inKelvin(s.at)) && inKelvin(s.at) > 0 && std::isfinite(inOhms(s.ohms)) && inOhms(s.ohms) > 0;
    if (!numbers)
      return refuse("fit-reading", fmt::format("reading {}", i + 1),
                    fmt::format("{:g} °C, {:g} Ω", inCelsius(s.at), inOhms(s.ohms)),
                    "a temperature above absolute zero and ohms above 0");
    if (!(s.uKelvin >= 0 && s.uLnOhms >= 0 && std::isfinite(s.uKelvin) && std::isfinite(s.uLnOhms)))
      return refuse("fit-uncertainty", fmt::format("reading {}", i + 1),
                    fmt::format("{:g} K, {:g}", s.uKelvin, s.uLnOhms), "standard uncertainties of 0 or above");
    if (s.uKelvin > 0 || s.uLnOhms > 0) ++stated;
  }
  if (stated != 0 && stated != samples.size())
    return refuse("fit-uncertainty", "fit",
                  fmt::format("uncertainties of {} readings out of {}", stated, samples.size()),
                  "uncertainties of all readings or of none");
  return {};
}

/// Ohms at the two ends of the readings that are not 3 standard uncertainties apart say nothing of temperature.
Expected<void> checkTrend(const Curve& curve) {
  const auto [low, high] = curve.established();
  const double change = curve.lnOhms(inKelvin(high)) - curve.lnOhms(inKelvin(low));
  const double u = std::hypot(*curve.knowledge(low), *curve.knowledge(high));
  if (std::abs(change) > 3 * u) return {};
  return refuse("fit-no-trend", "fit",
                fmt::format("ohms that change by {:.2g} % over the run, known to {:.2g} %",
                            100 * std::expm1(std::abs(change)), 100 * std::expm1(u)),
                "readings whose ohms clearly rise or fall with temperature");
}

using Chooser = std::function<Expected<Choice>(const Readings&)>;

struct WithoutLag {
  Lag lag;
  Readings readings;
  Choice choice;
};

/// A lag that shows is taken off the temperatures, half from each run, until it stands still. The form is chosen anew
/// each time, since a lag looks like scatter and hides a bend. What is not known of the lag is then not known of the
/// curve either.
Expected<WithoutLag> takeOff(Lag lag, const Readings& given, const Chooser& chosen) {
  double total = inKelvin(lag.seen.difference);
  for (int shift = 0;; ++shift) {
    Readings readings = withoutLag(given, total);
    auto choice = chosen(readings);
    if (!choice) return tl::make_unexpected(choice.error());
    const auto left = lagOf(choice->trial, readings);
    const double step = left ? inKelvin(left->seen.difference) : 0;
    if (left) lag.seen.uncertainty = left->seen.uncertainty;
    if (left && std::abs(step) > 1e-3 * inKelvin(left->seen.uncertainty) && shift < kMostShifts) {
      total += step;
      continue;
    }
    Trial& trial = choice->trial;
    if (left) {
      auto known = Curve::make(trial.curve.model(), trial.curve.established(), left->covariance);
      if (!known) return tl::make_unexpected(known.error());
      trial.curve = std::move(*known);
    }
    if (trial.freedom > 1) --trial.freedom;
    lag.seen.difference = kelvins(total);
    return WithoutLag{std::move(lag), std::move(readings), std::move(*choice)};
  }
}

std::vector<Outlier> named(const Trial& trial, const Readings& readings) {
  std::vector<Outlier> out;
  for (const std::size_t i : trial.outliers) {
    const double r = trial.lnResiduals[i];
    const double apart = r / trial.curve.lnOhmsSlope(readings.kelvin[i]);
    out.push_back({i, r, kelvins(apart),
                   fmt::format("Reading {} ({:.1f} °C, {:.4g} Ω) lies {:.1f} % {} the curve of the others, as if it "
                               "were {:.1f} K {}: beyond {:.1f} "
                               "standard deviations; left out.",
                               i + 1, readings.kelvin[i] - kZeroCelsius, std::exp(readings.lnOhms[i]),
                               100 * std::abs(std::expm1(r)), r > 0 ? "above" : "below", std::abs(apart),
                               apart > 0 ? "hotter" : "colder", kTukey)});
  }
  return out;
}

std::optional<Band> bandAbout(const Curve& curve, Temperature t, double u) {
  const auto r = curve.resistance(t);
  if (!r) return std::nullopt;
  const double slope = std::abs(*curve.slope(t));
  return Band{*r * std::exp(-u), *r * std::exp(u), kelvins(u / slope)};
}

}  // namespace

std::string_view formName(Form form) { return known(form).name; }
std::size_t parametersOf(Form form) { return known(form).parameters; }
TemperatureDifference leastRange(Form form) { return kelvins(known(form).leastRange); }

Expected<Fit> fit(const std::vector<Sample>& samples, const FitOptions& options) {
  if (const auto sound = check(samples); !sound) return tl::make_unexpected(sound.error());
  if (samples.size() < 3)
    return refuse("fit-too-few-points", "fit",
                  fmt::format("{} {}", samples.size(), samples.size() == 1 ? "reading" : "readings"),
                  "at least 3 readings");
  const Readings given(samples, options.spreadInOhms);
  const Chooser chosen = [&options](const Readings& of) {
    return options.form ? asAsked(*options.form, of, options.robust) : choose(of, options.robust);
  };
  auto choice = chosen(given);
  if (!choice) return tl::make_unexpected(choice.error());
  auto lag = lagOf(choice->trial, given);
  Readings readings = given;
  if (lag && lag->seen.significant) {
    auto settled = takeOff(*lag, given, chosen);
    if (!settled) return tl::make_unexpected(settled.error());
    choice = std::move(settled->choice);
    readings = std::move(settled->readings);
    lag = std::move(settled->lag);
  }

  Trial& trial = choice->trial;
  if (const auto trend = checkTrend(trial.curve); !trend) return tl::make_unexpected(trend.error());
  std::vector<TemperatureDifference> residuals;
  for (std::size_t i = 0; i < readings.size(); ++i)
    residuals.push_back(kelvins(trial.lnResiduals[i] / trial.curve.lnOhmsSlope(readings.kelvin[i])));
  std::vector<Outlier> outliers = named(trial, readings);
  return Fit{std::move(trial.curve),
             trial.form,
             std::move(trial.lnResiduals),
             std::move(residuals),
             std::move(outliers),
             lag ? std::optional(lag->seen) : std::nullopt,
             trial.scatter,
             trial.chiSquare,
             trial.freedom,
             readings.stated,
             trial.consistent,
             std::move(choice->reason),
             std::move(choice->candidates)};
}

double Fit::coverage(double probability) const {
  const double tail = (1 + probability) / 2;
  // a table's spread is stated, or taken from so many neighbours that the normal will do
  if ((stated && consistent) || freedom == 0) return boost::math::quantile(boost::math::normal(), tail);
  return boost::math::quantile(boost::math::students_t(static_cast<double>(freedom)), tail);
}

std::optional<Band> Fit::band(Temperature t, double probability) const {
  const auto u = curve.knowledge(t);
  return u ? bandAbout(curve, t, coverage(probability) * *u) : std::nullopt;
}

}  // namespace ohmkin::curve
