#include <catalog/bench_equipment.h>
#include <catalog/change.h>
#include <fmt/format.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<AccuracyStated, 2> kStated{
    {{AccuracyStated::limits, "limits"}, {AccuracyStated::standardUncertainty, "standard uncertainty"}}};
constexpr Words<BathKind, 4> kBaths{{{BathKind::crushedIce, "crushed ice"},
                                     {BathKind::iceCubes, "ice cubes"},
                                     {BathKind::boilingWater, "boiling water"},
                                     {BathKind::thermometer, "thermometer"}}};
constexpr Words<BarometerReduced, 3> kReduced{{{BarometerReduced::toSeaLevel, "to sea level"},
                                               {BarometerReduced::no, "no"},
                                               {BarometerReduced::notKnown, "not known"}}};

Length metres(double m) { return Length::from_value(m); }

MeterRangeRecord readRange(Row& row) {
  MeterRangeRecord r;
  r.fullScale = ohms(row.number());
  r.resolution = ohms(row.number());
  r.ofReading = row.number();
  r.counts = row.number();
  r.milliamperes = row.maybeNumber();
  r.cell = row.maybe(volts);
  r.midScale = row.maybe(ohms);
  return r;
}

MeterRecord readMeter(Row& row) {
  MeterRecord m;
  m.name = row.key<MeterKey>();
  m.leads = row.maybe(ohms);
  m.leadsStandardUncertainty = row.maybe(ohms);
  m.note = row.text();
  return m;
}

std::vector<MeterRecord> withRanges(const Catalogue& catalogue, std::vector<MeterRecord> meters) {
  for (MeterRecord& m : meters)
    m.ranges = ask(catalogue,
                   "SELECT full_scale, resolution, of_reading, counts, milliamperes, cell, mid_scale FROM meter_range "
                   "WHERE meter = ? ORDER BY full_scale",
                   readRange, m.name.text);
  return meters;
}

ThermometerRecord readThermometer(Row& row) {
  ThermometerRecord t;
  t.name = row.key<ThermometerKey>();
  t.accuracy = kelvins(row.number());
  t.stated = row.oneOf(kStated);
  t.note = row.text();
  return t;
}

BathRecord readBath(Row& row) {
  BathRecord b;
  b.name = row.key<BathKey>();
  b.kind = row.oneOf(kBaths);
  b.altitude = row.maybe(metres);
  b.altitudeU = row.maybe(metres);
  b.barometerU = row.maybe(kilopascals);
  if (const std::string word = row.text(); !word.empty()) {
    for (const auto& [reduced, text] : kReduced)
      if (text == word) b.reduced = reduced;
    if (!b.reduced) row.damaged(word);
  }
  b.thermometer = row.maybeKey<ThermometerKey>();
  b.note = row.text();
  return b;
}

/// Runs `write` in one transaction with its line of the change log; a broken rule is refused.
template <class Write>
Expected<void> kept(Catalogue& catalogue, const std::string& subject, std::string_view who, const std::string& what,
                    Write write) {
  Connection& connection = catalogue.connection();
  try {
    Change whole(connection);
    write(connection);
    logChange(connection, who, what, subject, {}, {});
    whole.commit();
    return {};
  } catch (const SQLite::Exception& failure) {
    if (breaksRule(failure))
      return refuse("row-refused", subject, "what breaks a rule of the tables", brokenRule(failure));
    rethrow(failure, catalogue.file());
  }
}

template <class Quantity>
Maybe<double> bare(const std::optional<Quantity>& quantity) {
  return {quantity ? std::optional(quantity->value()) : std::nullopt};
}

Expected<void> unknown(const std::string& subject) {
  return refuse("equipment-unknown", subject, "none of that name", "one the shop has written down");
}

}  // namespace

std::vector<MeterRecord> meters(const Catalogue& catalogue) {
  return withRanges(catalogue, ask(catalogue, "SELECT name, leads, leads_u, note FROM meter ORDER BY name", readMeter));
}

std::optional<MeterRecord> meter(const Catalogue& catalogue, const MeterKey& key) {
  return first(withRanges(
      catalogue, ask(catalogue, "SELECT name, leads, leads_u, note FROM meter WHERE name = ?", readMeter, key.text)));
}

std::vector<ThermometerRecord> thermometers(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT name, accuracy, stated, note FROM thermometer ORDER BY name", readThermometer);
}

std::optional<ThermometerRecord> thermometer(const Catalogue& catalogue, const ThermometerKey& key) {
  return first(
      ask(catalogue, "SELECT name, accuracy, stated, note FROM thermometer WHERE name = ?", readThermometer, key.text));
}

#define BATHS "SELECT name, kind, altitude, altitude_u, barometer_u, reduced, thermometer, note FROM bath "

