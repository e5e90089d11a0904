#include <catalog/families.h>
#include <catalog/row.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<Measurand, 4> kMeasurands{{{Measurand::coolantTemperature, "coolant temperature"},
                                           {Measurand::oilTemperature, "oil temperature"},
                                           {Measurand::oilPressure, "oil pressure"},
                                           {Measurand::fuelLevel, "fuel level"}}};
constexpr Words<CurveModel, 5> kModels{{{CurveModel::beta, "beta"},
                                        {CurveModel::steinhartHart, "steinhart-hart"},
                                        {CurveModel::exponential, "exponential"},
                                        {CurveModel::polynomial, "polynomial"},
                                        {CurveModel::table, "table"}}};
constexpr Words<RunDirection, 2> kRuns{{{RunDirection::heating, "heating"}, {RunDirection::cooling, "cooling"}}};
constexpr Words<bool, 2> kFalling{{{true, "falling"}, {false, "rising"}}};

#define FAMILIES                                                                                                   \
  "SELECT f.id, f.name, f.measurand, f.direction, f.tolerance, f.cold_ohms, f.hot_ohms, f.cold_low, f.cold_high, " \
  "f.hot_low, f.hot_high, f.note, " OHMKIN_SOURCE_COLUMNS " FROM family f JOIN source s ON s.id = f.source "
#define CURVES                                                                                            \
  "SELECT c.id, c.family, c.sender, c.lot, c.model, c.coefficients, c.covariance, c.floor, c.valid_low, " \
  "c.valid_high, " OHMKIN_SOURCE_COLUMNS " FROM curve c JOIN source s ON s.id = c.source "

Sample readSample(Row& row) {
  const Temperature at = celsius(row.number());
  const Ohms r = ohms(row.number());
  return {at, r, row.oneOf(kRuns)};
}

CurveRecord readCurve(Row& row) {
  CurveRecord c;
  c.id = row.key<CurveKey>();
  c.family = row.maybeKey<FamilyKey>();
  c.sender = row.maybeKey<SenderKey>();
  c.lot = row.text();
  c.model = row.oneOf(kModels);
  c.coefficients = row.text();
  c.covariance = row.numbers();
  c.floor = row.number();
  const Temperature low = celsius(row.number());
  c.valid = {low, celsius(row.number())};
  c.source = row.source();
  return c;
}

std::optional<ColdHot> readColdHot(Row& row) {
  const auto cold = row.maybe(ohms);
  const auto hot = row.maybe(ohms);
  const auto coldLow = row.maybe(celsius);
  const auto coldHigh = row.maybe(celsius);
  const auto hotLow = row.maybe(celsius);
  const auto hotHigh = row.maybe(celsius);
  if (!cold || !hot || !coldLow || !coldHigh || !hotLow || !hotHigh) return {};
  return ColdHot{*cold, *hot, {*coldLow, *coldHigh}, {*hotLow, *hotHigh}};
}

Family readFamily(Row& row) {
  Family f;
  f.id = row.key<FamilyKey>();
  f.name = row.text();
  f.measurand = row.oneOf(kMeasurands);
  f.falling = row.oneOf(kFalling);
  f.tolerance = row.maybeNumber();
  f.coldHot = readColdHot(row);
  f.note = row.text();
  f.source = row.source();
  return f;
}

std::vector<CurveRecord> withSamples(const Catalogue& catalogue, std::vector<CurveRecord> curves) {
  for (CurveRecord& c : curves)
    c.samples = ask(catalogue, "SELECT temperature, ohms, direction FROM sample WHERE curve = ? ORDER BY ordinal",
                    readSample, c.id.text);
  return curves;
}

std::vector<Family> withCurves(const Catalogue& catalogue, std::vector<Family> families) {
  for (Family& f : families)
    f.curves = withSamples(catalogue, ask(catalogue, CURVES "WHERE c.family = ? ORDER BY c.id", readCurve, f.id.text));
  return families;
}

}  // namespace

std::string_view text(Measurand measurand) { return wordFor(kMeasurands, measurand); }
std::string_view text(CurveModel model) { return wordFor(kModels, model); }
std::string_view text(RunDirection direction) { return wordFor(kRuns, direction); }

std::vector<Family> families(const Catalogue& catalogue) {
  return withCurves(catalogue, ask(catalogue, FAMILIES "ORDER BY f.name, f.id", readFamily));
}

std::optional<Family> family(const Catalogue& catalogue, const FamilyKey& key) {
  return first(withCurves(catalogue, ask(catalogue, FAMILIES "WHERE f.id = ?", readFamily, key.text)));
}

std::vector<Family> familiesNamed(const Catalogue& catalogue, std::string_view name) {
  return withCurves(catalogue, ask(catalogue, FAMILIES "WHERE lower(f.id) = ?1 OR lower(f.name) = ?1 ORDER BY f.id",
                                   readFamily, loweredName(name)));
}

std::vector<CurveRecord> benchCurves(const Catalogue& catalogue, const SenderKey& sender) {
  return withSamples(catalogue,
                     ask(catalogue, CURVES "WHERE c.sender = ? ORDER BY c.lot, c.id", readCurve, sender.text));
}

std::vector<CurveRecord> benchCurves(const Catalogue& catalogue, const SenderKey& sender, std::string_view lot) {
  return withSamples(catalogue, ask(catalogue, CURVES "WHERE c.sender = ? AND c.lot = ? ORDER BY c.id", readCurve,
                                    sender.text, std::string(lot)));
}

}  // namespace ohmkin::catalog
