#include <workflow/gauges.h>

namespace ohmkin::workflow {
namespace {

gauge::MarkKind kindOf(catalog::DialMarkKind kind) {
  switch (kind) {
    case catalog::DialMarkKind::tick:
      return gauge::MarkKind::tick;
    case catalog::DialMarkKind::numbered:
      return gauge::MarkKind::numbered;
    case catalog::DialMarkKind::cold:
      return gauge::MarkKind::cold;
    case catalog::DialMarkKind::normalLow:
      return gauge::MarkKind::normalLow;
    case catalog::DialMarkKind::normalHigh:
      return gauge::MarkKind::normalHigh;
    case catalog::DialMarkKind::hot:
      return gauge::MarkKind::hot;
  }
  return gauge::MarkKind::tick;
}

/// Bench points are kept in ohms; the movement wants them in u = Rs/(Rs + scale). The middle reading is a good scale:
/// it spreads the points over 0 … 1.
gauge::BenchPoints benchPoints(const catalog::GaugeRecord& record) {
  std::vector<catalog::MovementPoint> points = record.points;
  std::sort(points.begin(), points.end(), [](const auto& a, const auto& b) { return a.ohms < b.ohms; });
  gauge::BenchPoints bench{points[points.size() / 2].ohms, {}};
  const double scale = inOhms(bench.scale);
  for (const auto& point : points)
    bench.points.emplace_back(inOhms(point.ohms) / (inOhms(point.ohms) + scale), point.needle);
  return bench;
}

Refusal incomplete(const catalog::GaugeRecord& record, std::string expected) {
  return {"gauge-incomplete", "gauge " + record.id.text, std::string(catalog::text(record.movement)),
          std::move(expected)};
}

std::optional<gauge::ReturnMagnet> magnetOf(const catalog::GaugeRecord& record) {
  if (!record.magnet) return {};
  return gauge::ReturnMagnet{record.magnet->strength, record.magnet->pull, record.magnet->weakening};
}

Expected<std::optional<gauge::Movement>> movementOf(const catalog::GaugeRecord& record) {
  using Found = std::optional<gauge::Movement>;
  switch (record.movement) {
    case catalog::MovementKind::unknown:
      return Found{};
    case catalog::MovementKind::crossedCoil:
      if (!record.grounded || !record.sweep || !record.half)
        return tl::make_unexpected(
            incomplete(record, "its angle with the lead grounded, its sweep and its ohms at half of it"));
      return Found(gauge::CrossedCoil{*record.grounded, *record.sweep, *record.half, record.feedCoil, record.groundCoil,
                                      magnetOf(record)});
    case catalog::MovementKind::bimetal:
      if (!record.rest || !record.grounded || !record.heater || !record.regulated)
        return tl::make_unexpected(
            incomplete(record, "its angles at rest and grounded, its heater's ohms and its regulator's volts"));
      return Found(gauge::Bimetal{*record.rest, *record.grounded, *record.heater, *record.regulated});
    case catalog::MovementKind::benchPoints:
      if (record.points.size() < 4) return tl::make_unexpected(incomplete(record, "at least four bench points"));
      return Found(benchPoints(record));
  }
  return Found{};
}

}  // namespace

Expected<gauge::Gauge> gaugeOf(const catalog::GaugeRecord& record, const curve::Curve& family,
                               const std::optional<gauge::Movement>& measured) {
  const auto named = [&](Refusal refusal) {
    if (refusal.where.empty()) refusal.where = "gauge " + record.id.text;
    return tl::make_unexpected(std::move(refusal));
  };
  std::vector<gauge::Mark> marks;
  marks.reserve(record.marks.size());
  for (const catalog::DialMark& mark : record.marks)
    marks.push_back({kindOf(mark.kind), mark.text, mark.at, mark.angle});
  auto movement = measured ? Expected<std::optional<gauge::Movement>>(measured) : movementOf(record);
  if (!movement) return tl::make_unexpected(movement.error());
  auto made = gauge::Gauge::make(std::move(marks), record.lowStop, record.highStop, *movement, family);
  return made ? std::move(made) : named(made.error());
}

}  // namespace ohmkin::workflow
