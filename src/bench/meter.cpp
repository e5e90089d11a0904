#include <bench/distributions.h>
#include <bench/meter.h>
#include <fmt/core.h>
#include <quantity/print.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmkin::bench {
namespace {

constexpr double kMuchHeat = 0.1;    // K
constexpr double kMuchLead = 0.01;   // of the reading
constexpr double kMuchDoubt = 0.02;  // of the reading, standard

bool positive(double x) { return x > 0 && std::isfinite(x); }
bool within(double x, double low, double high) { return x >= low && x <= high; }

Expected<void> checked(const MeterRange& range) {
  const auto wrong = [](const std::string& found, const char* expected) {
    return refuse("meter-range", "meter", found, expected);
  };
  const double full = inOhms(range.fullScale);
  if (!positive(full)) return wrong(fmt::format("a range to {:g} Ω", full), "a largest value above 0");
  if (!positive(inOhms(range.resolution)) || inOhms(range.resolution) > full)
    return wrong(fmt::format("a resolution of {:g} Ω", inOhms(range.resolution)), "a count above 0, below the range");
  if (!(range.ofReading >= 0 && range.ofReading < 1))
    return wrong(fmt::format("{:g} of the reading", range.ofReading), "a share of 0 to below 1 (0.01 is 1 %)");
  if (!within(range.counts, 0, 1e6)) return wrong(fmt::format("{:g} counts", range.counts), "counts of 0 or above");
  if (const auto* steady = std::get_if<SteadyCurrent>(&range.source); steady && !positive(steady->current.value()))
    return wrong(fmt::format("a current of {:g} A", steady->current.value()), "a test current above 0");
  if (const auto* cell = std::get_if<CellAndResistance>(&range.source);
      cell && !(positive(inVolts(cell->cell)) && positive(inOhms(cell->midScale))))
    return wrong(fmt::format("{:g} V behind {:g} Ω", inVolts(cell->cell), inOhms(cell->midScale)),
                 "a cell and a mid-scale resistance above 0");
  return {};
}

std::optional<double> wattsInto(const TestSource& source, double r) {
  if (const auto* steady = std::get_if<SteadyCurrent>(&source)) {
    const double current = steady->current.value();
    return current * current * r;
  }
  if (const auto* cell = std::get_if<CellAndResistance>(&source)) {
    const double current = inVolts(cell->cell) / (r + inOhms(cell->midScale));
    return current * current * r;
  }
  return std::nullopt;
}

void remark(MeterReading& reading, const LeadZero& leads) {
  if (reading.selfHeating && inKelvin(*reading.selfHeating) >= kMuchHeat)
    reading.findings.push_back({"self-heating", Severity::caution,
                                "The meter's own current warms the sender: use a higher range or a digital meter, and "
                                "touch it only for the reading.",
                                fmt::format("{:.1f} K", inKelvin(*reading.selfHeating)), kFromMemory});
  if (!reading.selfHeating)
    reading.findings.push_back({"self-heating-not-known", Severity::note,
                                "What current this meter drives is not known, so neither is how much it warms the "
                                "sender.",
                                "", "the meter as entered"});
  if (inOhms(leads.shorted) > kMuchLead * inOhms(reading.ohms))
    reading.findings.push_back(
        {"leads-count", Severity::note,
         "The leads are more than 1 % of this reading: hold them together again before and after.",
         print(leads.shorted), "your reading"});
  if (reading.uLnOhms() > kMuchDoubt)
    reading.findings.push_back({"meter-doubt", Severity::caution,
                                "The meter is uncertain by more than 4 % (k = 2) here: a lower range or a better meter "
                                "would tell more.",
                                fmt::format("u = {:.1f} %", 100 * reading.uLnOhms()), "the meter as entered"});
}

}  // namespace

