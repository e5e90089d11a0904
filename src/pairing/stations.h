#pragma once
#include <curve/curve.h>
#include <finding/refusal.h>
#include <gauge/gauge.h>
#include <cstddef>
#include <optional>
#include <vector>

/// The temperatures a trim is judged at. Bare numbers: kelvin, ohms.
namespace ohmkin::pairing {

/// With the sender at these ohms the needle must have reached this place on the dial.
struct HotBy {
  double ohms = 0;
  double mark = 0;
};

/// Each with the sender's ohms there, in an order that rules networks out early.
struct Stations {
  std::vector<double> kelvin;
  std::vector<double> ohms;
  std::optional<HotBy> hotBy;
  [[nodiscard]] std::size_t size() const { return kelvin.size(); }
};

/// Both ends of the band first, then each half way between those before. `rows` is at least 2; hotBy is not set.
Stations stationsOf(const curve::Curve& sender, TemperatureSpan covered, std::size_t rows);

/// Where the needle has to be at the mark to be no later than this, and the sender's ohms there; its curve is continued
/// as far as that. Refuses a curve that cannot be.
Expected<HotBy> hotBy(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureDifference latest);

/// 0 … count−1, each half way between those before: good values are met early, whatever the order of the list.
std::vector<std::size_t> spreadOrder(std::size_t count);

}  // namespace ohmkin::pairing
