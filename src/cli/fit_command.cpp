#include <cli/common_options.h>
#include <cli/fit_command.h>
#include <cli/fit_words.h>
#include <curve/fit.h>
#include <exchange/reading_file.h>
#include <fmt/format.h>
#include <array>
#include <ostream>

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
    const auto text = contentsOf(path);
    if (!text) return refuse("file-missing", "--file", "'" + path + "'", "a file that can be read");
    const auto readings =
        exchange::readReadings(*text, path, {units.temperature, true, given.has("--map") ? given.one("--map") : ""});
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

std::string fitJson(const curve::Fit& fit, const std::vector<curve::Sample>& samples) {
  Json out = document("ohmkin.fit", 1);
  putFit(out, fit, samples);
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
      withCommonOptions(
          {{"--file", "FILE", "readings as CSV of any habit, of one sender", true},
           {"--map", "PLAN",
            "how the file is to be read, where it leaves that open: temperature=2:C, "
            "resistance=3:kohm, skip=4"},
           {"--form",
            "FORM",
            "beta, steinhart-hart, steinhart-hart-4, exponential, straight, quadratic, cubic or table; "
            "otherwise chosen",
            false,
            {"beta", "steinhart-hart", "steinhart-hart-4", "exponential", "straight", "quadratic", "cubic", "table"}},
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
  streams.out << (arguments.has("--json") ? fitJson(*fit, *readings)
                                          : fitText(*fit, *units) + "\n" + readingsText(*fit, *readings, *units));
  return Exit::answer;
}

}  // namespace ohmkin::cli
