#include <match/pictures.h>
#include <match/wording.h>
#include <cmath>
#include <optional>

namespace ohmkin::match {
namespace {

using workflow::Branch;
using workflow::Candidate;

parts::PlotSeries seriesOf(const QString& name, const pairing::ErrorTable& table, const DisplayUnits& units) {
  parts::PlotSeries series;
  series.name = name;
  for (const pairing::ErrorRow& row : table.rows)
    series.points.push_back({inUnit(row.trueTemperature, units.temperature), inUnit(row.error, units.temperature),
                             inUnit(row.uncertainty.total(), units.temperature)});
  return series;
}

/// What the dial's figures count in; none where it has no figures, or none that say their temperature.
std::optional<TemperatureUnit> unitOf(const gauge::Dial& dial) {
  for (const gauge::Mark& mark : dial.marks()) {
    bool number = false;
    const int figure = plain(mark.text).toInt(&number);
    if (!number || !mark.at) continue;
    for (const TemperatureUnit unit : {TemperatureUnit::celsius, TemperatureUnit::fahrenheit})
      if (std::lround(inUnit(*mark.at, unit)) == figure) return unit;
  }
  return {};
}

}  // namespace

parts::DialPicture dialOf(const Branch& branch, const DisplayUnits& units) {
  parts::DialPicture picture;
  if (!branch.gauge) return picture;
  const gauge::Dial& dial = branch.gauge->dial();
  picture.lowStop = dial.lowStop().degrees;
  picture.highStop = dial.highStop().degrees;
  using Kind = parts::DialMark::Kind;
  for (const gauge::Mark& mark : dial.marks()) {
    Kind kind = Kind::tick;
    switch (mark.kind) {
      case gauge::MarkKind::tick:
        break;
      case gauge::MarkKind::numbered:
        kind = Kind::numbered;
        break;
      case gauge::MarkKind::cold:
        kind = Kind::cold;
        break;
      case gauge::MarkKind::normalLow:
        kind = Kind::normalLow;
        break;
      case gauge::MarkKind::normalHigh:
        kind = Kind::normalHigh;
        break;
      case gauge::MarkKind::hot:
        kind = Kind::hot;
        break;
    }
    picture.marks.push_back({mark.angle.degrees, plain(mark.text), kind});
  }
  const auto marked = unitOf(dial);
  if (marked && *marked != units.temperature)
    picture.note = *marked == TemperatureUnit::celsius ? tr("dial marked in °C") : tr("dial marked in °F");
  return picture;
}

parts::PlotPicture plotOf(const Branch& branch, const Candidate& candidate, const DisplayUnits& units) {
  parts::PlotPicture picture;
  picture.temperatureUnit = units.temperature == TemperatureUnit::celsius ? QStringLiteral("°C") : QStringLiteral("°F");
  picture.errorUnit = units.temperature == TemperatureUnit::celsius ? QStringLiteral("K") : QStringLiteral("F°");
  if (!branch.gauge) return picture;
  const TemperatureSpan marked = branch.gauge->dial().marked();
  picture.from = inUnit(marked.low, units.temperature);
  picture.to = inUnit(marked.high, units.temperature);
  picture.bandFrom = inUnit(branch.band.low, units.temperature);
  picture.bandTo = inUnit(branch.band.high, units.temperature);
  picture.hotMark = inUnit(branch.gauge->hotMark(), units.temperature);
  picture.bandName = tr("where people look");

  const auto asItIs = [](const Candidate& c) -> const pairing::ErrorTable* {
    return c.wide ? &*c.wide : c.errors ? &*c.errors : nullptr;
  };
  if (recommendedTrim(candidate)) {
    picture.series.push_back(seriesOf(nameOf(candidate), candidate.trim->after, units));
    if (const auto* bare = asItIs(candidate)) {
      picture.series.push_back(seriesOf(tr("%1 without resistor").arg(plain(candidate.part)), *bare, units));
      picture.series.back().now = true;
      picture.series.back().misreads = true;
    }
  } else if (const auto* table = asItIs(candidate)) {
    picture.series.push_back(seriesOf(tr("%1, k = 2").arg(nameOf(candidate)), *table, units));
    picture.series.back().misreads = misreads(candidate);
  }
  const Candidate* now = fittedNow(branch);
  if (now != nullptr && now != &candidate && now->part != candidate.part) {
    if (const auto* table = asItIs(*now)) {
      picture.series.push_back(seriesOf(
          now->fittedNowSaid ? tr("%1, fitted now").arg(nameOf(*now)) : tr("%1, likely fitted").arg(nameOf(*now)),
          *table, units));
      picture.series.back().now = true;
      picture.series.back().misreads = misreads(*now);
    }
  }
  picture.summary = errorsInWords(candidate, units);
  return picture;
}

std::vector<parts::PlotInterval> outlineOf(const pairing::Sampled& sampled, const DisplayUnits& units) {
  std::vector<parts::PlotInterval> outline;
  outline.reserve(sampled.rows.size());
  for (const pairing::SampledRow& row : sampled.rows)
    outline.push_back({inUnit(row.trueTemperature, units.temperature), inUnit(row.low95, units.temperature),
                       inUnit(row.high95, units.temperature)});
  return outline;
}

}  // namespace ohmkin::match
