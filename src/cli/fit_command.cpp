#include <cli/common_options.h>
#include <cli/fit_command.h>
#include <cli/json_values.h>
#include <cli/table_text.h>
#include <curve/fit.h>
#include <curve/model_text.h>
#include <exchange/reading_file.h>
#include <fmt/format.h>
#include <array>
#include <fstream>
#include <ostream>
#include <sstream>

namespace ohmkin::cli {
namespace {

struct NamedForm {
  std::string_view name;
  curve::Form form;
};
constexpr std::array<NamedForm, 8> kForms{{{"beta", curve::Form::beta},
                                           {"steinhart-hart", curve::Form::steinhartHart3},
                                           {"steinhart-hart-4", curve::Form::steinhartHart4},
                                           {"exponential", curve::Form::exponential},
                                           {"straight", curve::Form::straight},
                                           {"quadratic", curve::Form::quadratic},
                                           {"cubic", curve::Form::cubic},
                                           {"table", curve::Form::table}}};

/// Meter accuracy as a part of reading and thermometer accuracy in kelvins, both ± limits: standard uncertainty by √3
/// (JCGM 100, 4.3.7).
struct Accuracy {
  double lnOhms = 0;
  double kelvin = 0;
};

Expected<Accuracy> accuracy(const Arguments& given) {
  Accuracy out;
  const auto limit = [&](const char* option, double scale, double& into) -> Expected<void> {
    if (!given.has(option)) return {};
    const auto number = parseNumber(given.one(option), option);
    if (!number || !(*number > 0) || *number > 50)
      return refuse("accuracy-unreadable", option, "'" + given.one(option) + "'", "a number above 0 and up to 50");
    into = *number * scale / std::sqrt(3.0);
    return {};
  };
  if (const auto read = limit("--meter", 0.01, out.lnOhms); !read) return tl::make_unexpected(read.error());
  if (const auto read = limit("--bath", 1, out.kelvin); !read) return tl::make_unexpected(read.error());
  return out;
}

Expected<std::vector<curve::Sample>> samples(const Arguments& given, const DisplayUnits& units, Streams streams,
                                             bool& complained) {
  const auto known = accuracy(given);
  if (!known) return tl::make_unexpected(known.error());
  std::vector<curve::Sample> all;
  for (const std::string& word : given.words) {
    const auto reading = parseReading(word, units.temperature, "T=R");
    if (!reading) return tl::make_unexpected(reading.error());
    all.push_back({reading->first, reading->second, curve::Direction::heating, known->kelvin, known->lnOhms});
  }
  for (const std::string& path : given.all("--file")) {
    std::ifstream file(path, std::ios::binary);
    if (!file) return refuse("file-missing", "--file", "'" + path + "'", "a file that can be read");
    std::ostringstream text;
    text << file.rdbuf();
    const auto readings =
        exchange::readReadings(text.str(), path, {units.temperature, true, given.has("--map") ? given.one("--map") : ""});
    if (!readings) {
      streams.err << readings.error().text();
      complained = true;
      return all;
    }
    for (const auto& reading : *readings)
      all.push_back({reading.at, reading.ohms, reading.cooling ? curve::Direction::cooling : curve::Direction::heating,
                     known->kelvin, known->lnOhms});
  }
  return all;
}

std::string fitText(const curve::Fit& fit, const std::vector<curve::Sample>& samples, const DisplayUnits& units) {
  std::string text = fmt::format("{}: {}\n", curve::formName(fit.form), curve::coefficientText(fit.curve.model()));
  text += wrapped(fit.reason, 0, 0);
  const TemperatureSpan span = fit.curve.established();
  text += fmt::format("Established from {} to {}; beyond that it does not answer.\n", print(span.low, units),
                      print(span.high, units));
  text += fmt::format("Scatter {:.2f} % of ohms, {} degrees of freedom{}.\n", 100 * fit.scatter, fit.freedom,
                      !fit.stated      ? ""
                      : fit.consistent ? "; within the stated uncertainties"
                                       : "; more than the stated uncertainties explain, so the band is widened");
  if (fit.hysteresis)
    text +=
        fmt::format("Cooling less heating: {} ± {} (k = 2){}.\n", printDifference(fit.hysteresis->difference, units, 1),
                    printAmount(2.0 * fit.hysteresis->uncertainty, units, 1),
                    fit.hysteresis->significant ? ", a real lag" : ", not told from none");
  for (const auto& outlier : fit.outliers)
    text += wrapped(fmt::format("! Reading {}: {}", outlier.index + 1, outlier.reason), 2, 0);
  text += "\n      true       read      curve   residual   95 % band\n";
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const auto at = fit.curve.resistance(samples[i].at);
    const auto band = fit.band(samples[i].at);
    text += fmt::format("{:>10} {:>10} {:>10} {:>10}   {}\n", print(samples[i].at, units, 1), print(samples[i].ohms),
                        at ? print(*at) : "outside", printDifference(fit.residuals[i], units, 2),
                        band ? fmt::format("{} … {}", print(band->low), print(band->high)) : "");
  }
  return text;
}

std::string fitJson(const curve::Fit& fit, const std::vector<curve::Sample>& samples) {
  Json out = document("ohmkin.fit", 1);
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
  return text(out);
}

}  // namespace

const CommandSpec& FitCommand::spec() const {
  static const CommandSpec spec{
      "fit",
      "A curve through measured readings: how well it is known, what does not belong, and why this model.",
      "[T=R]…",
      "readings, temperature and ohms: 20C=480 95C=51",
      0,
      4096,
      withCommonOptions({{"--file", "FILE", "readings as CSV of any habit, of one sender", true},
                         {"--map", "PLAN", "how the file is to be read, where it leaves that open: temperature=2:C, "
                          "resistance=3:kohm, skip=4"},
                         {"--form", "FORM",
                          "beta, steinhart-hart, steinhart-hart-4, exponential, straight, quadratic, cubic or table; "
                          "otherwise chosen"},
                         {"--meter", "PERCENT", "accuracy of the meter, ± percent of reading"},
                         {"--bath", "KELVIN", "accuracy of the thermometer in the bath, ± kelvins"}}),
      "ohmkin fit 20C=480 40C=230 60C=120 80C=69 95C=47"};
  return spec;
}

Expected<Exit> FitCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  curve::FitOptions options;
  if (arguments.has("--form")) {
    for (const NamedForm& named : kForms) {
      if (named.name == arguments.one("--form")) options.form = named.form;
    }
    if (!options.form)
      return refuse("form-unknown", "--form", "'" + arguments.one("--form") + "'",
                    "a form that ohmkin fit --help lists");
  }
  bool complained = false;
  const auto readings = samples(arguments, *units, streams, complained);
  if (!readings) return tl::make_unexpected(readings.error());
  if (complained) return Exit::badInput;
  const auto fit = curve::fit(*readings, options);
  if (!fit) return tl::make_unexpected(fit.error());
  streams.out << (arguments.has("--json") ? fitJson(*fit, *readings) : fitText(*fit, *readings, *units));
  return Exit::answer;
}

}  // namespace ohmkin::cli
