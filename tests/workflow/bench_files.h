#pragma once
#include "demo_catalogue.h"
#include "reference_table.h"

#include <fmt/format.h>
#include <workflow/import_readings.h>
#include <algorithm>
#include <string>

namespace ohmkin::test {

inline std::string decimalComma(double value) {
  std::string text = fmt::format("{}", value);
  std::replace(text.begin(), text.end(), '.', ',');
  return text;
}

/// The published table of a 10 kΩ NTC (tests/data/ntc-rt-table.csv), from 0 to 100 °C, as a logger of another country
/// would write it.
inline workflow::ReadingsFile publishedNtc(const std::string& name = "bath.csv") {
  const ReferenceTable table("ntc-rt-table.csv");
  std::string text = "Bench log\r\nprobe 3\r\n\r\nTemp. [°C];R [kΩ]\r\n";
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double at = table.number(i, "t_degc");
    if (at < 0 || at > 100) continue;
    text += fmt::format("{};{}\r\n", decimalComma(at), decimalComma(table.number(i, "R_ohm") / 1000));
  }
  return {name, {}, text};
}

/// A part that lies by `factor` off a curve: invented data.
inline std::string linesOf(const curve::Curve& curve, double factor = 1) {
  std::string text = "temperature_c,ohms\n";
  for (double t = 45; t <= 100; t += 5)
    text += fmt::format("{},{:.2f}\n", t, factor * inOhms(*curve.resistance(celsius(t))));
  return text;
}

/// Copies of the demo catalogue, each written to by one test.
class WritableDemos {
 public:
  catalog::Catalogue fresh() {
    const auto file = demo_.beside(fmt::format("copy-{}.ohmkin", ++copies_).c_str());
    std::filesystem::copy_file(demo_.file(), file, std::filesystem::copy_options::overwrite_existing);
    return catalog::Catalogue::open(file, catalog::Access::readWrite);
  }
  [[nodiscard]] std::filesystem::path beside(const char* name) const { return demo_.beside(name); }

 private:
  DemoCatalogue demo_;
  int copies_ = 0;
};

}  // namespace ohmkin::test