std::vector<BathRecord> baths(const Catalogue& catalogue) { return ask(catalogue, BATHS "ORDER BY name", readBath); }

std::optional<BathRecord> bath(const Catalogue& catalogue, const BathKey& key) {
  return first(ask(catalogue, BATHS "WHERE name = ?", readBath, key.text));
}

Expected<void> keepMeter(Catalogue& catalogue, const MeterRecord& meter, std::string_view who) {
  const std::string subject = "meter " + meter.name.text;
  if (meter.ranges.empty()) return refuse("row-refused", subject, "a meter without a range", "at least one range");
  return kept(catalogue, subject, who, "meter kept", [&](Connection& connection) {
    change(connection, "DELETE FROM meter_range WHERE meter = ?", meter.name.text);
    change(connection,
           "INSERT INTO meter (name, leads, leads_u, note) VALUES (?, ?, ?, ?) ON CONFLICT (name) DO UPDATE SET "
           "leads = excluded.leads, leads_u = excluded.leads_u, note = excluded.note",
           meter.name.text, bare(meter.leads), bare(meter.leadsStandardUncertainty), meter.note);
    for (const MeterRangeRecord& range : meter.ranges)
      change(
          connection,
          "INSERT INTO meter_range (meter, full_scale, resolution, of_reading, counts, milliamperes, cell, mid_scale) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
          meter.name.text, inOhms(range.fullScale), inOhms(range.resolution), range.ofReading, range.counts,
          Maybe{range.milliamperes}, bare(range.cell), bare(range.midScale));
  });
}

Expected<void> keepThermometer(Catalogue& catalogue, const ThermometerRecord& thermometer, std::string_view who) {
  return kept(catalogue, "thermometer " + thermometer.name.text, who, "thermometer kept", [&](Connection& connection) {
    change(
        connection,
        "INSERT INTO thermometer (name, accuracy, stated, note) VALUES (?, ?, ?, ?) ON CONFLICT (name) DO UPDATE SET "
        "accuracy = excluded.accuracy, stated = excluded.stated, note = excluded.note",
        thermometer.name.text, inKelvin(thermometer.accuracy), std::string(wordFor(kStated, thermometer.stated)),
        thermometer.note);
  });
}

Expected<void> keepBath(Catalogue& catalogue, const BathRecord& bath, std::string_view who) {
  return kept(catalogue, "bath " + bath.name.text, who, "bath kept", [&](Connection& connection) {
    const auto reduced =
        bath.reduced ? std::optional(std::string(wordFor(kReduced, *bath.reduced))) : std::optional<std::string>();
    const auto thermometer = bath.thermometer ? std::optional(bath.thermometer->text) : std::optional<std::string>();
    const auto pressure = bath.barometerU ? std::optional(inKilopascals(*bath.barometerU)) : std::optional<double>();
    change(connection,
           "INSERT INTO bath (name, kind, altitude, altitude_u, barometer_u, reduced, thermometer, note) "
           "VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (name) DO UPDATE SET kind = excluded.kind, "
           "altitude = excluded.altitude, altitude_u = excluded.altitude_u, barometer_u = excluded.barometer_u, "
           "reduced = excluded.reduced, thermometer = excluded.thermometer, note = excluded.note",
           bath.name.text, std::string(wordFor(kBaths, bath.kind)), bare(bath.altitude), bare(bath.altitudeU),
           Maybe{pressure}, Maybe{reduced}, Maybe{thermometer}, bath.note);
  });
}

Expected<void> removeMeter(Catalogue& catalogue, const MeterKey& key, std::string_view who) {
  const std::string subject = "meter " + key.text;
  if (!meter(catalogue, key)) return unknown(subject);
  return kept(catalogue, subject, who, "meter removed", [&](Connection& connection) {
    change(connection, "DELETE FROM meter_range WHERE meter = ?", key.text);
    change(connection, "DELETE FROM meter WHERE name = ?", key.text);
  });
}

Expected<void> removeThermometer(Catalogue& catalogue, const ThermometerKey& key, std::string_view who) {
  const std::string subject = "thermometer " + key.text;
  if (!thermometer(catalogue, key)) return unknown(subject);
  return kept(catalogue, subject, who, "thermometer removed",
              [&](Connection& connection) { change(connection, "DELETE FROM thermometer WHERE name = ?", key.text); });
}

Expected<void> removeBath(Catalogue& catalogue, const BathKey& key, std::string_view who) {
  const std::string subject = "bath " + key.text;
  if (!bath(catalogue, key)) return unknown(subject);
  return kept(catalogue, subject, who, "bath removed",
              [&](Connection& connection) { change(connection, "DELETE FROM bath WHERE name = ?", key.text); });
}

}  // namespace ohmkin::catalog
