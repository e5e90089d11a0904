#pragma once
#include <pairing/error_table.h>
#include <pairing/limits.h>
#include <pairing/preferred_values.h>
#include <quantity/print.h>
#include <array>
#include <optional>
#include <vector>

/// The best trim network there is over a whole series of resistor values, proved by bounds and not by luck.
///
/// How: with a target e, each temperature allows a span of ohms at the sender post. For a fixed parallel resistor those
/// spans become one span of the series resistor (every indicated error moves one way as it grows), so a parallel value
/// is either excluded, provably, or leaves a few series values to evaluate. Each better network found narrows the spans
/// for all that follow.
namespace ohmkin::pairing {

struct TrimOptions {
  Series series = Series::e24;
  Ohms lowest = ohms(1);
  Ohms highest = ohms(100e3);
  std::vector<Ohms> drawer;  ///< not empty: only these values (what the shop stocks), any order
  Limits limits;
  PairOptions pair;  ///< pair.rows temperatures over the band are looked at
  /// Only networks with which the hot mark comes at most this late; none: all of them, judged by their errors over the
  /// band alone.
  std::optional<TemperatureDifference> latest;
  /// Only networks whose weighted worst error is at most this; none: all of them. Spares most of the search where
  /// nothing worse would serve.
  std::optional<TemperatureDifference> atMost;
  DisplayUnits units;        ///< of the sentences a proposal carries
  bool feedToSender = true;  ///< the sixth topology too, where the movement is a crossed coil with known coils
};

struct Trimmed {
  TrimNetwork network;
  /// Worst error over the band's temperatures in kelvins read high; a kelvin low counts limits.lowWeight.
  TemperatureDifference weightedWorst;
};

struct TrimSearch {
  Trimmed best;                                      ///< over all topologies; fewer parts win a tie
  std::array<std::optional<Trimmed>, 6> ofTopology;  ///< the best of each, indexed by Topology; none where not possible
  std::size_t networks = 0;                          ///< in the whole space
  std::size_t evaluated = 0;                         ///< computed at every temperature
  std::size_t excluded = 0;                          ///< ruled out by a bound; evaluated + excluded = networks
};

/// Under standard conditions. Refuses what errorTable refuses, a drawer or span of values without a single one, and,
/// code "no-trim-on-time", where no network meets `latest` and `atMost`.
Expected<TrimSearch> searchTrim(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureSpan band,
                                const TrimOptions& options = {});

}  // namespace ohmkin::pairing
