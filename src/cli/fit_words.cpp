#include <cli/fit_words.h>
#include <cli/table_text.h>
#include <curve/model_text.h>
#include <fmt/format.h>

namespace ohmkin::cli {

std::string fitText(const curve::Fit& fit, const DisplayUnits& units) {
  std::string text = fmt::format("{}\n", curve::equationText(fit.curve.model()));
  text += wrapped(fit.reason, 0, 0);
  const TemperatureSpan span = fit.curve.established();
  text += fmt::format("Established from {} to {}; beyond that it does not answer.\n", print(span.low, units),
                      print(span.high, units));
  text +=
      wrapped(fmt::format("Scatter {:.2f} % of ohms, {} {} of freedom{}.", 100 * fit.scatter, fit.freedom,
                          fit.freedom == 1 ? "degree" : "degrees",
                          !fit.stated      ? ""
                          : fit.consistent ? "; within the stated uncertainties"
                                           : "; more than the stated uncertainties explain, so the band is widened"),
              0, 0);
  if (fit.hysteresis)
    text +=
        fmt::format("Cooling less heating: {} ± {} (k = 2){}.\n", printDifference(fit.hysteresis->difference, units, 1),
                    printAmount(2.0 * fit.hysteresis->uncertainty, units, 1),
                    fit.hysteresis->significant ? ", a real lag" : ", not told from none");
  for (const auto& outlier : fit.outliers)
    text += wrapped(fmt::format("! Reading {}: {}", outlier.index + 1, outlier.reason), 2, 0);
  return text;
}

std::string readingsText(const curve::Fit& fit, const std::vector<curve::Sample>& samples, const DisplayUnits& units) {
  std::string text = "      true       read      curve   residual   95 % band\n";
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const auto at = fit.curve.resistance(samples[i].at);
    const auto band = fit.band(samples[i].at);
    text += fmt::format("{:>10} {:>10} {:>10} {:>10}   {}\n", print(samples[i].at, units, 1), print(samples[i].ohms),
                        at ? print(*at) : "outside", printDifference(fit.residuals[i], units, 2),
                        band ? fmt::format("{} … {}", print(band->low), print(band->high)) : "");
  }
  return text;
}

void putFit(Json& out, const curve::Fit& fit, const std::vector<curve::Sample>& samples) {
  out["form"] = curve::formName(fit.form);
  out["model"] = curve::textName(fit.curve.model());
  out["coefficients"] = curve::coefficientText(fit.curve.model());
  out["covariance"] = fit.curve.covariance().values;
  out["established_c"] = {inCelsius(fit.curve.established().low), inCelsius(fit.curve.established().high)};
  out["scatter_ln"] = fit.scatter;
  out["degrees_of_freedom"] = fit.freedom;
  out["consistent"] = fit.consistent;
  out["reason"] = fit.reason;
  out["hysteresis_k"] = fit.hysteresis ? Json(inKelvin(fit.hysteresis->difference)) : Json();
  Json outliers = Json::array();
  for (const auto& outlier : fit.outliers)
    outliers.push_back(
        {{"reading", outlier.index}, {"residual_k", inKelvin(outlier.residual)}, {"reason", outlier.reason}});
  out["outliers"] = std::move(outliers);
  Json candidates = Json::array();
  for (const auto& candidate : fit.candidates)
    candidates.push_back({{"form", curve::formName(candidate.form)},
                          {"aicc", candidate.aicc ? Json(*candidate.aicc) : Json()},
                          {"scatter_ln", candidate.scatter},
                          {"refusal", candidate.refusal}});
  out["candidates"] = std::move(candidates);
  Json rows = Json::array();
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const auto band = fit.band(samples[i].at);
    rows.push_back({{"true_c", inCelsius(samples[i].at)},
                    {"ohm", inOhms(samples[i].ohms)},
                    {"residual_k", inKelvin(fit.residuals[i])},
                    {"band_low_ohm", band ? Json(inOhms(band->low)) : Json()},
                    {"band_high_ohm", band ? Json(inOhms(band->high)) : Json()}});
  }
  out["readings"] = std::move(rows);
}

}  // namespace ohmkin::cli