Expected<Meter> Meter::make(std::string name, std::vector<MeterRange> ranges) {
  if (ranges.empty()) return refuse("meter-without-ranges", "meter", "no range", "at least one range of ohms");
  for (const MeterRange& range : ranges)
    if (auto fine = checked(range); !fine) return tl::make_unexpected(fine.error());
  // Sorted by place and copied once: swapping the variants inside makes g++ 12 warn of what is not so.
  std::vector<std::size_t> order(ranges.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return inOhms(ranges[i].fullScale); });
  std::vector<MeterRange> rising;
  rising.reserve(ranges.size());
  for (const std::size_t i : order) rising.push_back(ranges[i]);
  return Meter(std::move(name), std::move(rising));
}

const MeterRange* Meter::rangeFor(Ohms shown) const {
  const auto range = std::ranges::find_if(ranges_, [&](const MeterRange& r) { return shown <= r.fullScale; });
  return range == ranges_.end() ? nullptr : &*range;
}

Meter usualDigitalMeter() {
  return *Meter::make("usual digital meter", {{ohms(200), ohms(0.1), 0.008, 5, SteadyCurrent{milliamperes(1)}},
                                              {ohms(2000), ohms(1), 0.008, 3, SteadyCurrent{milliamperes(0.4)}},
                                              {ohms(20000), ohms(10), 0.008, 3, SteadyCurrent{milliamperes(0.07)}}});
}

Meter usualMovingCoilMeter() {
  return *Meter::make("usual moving-coil meter",
                      {{ohms(200), ohms(1), 0.05, 1, CellAndResistance{volts(1.5), ohms(20)}},
                       {ohms(2000), ohms(10), 0.05, 1, CellAndResistance{volts(1.5), ohms(200)}}});
}

double dissipation(Surroundings surroundings) { return surroundings == Surroundings::stirredWater ? 0.15 : 0.01; }

Expected<MeterReading> read(const Meter& meter, Ohms shown, const LeadZero& leads, Surroundings surroundings) {
  if (!positive(inOhms(shown)))
    return refuse("reading-ohms", "meter", fmt::format("{:g} Ω", inOhms(shown)), "ohms above 0");
  if (!within(inOhms(leads.shorted), 0, 1e6) || !within(inOhms(leads.standardUncertainty), 0, 1e6))
    return refuse("leads-out-of-range", "leads",
                  fmt::format("{:g} Ω, u {:g} Ω", inOhms(leads.shorted), inOhms(leads.standardUncertainty)),
                  "ohms of 0 or above");
  const MeterRange* range = meter.rangeFor(shown);
  if (!range)
    return refuse(
        "reading-above-meter", "meter", print(shown),
        fmt::format("at most {}, the highest range of {}", print(meter.ranges().back().fullScale), meter.name()));
  const Ohms left = shown - leads.shorted;
  if (!positive(inOhms(left)))
    return refuse("leads-leave-nothing", "leads", fmt::format("{} of {} shown", print(leads.shorted), print(shown)),
                  "leads of fewer ohms than the reading");
  const double count = inOhms(range->resolution);
  const double specification = rectangular(range->ofReading * inOhms(shown) + range->counts * count);
  MeterReading reading;
  reading.ohms = left;
  reading.u = ohms(std::hypot(std::hypot(specification, rectangular(count / 2)), inOhms(leads.standardUncertainty)));
  if (const auto watts = wattsInto(range->source, inOhms(left)))
    reading.selfHeating = kelvins(*watts / dissipation(surroundings));
  remark(reading, leads);
  return reading;
}

Expected<Finding> overload(const Meter& meter, std::optional<std::size_t> range) {
  const std::size_t highest = meter.ranges().size() - 1;
  const std::size_t at = range.value_or(highest);
  if (at > highest)
    return refuse("meter-range", "meter", fmt::format("range {}", at), fmt::format("a range of 0 to {}", highest));
  const std::string limit = print(meter.ranges()[at].fullScale);
  if (at < highest)
    return Finding{"overload-range", Severity::note,
                   fmt::format("More than {}: turn to the next higher range and read again.", limit), "",
                   "your reading"};
  return Finding{
      "overload-open", Severity::warning,
      fmt::format("More than {} on the highest range: the circuit is open. Clean the terminal and the hex, and "
                  "read from the terminal to the sender's own hex; still so, the sender is broken.",
                  limit),
      "", "your reading"};
}

}  // namespace ohmkin::bench
