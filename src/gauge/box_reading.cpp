#include <gauge/box_reading.h>

#include <fmt/core.h>
#include <cmath>
#include <map>

namespace ohmkin::gauge {

Expected<std::vector<BoxReading>> freeReadings(const std::vector<BoxReading>& readings) {
  std::vector<BoxReading> free;
  for (const BoxReading& reading : readings) {
    if (!(inOhms(reading.box) >= 0) || !std::isfinite(reading.needle.degrees))
      return refuse("reading-no-number", "decade-box reading",
                    fmt::format("{:g} Ω at {:g}°", inOhms(reading.box), reading.needle.degrees),
                    "ohms of 0 or more and an angle in degrees");
    if (!std::isfinite(reading.uncertainty) || reading.uncertainty <= 0)
      return refuse("reading-uncertainty", "decade-box reading",
                    fmt::format("an uncertainty of {:g}°", reading.uncertainty), "degrees above 0");
    if (reading.rests == Rests::free) free.push_back(reading);
  }
  return free;
}

Expected<BenchPoints> benchPointsOf(const std::vector<BoxReading>& readings) {
  const auto free = freeReadings(readings);
  if (!free) return tl::make_unexpected(free.error());
  std::map<double, std::pair<double, int>> sums;
  for (const BoxReading& reading : *free) {
    auto& [sum, count] = sums[inOhms(reading.box)];
    sum += reading.needle.degrees;
    ++count;
  }
  if (sums.size() < 4)
    return refuse("readings-too-few", "decade-box readings", fmt::format("{} with the needle free", sums.size()),
                  "at least four with the needle free, at different ohms");
  // The middle ohms put half the points on either side of u = 1/2. Never 0 or infinite among four different ones.
  BenchPoints bench{ohms(std::next(sums.begin(), static_cast<std::ptrdiff_t>(sums.size() / 2))->first), {}};
  for (const auto& [r, mean] : sums)
    bench.points.emplace_back(std::isinf(r) ? 1 : r / (r + inOhms(bench.scale)), Angle{mean.first / mean.second});
  return checked(bench).map([](const Movement& sound) { return std::get<BenchPoints>(sound); });
}

}  // namespace ohmkin::gauge
