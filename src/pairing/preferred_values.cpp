#include <pairing/preferred_values.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <string>

namespace ohmkin::pairing {
namespace {

// IEC 60063, in hundredths, so that values come out as the decimals they are. E24 is older than its formula and departs
// from it in eight places; E48 and E96 are 10^(i/n) rounded to three digits without exception. E6 and E12 are every
// fourth and second E24 value.
constexpr std::array kE24{100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300,
                          330, 360, 390, 430, 470, 510, 560, 620, 680, 750, 820, 910};

std::vector<int> hundredths(Series series) {
  std::vector<int> out;
  const auto everyOf24 = [&](std::size_t step) {
    for (std::size_t i = 0; i < kE24.size(); i += step) out.push_back(kE24[i]);
  };
  const auto rounded = [&](int n) {
    for (int i = 0; i < n; ++i) out.push_back(static_cast<int>(std::lround(100 * std::pow(10.0, double(i) / n))));
  };
  switch (series) {
    case Series::e6:
      everyOf24(4);
      break;
    case Series::e12:
      everyOf24(2);
      break;
    case Series::e24:
      everyOf24(1);
      break;
    case Series::e48:
      rounded(48);
      break;
    case Series::e96:
      rounded(96);
      break;
  }
  return out;
}

constexpr std::array kNames{"E6", "E12", "E24", "E48", "E96"};

}  // namespace

std::string_view seriesName(Series series) { return kNames[static_cast<std::size_t>(series)]; }

Expected<Series> parseSeries(std::string_view text, std::string_view where) {
  const std::string_view digits = !text.empty() && (text.front() == 'E' || text.front() == 'e') ? text.substr(1) : text;
  for (std::size_t i = 0; i < kNames.size(); ++i)
    if (digits == std::string_view(kNames[i]).substr(1)) return static_cast<Series>(i);
  return refuse("series-unknown", std::string(where), std::string(text),
                "a series of IEC 60063: E6, E12, E24, E48 or E96");
}

const std::vector<double>& mantissas(Series series) {
  static const auto all = [] {
    std::array<std::vector<double>, kNames.size()> out;
    for (std::size_t i = 0; i < out.size(); ++i)
      for (const int h : hundredths(static_cast<Series>(i))) out[i].push_back(h / 100.0);
    return out;
  }();
  return all[static_cast<std::size_t>(series)];
}

std::vector<double> preferredOhms(Series series, Ohms lowest, Ohms highest) {
  std::vector<double> out;
  const double low = inOhms(lowest);
  const double high = inOhms(highest);
  if (!(low > 0) || !(low <= high) || !std::isfinite(high)) return out;
  const auto members = hundredths(series);
  const int lastDecade = static_cast<int>(std::log10(high)) + 1;
  for (int decade = static_cast<int>(std::floor(std::log10(low))); decade <= lastDecade; ++decade) {
    // Multiplying or dividing whole numbers keeps 5.6 kΩ at exactly 5600 and 0.47 Ω at its nearest double.
    const double power = std::pow(10.0, std::abs(decade - 2));
    for (const int h : members) {
      const double value = decade >= 2 ? h * power : h / power;
      if (value >= low && value <= high) out.push_back(value);
    }
  }
  return out;
}

}  // namespace ohmkin::pairing
