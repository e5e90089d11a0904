#include <bench/distributions.h>
#include <bench/guidance.h>
#include <bench/reading.h>
#include <fmt/core.h>

#include <array>
#include <cmath>

namespace ohmkin::bench {
namespace {

// Standard uncertainties of the temperature at the element, from memory, no source.
constexpr double kStirred = 0.1;     // K
constexpr double kNotStirred = 0.6;  // K
constexpr double kDryHex = 1.0;      // K
constexpr double kSwapDiffers = 0.01;

template <std::size_t N>
double rootSum(const std::array<double, N>& parts) {
  double sum = 0;
  for (double part : parts) sum += part * part;
  return std::sqrt(sum);
}

}  // namespace

curve::Sample sampleOf(const Reading& reading) {
  return {reading.at, reading.ohms, reading.direction.value_or(Direction::heating), inKelvin(reading.u),
          reading.uLnOhms};
}

Expected<TakenReading> take(const BathReference& bath, const MeterReading& meter, const Practice& practice,
                            std::optional<Direction> direction) {
  if (!(inKelvin(bath.at) > 0 && inKelvin(bath.at) < 2000 && inKelvin(bath.u) >= 0 && inKelvin(bath.u) < 200))
    return refuse("reading-temperature", "bath", fmt::format("{:g} K, u {:g} K", inKelvin(bath.at), inKelvin(bath.u)),
                  "a temperature and an uncertainty of 0 or above");
  if (!(inOhms(meter.ohms) > 0 && std::isfinite(inOhms(meter.ohms)) && inOhms(meter.u) >= 0 &&
        std::isfinite(inOhms(meter.u))))
    return refuse("reading-ohms", "meter", fmt::format("{:g} Ω, u {:g} Ω", inOhms(meter.ohms), inOhms(meter.u)),
                  "ohms above 0 and an uncertainty of 0 or above");
  if (practice.perMinute && !(*practice.perMinute >= 0 && *practice.perMinute < 10))
    return refuse("reading-drift", "practice", fmt::format("{:g} a minute", *practice.perMinute),
                  "the change of the ohms a minute, 0 or above (0.005 is 0.5 %)");

  TakenReading taken;
  const double water = practice.stirred.value_or(false) ? kStirred : kNotStirred;
  const double dry = practice.immersedPastHex.value_or(true) ? 0 : kDryHex;
  const double heating = meter.selfHeating ? rectangular(inKelvin(*meter.selfHeating)) : 0;
  const double moving = practice.perMinute.value_or(0) > kSteadyPerMinute ? rectangular(*practice.perMinute) : 0;
  taken.reading = {bath.at, kelvins(rootSum(std::array{inKelvin(bath.u), water, dry, heating})), meter.ohms,
                   std::hypot(meter.uLnOhms(), moving), direction};
  taken.findings = bath.findings;
  taken.findings.insert(taken.findings.end(), meter.findings.begin(), meter.findings.end());
  const auto practised = practiceFindings(practice);
  taken.findings.insert(taken.findings.end(), practised.begin(), practised.end());
  return taken;
}

Expected<Swapped> averageSwapped(Ohms oneWay, Ohms otherWay) {
  for (const Ohms& r : {oneWay, otherWay})
    if (!(inOhms(r) > 0 && std::isfinite(inOhms(r))))
      return refuse("reading-ohms", "probes", fmt::format("{:g} Ω", inOhms(r)), "ohms above 0");
  Swapped swapped{0.5 * (oneWay + otherWay), {}};
  const double apart = std::abs(inOhms(oneWay) - inOhms(otherWay)) / inOhms(swapped.mean);
  if (apart > kSwapDiffers)
    swapped.findings.push_back(
        {"probes-differ", Severity::caution,
         "The two ways round differ by more than 1 %: there is a voltage in the circuit. Take the "
         "lead off the sender, dry it, and clean the terminal and the hex.",
         fmt::format("{:.1f} % apart", 100 * apart), "your readings"});
  return swapped;
}

}  // namespace ohmkin::bench
