#include <gauge/gauge.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::gauge {
namespace {

constexpr double kFarthestLn = 30;    // 1e-13 to 1e13 Ω stand for grounded and open in a logarithm
constexpr double kRounding = 1e-7;    // degrees; a needle on an outermost mark is on the marks
constexpr double kDisagreement = 10;  // K between a printed number and the family before they are called contradictory
constexpr double kScaleStep = 1;      // K between points of a scale found from the family

/// The widest margin beyond the span, up to 150 K each way, over which the family still goes one way.
Expected<curve::Curve> extended(const curve::Curve& family, TemperatureSpan dial) {
  const TemperatureSpan least{std::min(dial.low, family.valid().low), std::max(dial.high, family.valid().high)};
  auto widest = family.extendedTo(least);
  if (!widest)
    return refuse("family-does-not-cover-dial", "family curve",
                  "a curve that does not go one way from the first mark to the last",
                  fmt::format("one that does from {:.0f} to {:.0f} °C", inCelsius(dial.low), inCelsius(dial.high)));
  for (const bool up : {true, false}) {
    for (const double margin : {150.0, 100.0, 60.0, 30.0, 15.0, 5.0}) {
      const TemperatureSpan at = widest->valid();
      const double low = std::max(inKelvin(at.low) - margin, std::min(150.0, inKelvin(at.low)));
      auto wider = widest->extendedTo(up ? TemperatureSpan{at.low, at.high + kelvins(margin)}
                                         : TemperatureSpan{kelvin(low), at.high});
      if (!wider) continue;
      widest = std::move(wider);
      break;
    }
  }
  return widest;
}

Refusal turnsTheOtherWay() {
  return {"movement-against-dial", "movement", "a needle that turns towards cold as its own family warms up",
          "a movement that takes the needle from the cold marks to the hot one"};
}

Where whereOn(const Dial& dial, double degrees) {
  const double turn = dial.turnsClockwise() ? 1 : -1;
  if (turn * (degrees - dial.marks().front().angle.degrees) < -kRounding) return Where::belowTheMarks;
  if (turn * (degrees - dial.marks().back().angle.degrees) > kRounding) return Where::pastTheMarks;
  return Where::onTheMarks;
}

}  // namespace

Gauge::Gauge(Dial dial, std::optional<Movement> movement, curve::Curve family, bool byFamily)
    : dial_(std::move(dial)), movement_(std::move(movement)), family_(std::move(family)), byFamily_(byFamily) {
  if (movement_) law_ = lawOf(*movement_);
  const double low = inKelvin(family_.valid().low);
  const double high = inKelvin(family_.valid().high);
  lnAtLow_ = family_.lnOhms(low);
  lnAtHigh_ = family_.lnOhms(high);
  kelvinPerLnAtLow_ = 1 / family_.lnOhmsSlope(low);
  kelvinPerLnAtHigh_ = 1 / family_.lnOhmsSlope(high);
}

Expected<Gauge> Gauge::trueForFamily(Dial dial, const curve::Curve& family) {
  auto wide = extended(family, dial.marked());
  if (!wide) return tl::make_unexpected(wide.error());
  return Gauge(std::move(dial), std::nullopt, std::move(*wide), true);
}

Expected<Gauge> Gauge::withMovement(Dial dial, const Movement& movement, const curve::Curve& family) {
  auto sound = checked(movement);
  if (!sound) return tl::make_unexpected(sound.error());
  auto wide = extended(family, dial.marked());
  if (!wide) return tl::make_unexpected(wide.error());
  const Angle cold = deflection(*sound, *wide->resistance(dial.marked().low));
  const Angle hot = deflection(*sound, *wide->resistance(dial.marked().high));
  if (cold == hot || (hot > cold) != dial.turnsClockwise()) return tl::make_unexpected(turnsTheOtherWay());
  return Gauge(std::move(dial), std::move(*sound), std::move(*wide), false);
}

Expected<Gauge> Gauge::make(std::vector<Mark> marks, Angle lowStop, Angle highStop,
                            const std::optional<Movement>& movement, const curve::Curve& family) {
  if (!numbered(marks) && movement) return withoutNumbers(std::move(marks), lowStop, highStop, *movement, family);
  auto dial = Dial::make(std::move(marks), lowStop, highStop);
  if (!dial) return tl::make_unexpected(dial.error());
  if (movement) return withMovement(std::move(*dial), *movement, family);
  return trueForFamily(std::move(*dial), family);
}

