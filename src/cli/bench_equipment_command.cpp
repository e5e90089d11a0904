#include <catalog/bench_equipment.h>
#include <cli/bench_arguments.h>
#include <cli/bench_equipment_command.h>
#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/barometer.h>
#include <quantity/near_miss.h>
#include <workflow/bench_equipment.h>
#include <algorithm>
#include <array>
#include <ostream>

namespace ohmkin::cli {
namespace {

using catalog::BathKind;

struct NamedKind {
  std::string_view name;
  BathKind kind;
};
constexpr std::array<NamedKind, 4> kBaths{{{"crushed-ice", BathKind::crushedIce},
                                           {"ice-cubes", BathKind::iceCubes},
                                           {"boiling", BathKind::boilingWater},
                                           {"thermometer", BathKind::thermometer}}};

std::string_view nameOf(BathKind kind) {
  for (const NamedKind& named : kBaths)
    if (named.kind == kind) return named.name;
  return "";
}

std::vector<std::string> parts(const std::string& text) {
  std::vector<std::string> all(1);
  for (const char c : text) {
    if (c == ',') all.emplace_back();
    else all.back() += c;
  }
  return all;
}

/// "2000,1,0.8,3" or with the current in mA: full scale and one count in ohms, percent of reading, counts.
Expected<catalog::MeterRangeRecord> meterRange(const std::string& text) {
  std::vector<double> numbers;
  for (const std::string& part : parts(text)) {
    const auto number = parseNumber(part);
    if (!number || !(*number >= 0)) break;
    numbers.push_back(*number);
  }
  const std::size_t wanted = parts(text).size();
  if (numbers.size() != wanted || wanted < 4 || wanted > 5 || !(numbers[0] > 0) || !(numbers[1] > 0) ||
      numbers[1] > numbers[0] || numbers[2] >= 100 || (wanted == 5 && !(numbers[4] > 0)))
    return refuse("range-unreadable", "--range", "'" + text + "'",
                  "FULL,COUNT,PERCENT,COUNTS and perhaps the current in mA, for example 2000,1,0.8,3,0.4");
  catalog::MeterRangeRecord range;
  range.fullScale = ohms(numbers[0]);
  range.resolution = ohms(numbers[1]);
  range.ofReading = numbers[2] / 100;
  range.counts = numbers[3];
  if (wanted == 5) range.milliamperes = numbers[4];
  return range;
}

Expected<void> keepMeter(const Arguments& given, catalog::Catalogue& catalogue) {
  catalog::MeterRecord meter;
  meter.name = catalog::MeterKey(given.one("--meter"));
  meter.note = given.one("--note");
  for (const std::string& text : given.all("--range")) {
    const auto range = meterRange(text);
    if (!range) return tl::make_unexpected(range.error());
    meter.ranges.push_back(*range);
  }
  if (meter.ranges.empty())
    return refuse("range-missing", "--range", "none", "at least one range, for example 2000,1,0.8,3");
  if (given.has("--leads")) {
    const auto leads = leadsGiven(given.one("--leads"));
    if (!leads) return tl::make_unexpected(leads.error());
    meter.leads = leads->shorted;
    meter.leadsStandardUncertainty = leads->standardUncertainty;
  }
  // What the bench could not compute with is not kept.
  if (const auto usable = workflow::meterOf(meter); !usable) return tl::make_unexpected(usable.error());
  return catalog::keepMeter(catalogue, meter, whoIsAsking(given));
}

Expected<void> keepThermometer(const Arguments& given, catalog::Catalogue& catalogue) {
  const auto accuracy = parseNumber(given.one("--accuracy"), "--accuracy");
  if (!accuracy || !(*accuracy > 0) || *accuracy > 20)
    return refuse("accuracy-unreadable", "--accuracy", "'" + given.one("--accuracy") + "'",
                  "kelvins above 0 and up to 20, for example 0.5");
  return catalog::keepThermometer(
      catalogue,
      {catalog::ThermometerKey(given.one("--thermometer")), kelvins(*accuracy),
       given.has("--certificate") ? catalog::AccuracyStated::standardUncertainty : catalog::AccuracyStated::limits,
       given.one("--note")},
      whoIsAsking(given));
}

Expected<void> keepBath(const Arguments& given, catalog::Catalogue& catalogue) {
  catalog::BathRecord bath;
  bath.name = catalog::BathKey(given.one("--bath"));
  bath.note = given.one("--note");
  const std::string kind = given.one("--kind", given.has("--with") ? "thermometer" : "");
  const auto named = std::find_if(kBaths.begin(), kBaths.end(), [&](const NamedKind& n) { return n.name == kind; });
  if (named == kBaths.end())
    return refuse("bath-kind-unknown", "--kind", "'" + kind + "'", "crushed-ice, ice-cubes, boiling or thermometer");
  bath.kind = named->kind;
  if (given.has("--with")) bath.thermometer = catalog::ThermometerKey(given.one("--with"));
  if (given.has("--altitude")) {
    const auto altitude = parseAltitude(given.one("--altitude"), "--altitude");
    if (!altitude) return tl::make_unexpected(altitude.error());
    bath.altitude = *altitude;
  }
  if (given.has("--reduced")) {
    const auto reduced = reducedGiven(given.one("--reduced"));
    if (!reduced) return tl::make_unexpected(reduced.error());
    bath.reduced =
        *reduced == bench::Reduced::toSeaLevel ? catalog::BarometerReduced::toSeaLevel : catalog::BarometerReduced::no;
  }
  return catalog::keepBath(catalogue, bath, whoIsAsking(given));
}

Expected<void> change(const Arguments& given, catalog::Catalogue& catalogue) {
  const bool removes = given.has("--remove");
  const std::string who = whoIsAsking(given);
  if (given.has("--meter"))
    return removes ? catalog::removeMeter(catalogue, catalog::MeterKey(given.one("--meter")), who)
                   : keepMeter(given, catalogue);
  if (given.has("--thermometer"))
    return removes ? catalog::removeThermometer(catalogue, catalog::ThermometerKey(given.one("--thermometer")), who)
                   : keepThermometer(given, catalogue);
  return removes ? catalog::removeBath(catalogue, catalog::BathKey(given.one("--bath")), who)
                 : keepBath(given, catalogue);
}

std::string meterText(const catalog::MeterRecord& meter) {
  std::string text = fmt::format("Meter {}", meter.name.text);
  for (const auto& range : meter.ranges)
    text += fmt::format("; to {}: {:g} % + {:g} counts of {}", printNominal(range.fullScale), 100 * range.ofReading,
                        range.counts, printNominal(range.resolution));
  text += meter.leads ? fmt::format("; leads {:.2g} Ω", inOhms(*meter.leads)) : "; leads not zeroed";
  return meter.note.empty() ? text : text + "; " + meter.note;
}

std::string bathText(const catalog::BathRecord& bath) {
  std::string text = fmt::format("Bath {}: {}", bath.name.text, nameOf(bath.kind));
  if (bath.thermometer) text += ", " + bath.thermometer->text;
  if (bath.altitude) text += " at " + print(*bath.altitude);
  return bath.note.empty() ? text : text + "; " + bath.note;
}

Exit list(const Arguments& given, const catalog::Catalogue& catalogue, std::ostream& out) {
  Json document = cli::document("ohmkin.equipment", 1);
  document["meters"] = document["thermometers"] = document["baths"] = Json::array();
  std::string lines;
  for (const auto& meter : catalog::meters(catalogue)) {
    Json ranges = Json::array();
    for (const auto& range : meter.ranges)
      ranges.push_back({{"full_scale_ohm", inOhms(range.fullScale)},
                        {"resolution_ohm", inOhms(range.resolution)},
                        {"of_reading", range.ofReading},
                        {"counts", range.counts},
                        {"milliamperes", range.milliamperes ? Json(*range.milliamperes) : Json()}});
    document["meters"].push_back({{"name", meter.name.text},
                                  {"ranges", std::move(ranges)},
                                  {"leads_ohm", meter.leads ? Json(inOhms(*meter.leads)) : Json()},
                                  {"note", meter.note}});
    lines += wrapped(meterText(meter), 2, 0);
  }
  for (const auto& thermometer : catalog::thermometers(catalogue)) {
    const bool limits = thermometer.stated == catalog::AccuracyStated::limits;
    document["thermometers"].push_back({{"name", thermometer.name.text},
                                        {"accuracy_k", inKelvin(thermometer.accuracy)},
                                        {"stated", limits ? "limits" : "standard uncertainty"},
                                        {"note", thermometer.note}});
    lines += wrapped(fmt::format("Thermometer {}: {}{:g} K{}", thermometer.name.text,
                                 limits ? "±" : "u = ", inKelvin(thermometer.accuracy),
                                 thermometer.note.empty() ? "" : "; " + thermometer.note),
                     2, 0);
  }
  for (const auto& bath : catalog::baths(catalogue)) {
    document["baths"].push_back({{"name", bath.name.text},
                                 {"kind", nameOf(bath.kind)},
                                 {"thermometer", bath.thermometer ? Json(bath.thermometer->text) : Json()},
                                 {"altitude_m", bath.altitude ? Json(bath.altitude->value()) : Json()},
                                 {"note", bath.note}});
    lines += wrapped(bathText(bath), 2, 0);
  }
  const bool none = lines.empty();
  out << (given.has("--json") ? text(document) : lines);
  return none ? Exit::noAnswer : Exit::answer;
}

}  // namespace

const CommandSpec& EquipmentCommand::spec() const {
  static const CommandSpec spec{
      "equipment",
      "Meters, thermometers and baths of the shop, written down once and named at every reading; without options, "
      "what there is.",
      "",
      "",
      0,
      0,
      withCommonOptions(
          {{"--meter", "NAME", "keeps a meter, with its ranges"},
           {"--range", "FULL,COUNT,PERCENT,COUNTS[,MA]",
            "a range from its data sheet: full scale and one count in ohms, ± percent of reading + counts, and the "
            "current",
            true},
           {"--leads", "OHMS[,U]", "its test leads held together"},
           {"--thermometer", "NAME", "keeps a thermometer"},
           {"--accuracy", "KELVIN", "of the thermometer, ± from its data sheet"},
           {"--certificate", "", "that accuracy is a standard uncertainty from a certificate"},
           {"--bath", "NAME", "keeps a bath"},
           {"--kind",
            "KIND",
            "crushed-ice, ice-cubes, boiling or thermometer",
            false,
            {"crushed-ice", "ice-cubes", "boiling", "thermometer"}},
           {"--with", "THERMOMETER", "the thermometer in the bath"},
           {"--altitude", "HEIGHT", "where the water boils: 1600 m, 5280 ft"},
           {"--reduced", "yes|no", "whether the barometer beside it shows sea-level pressure", false, {"yes", "no"}},
           {"--note", "TEXT", "whose it is, when it was last compared"},
           {"--remove", "", "takes out the one named"},
           {"--who", "NAME", "who says so; otherwise the name you are logged in by"}}),
      "ohmkin equipment --meter \"blue one\" --range 200,0.1,0.8,5,1 --range 2000,1,0.8,3,0.4 --leads 0.3,0.05"};
  return spec;
}

Expected<Exit> EquipmentCommand::run(const Arguments& arguments, Streams streams) const {
  const int named =
      (arguments.has("--meter") ? 1 : 0) + (arguments.has("--thermometer") ? 1 : 0) + (arguments.has("--bath") ? 1 : 0);
  if (named > 1)
    return refuse("equipment-one-at-a-time", "--meter", fmt::format("{} things", named),
                  "a meter, a thermometer or a bath, one at a time");
  if (named == 0) {
    const auto catalogue = openCatalogue(arguments);
    if (!catalogue) return tl::make_unexpected(catalogue.error());
    return list(arguments, *catalogue, streams.out);
  }
  const auto path = cataloguePath(arguments);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  if (const auto done = change(arguments, catalogue); !done) return tl::make_unexpected(asBenchOption(done.error()));
  list(arguments, catalogue, streams.out);
  return Exit::answer;
}

}  // namespace ohmkin::cli
