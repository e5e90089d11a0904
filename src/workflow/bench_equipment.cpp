#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <quantity/parse.h>
#include <workflow/bench_equipment.h>
#include <algorithm>
#include <array>

namespace ohmkin::workflow {
namespace {

constexpr double kAnyOhms = 1e9;      // Ω: full scale of a meter of which only the accuracy is known
constexpr double kAssumedLimits = 1;  // K
constexpr double kMostPercent = 50;
constexpr double kMostKelvin = 20;

/// "±0.8 %", "+-0.8%", "0.8 %" … the number before the sign.
std::optional<double> limitIn(std::string_view text, std::string_view unit, double most) {
  for (const std::string_view sign : {std::string_view("±"), std::string_view("+-"), std::string_view("+/-")})
    if (text.starts_with(sign)) text.remove_prefix(sign.size());
  if (text.ends_with(unit)) text.remove_suffix(unit.size());
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  const auto number = parseNumber(text);
  if (!number || !(*number > 0) || *number > most) return std::nullopt;
  return *number;
}

template <class Records>
std::vector<std::string> namesOf(const Records& records) {
  std::vector<std::string> names;
  names.reserve(records.size());
  for (const auto& record : records) names.push_back(record.name.text);
  return names;
}

template <class Records>
const typename Records::value_type* named(const Records& records, std::string_view name) {
  const auto found = std::find_if(records.begin(), records.end(),
                                  [&](const auto& record) { return folded(record.name.text) == folded(name); });
  return found == records.end() ? nullptr : &*found;
}

bench::TestSource sourceOf(const catalog::MeterRangeRecord& range) {
  if (range.milliamperes) return bench::SteadyCurrent{ohmkin::milliamperes(*range.milliamperes)};
  if (range.cell && range.midScale) return bench::CellAndResistance{*range.cell, *range.midScale};
  return {};
}

std::string leadWords(const bench::LeadZero& leads) { return fmt::format("leads {:.2g} Ω", inOhms(leads.shorted)); }

BenchMeter usual(bench::Meter meter, const std::optional<bench::LeadZero>& leads, bool assumed) {
  const bench::LeadZero zero = leads.value_or(bench::kLeadsNotZeroed);
  const std::string words = fmt::format("{}, {}", meter.name(), leads ? leadWords(zero) : "leads not zeroed");
  return {std::move(meter), zero, words, assumed};
}

BenchThermometer thermometerOf(const catalog::ThermometerRecord& record) {
  return {record.name.text, record.accuracy,
          record.stated == catalog::AccuracyStated::limits ? bench::Stated::limits : bench::Stated::standardUncertainty,
          false};
}

bench::Reduced reducedOf(catalog::BarometerReduced reduced) {
  switch (reduced) {
    case catalog::BarometerReduced::toSeaLevel:
      return bench::Reduced::toSeaLevel;
    case catalog::BarometerReduced::no:
      return bench::Reduced::no;
    case catalog::BarometerReduced::notKnown:
      break;
  }
  return bench::Reduced::notKnown;
}

}  // namespace

Expected<BenchMeter> meterOf(const catalog::MeterRecord& record) {
  std::vector<bench::MeterRange> ranges;
  ranges.reserve(record.ranges.size());
  for (const auto& range : record.ranges)
    ranges.push_back({range.fullScale, range.resolution, range.ofReading, range.counts, sourceOf(range)});
  auto meter = bench::Meter::make(record.name.text, std::move(ranges));
  if (!meter) return tl::make_unexpected(meter.error());
  bench::LeadZero leads = bench::kLeadsNotZeroed;
  if (record.leads && record.leadsStandardUncertainty) leads = {*record.leads, *record.leadsStandardUncertainty};
  return BenchMeter{*std::move(meter), leads,
                    fmt::format("{}, {}", record.name.text, record.leads ? leadWords(leads) : "leads not zeroed"),
                    false};
}

Expected<BenchMeter> meterNamed(const catalog::Catalogue& catalogue, std::string_view name,
                                std::optional<bench::LeadZero> leads) {
  if (name.empty()) return usual(bench::usualDigitalMeter(), leads, true);
  const auto records = catalog::meters(catalogue);
  if (const auto* record = named(records, name)) {
    auto meter = meterOf(*record);
    if (meter && leads) {
      meter->leads = *leads;
      meter->words = fmt::format("{}, {}", record->name.text, leadWords(*leads));
    }
    return meter;
  }
  if (folded(name) == folded("digital")) return usual(bench::usualDigitalMeter(), leads, false);
  if (folded(name) == folded("moving-coil")) return usual(bench::usualMovingCoilMeter(), leads, false);
  if (const auto percent = limitIn(name, "%", kMostPercent)) {
    auto meter = bench::Meter::make(fmt::format("a meter of ±{:g} %", *percent),
                                    {{ohms(kAnyOhms), ohms(1e-6), *percent / 100, 0, {}}});
    if (!meter) return tl::make_unexpected(meter.error());
    // Who states an accuracy states that of the readings: what the leads add is taken off or in it already.
    return BenchMeter{*meter, leads.value_or(bench::LeadZero{ohms(0), ohms(0)}), meter->name(), false};
  }
  return refuse("meter-unknown", "meter", fmt::format("'{}'", name),
                "a meter of this catalogue, digital, moving-coil, or its accuracy, for example 0.8 %" +
                    perhaps(nearMisses(name, namesOf(records))));
}

Expected<BenchThermometer> thermometerNamed(const catalog::Catalogue& catalogue, std::string_view name) {
  if (name.empty())
    return BenchThermometer{fmt::format("a thermometer of ±{:g} K", kAssumedLimits), kelvins(kAssumedLimits),
                            bench::Stated::limits, true};
  const auto records = catalog::thermometers(catalogue);
  if (const auto* record = named(records, name)) return thermometerOf(*record);
  const auto baths = catalog::baths(catalogue);
  if (const auto* bath = named(baths, name); bath != nullptr && bath->thermometer) {
    if (const auto record = catalog::thermometer(catalogue, *bath->thermometer)) {
      auto thermometer = thermometerOf(*record);
      thermometer.words = fmt::format("{}, {}", bath->name.text, record->name.text);
      return thermometer;
    }
  }
  if (const auto limits = limitIn(name, "K", kMostKelvin))
    return BenchThermometer{fmt::format("a thermometer of ±{:g} K", *limits), kelvins(*limits), bench::Stated::limits,
                            false};
  auto known = namesOf(records);
  for (const auto& bath : baths) known.push_back(bath.name.text);
  return refuse("thermometer-unknown", "bath", fmt::format("'{}'", name),
                "a thermometer or a bath with one of this catalogue, or its accuracy, for example 0.5 K" +
                    perhaps(nearMisses(name, known)));
}

Expected<bench::BathReference> bathReference(const catalog::Catalogue& catalogue, const BathSaid& said) {
  switch (said.kind) {
    case catalog::BathKind::crushedIce:
      return bench::icePoint(bench::Ice::crushedPure);
    case catalog::BathKind::iceCubes:
      return bench::icePoint(bench::Ice::tapCubes);
    case catalog::BathKind::boilingWater: {
      bench::BoilingWater water;
      water.altitude = said.altitude;
      if (said.altitudeU) water.altitudeU = *said.altitudeU;
      water.plain = said.plain;
      if (said.barometer) {
        water.barometer = bench::Barometer{*said.barometer, said.reduced};
        if (said.barometerU) water.barometer->u = *said.barometerU;
      }
      return bench::boilingPoint(water);
    }
    case catalog::BathKind::thermometer:
      break;
  }
  if (!said.shown) return refuse("thermometer-not-read", "bath", "no temperature", "what the thermometer in it shows");
  const auto thermometer = thermometerNamed(catalogue, said.thermometer);
  if (!thermometer) return tl::make_unexpected(thermometer.error());
  auto bath = bench::referenceThermometer(*said.shown, thermometer->accuracy, thermometer->stated, thermometer->words);
  if (bath && thermometer->assumed)
    bath->findings.push_back({"thermometer-assumed", Severity::caution,
                              fmt::format("Nobody said how accurate the thermometer is: ±{:g} K is assumed.",
                                          inKelvin(thermometer->accuracy)),
                              "", "a judgement"});
  return bath;
}

Expected<BathSaid> bathNamed(const catalog::Catalogue& catalogue, std::string_view name) {
  const auto baths = catalog::baths(catalogue);
  const auto* record = named(baths, name);
  if (record == nullptr)
    return refuse("bath-unknown", "bath", fmt::format("'{}'", name),
                  "a bath of this catalogue" + perhaps(nearMisses(name, namesOf(baths))));
  BathSaid said;
  said.kind = record->kind;
  if (record->thermometer) said.thermometer = record->thermometer->text;
  said.altitude = record->altitude;
  said.altitudeU = record->altitudeU;
  said.barometerU = record->barometerU;
  if (record->reduced) said.reduced = reducedOf(*record->reduced);
  return said;
}

}  // namespace ohmkin::workflow