Expected<Gauge> Gauge::withoutNumbers(std::vector<Mark> marks, Angle lowStop, Angle highStop, const Movement& movement,
                                      const curve::Curve& family) {
  auto sound = checked(movement);
  if (!sound) return tl::make_unexpected(sound.error());
  auto wide = extended(family, family.valid());
  if (!wide) return tl::make_unexpected(wide.error());
  for (Mark& mark : marks) {
    if (mark.kind == MarkKind::tick && !mark.at) continue;
    const auto sender = ohmsFor(*sound, mark.angle);
    const auto found = sender ? wide->temperature(*sender) : std::nullopt;
    if (!found)
      return refuse("mark-never-reached", "dial", fmt::format("a mark '{}' at {:g}°", mark.text, mark.angle.degrees),
                    "marks the movement reaches with its own family");
    if (mark.at && std::abs(inKelvin(*mark.at - *found)) > kDisagreement)
      return refuse("mark-contradicts-family", "dial",
                    fmt::format("a mark '{}' at {:.0f} °C", mark.text, inCelsius(*mark.at)),
                    fmt::format("about {:.0f} °C there, where movement and family put it", inCelsius(*found)));
    mark.at = *found;
  }
  Dial::Scale scale;
  for (Temperature t = wide->valid().low; t <= wide->valid().high; t += kelvins(kScaleStep)) {
    const Angle angle = deflection(*sound, *wide->resistance(t));
    // Far out the needle no longer moves in doubles.
    if (scale.empty() || std::abs((angle - scale.back().second).degrees) > kRounding) scale.emplace_back(t, angle);
  }
  auto dial = Dial::withScale(std::move(marks), lowStop, highStop, scale);
  if (!dial) {
    if (dial.error().code == "dial-order") return tl::make_unexpected(turnsTheOtherWay());
    return tl::make_unexpected(dial.error());
  }
  return Gauge(std::move(*dial), std::move(*sound), std::move(*wide), true);
}

double Gauge::familyKelvin(double lnOhms) const {
  const double ln = std::clamp(lnOhms, -kFarthestLn, kFarthestLn);
  const bool falls = lnAtHigh_ < lnAtLow_;
  if (falls ? ln > lnAtLow_ : ln < lnAtLow_) return inKelvin(family_.valid().low) + (ln - lnAtLow_) * kelvinPerLnAtLow_;
  if (falls ? ln < lnAtHigh_ : ln > lnAtHigh_)
    return inKelvin(family_.valid().high) + (ln - lnAtHigh_) * kelvinPerLnAtHigh_;
  return family_.kelvinAt(ln);
}

double Gauge::shownAtOhms(double ohms) const {
  if (byFamily_) return familyKelvin(std::log(ohms));
  const double degrees = std::visit([ohms](const auto& law) { return law.degrees(ohms); }, *law_);
  const Dial::Step& step = dial_.stepAt(degrees);
  return step.kelvin + (degrees - step.degrees) * step.kelvinPerDegree;
}

double Gauge::shownKelvin(double lnOhms) const {
  return byFamily_ ? familyKelvin(lnOhms) : shownAtOhms(std::exp(lnOhms));
}

double Gauge::shownSlope(double lnOhms) const {
  if (byFamily_) {
    const double at = familyKelvin(lnOhms);
    if (at <= inKelvin(family_.valid().low)) return kelvinPerLnAtLow_;
    if (at >= inKelvin(family_.valid().high)) return kelvinPerLnAtHigh_;
    return 1 / family_.lnOhmsSlope(at);
  }
  const double r = std::exp(lnOhms);
  return std::visit([&](const auto& law) { return law.slope(r) * dial_.stepAt(law.degrees(r)).kelvinPerDegree; },
                    *law_);
}

Reading Gauge::indicated(Ohms sender, const Conditions& conditions) const {
  if (!law_) {
    const Temperature shown = kelvin(familyKelvin(std::log(inOhms(sender))));
    const Angle needle = dial_.angleOf(shown);
    return {shown, whereOn(dial_, needle.degrees), dial_.onStops(needle), !family_.established().holds(shown)};
  }
  const Felt f = felt(*movement_, inOhms(sender), conditions);
  const Angle needle{std::visit([&](const auto& law) { return law.degrees(f.ohms, f.drive); }, *law_)};
  Reading reading{dial_.temperatureAt(needle), whereOn(dial_, needle.degrees), dial_.onStops(needle),
                  !established(*movement_, ohms(std::max(0.0, f.ohms)))};
  if (!byFamily_) return reading;
  // A dial without numbers: the family's temperature at the standard ohms that put the needle there.
  const auto standard = ohmsFor(*movement_, *law_, needle.degrees, {});
  if (standard) reading.shown = kelvin(familyKelvin(std::log(*standard)));
  reading.extrapolated = reading.extrapolated || !family_.established().holds(reading.shown);
  return reading;
}

std::optional<Ohms> Gauge::ohmsAt(Temperature shown) const {
  if (byFamily_) return family_.resistance(shown);
  const auto found = ohmsFor(*movement_, *law_, dial_.angleOf(shown).degrees, {});
  if (!found) return std::nullopt;
  return ohms(*found);
}

}  // namespace ohmkin::gauge
