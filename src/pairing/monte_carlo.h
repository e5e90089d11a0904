#pragma once
#include <pairing/error_table.h>
#include <quantity/print.h>
#include <cstdint>
#include <stop_token>
#include <string>
#include <vector>

/// The error table's uncertainty by propagation of distributions (JCGM 101), to check the first-order one where things
/// bend.
namespace ohmkin::pairing {

struct Draws {
  std::size_t count = 100000;
  std::uint64_t seed = 1959;
  unsigned threads = 0;  ///< 0: as many as the machine has; the result does not depend on it
  DisplayUnits units;    ///< of the sentence
  /// Mean or standard uncertainty further apart than this part of u: first order does not hold there.
  double disagreement = 0.05;
};

struct SampledRow {
  Temperature trueTemperature;
  TemperatureDifference mean;      ///< of the error
  TemperatureDifference standard;  ///< standard uncertainty, k = 1
  TemperatureDifference low95;     ///< probabilistically symmetric 95 % coverage interval of the error (JCGM 101, 7.7)
  TemperatureDifference high95;
  TemperatureDifference firstOrder;  ///< standard uncertainty by JCGM 100 at the same place, for comparison
  bool linear = true;                ///< the two agree in mean and standard uncertainty
};

struct Sampled {
  std::vector<SampledRow> rows;
  Draws draws;
  /// Where they disagree, for a person: "First order holds from 60 to 118 °C; above, the spread is 8 % wider." Or that
  /// they agree.
  std::string comparison;
  [[nodiscard]] bool linear() const;
};

/// The same rows as the table's, under its options. Deterministic for a seed. A feed resistor's tolerance is taken to
/// second order. Refuses fewer than 1,000 draws or more than 10^8 values; cancelled by the token: refusal "cancelled".
Expected<Sampled> monteCarlo(const gauge::Gauge& gauge, const curve::Curve& sender, const ErrorTable& table,
                             const Draws& draws = {}, const std::stop_token& stop = {});

}  // namespace ohmkin::pairing
