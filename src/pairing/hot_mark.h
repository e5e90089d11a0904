#pragma once
#include <pairing/error_table.h>
#include <pairing/pair.h>

/// When the needle reaches the hot mark, against when the matched pair's would.
namespace ohmkin::pairing {

struct HotAnswer {
  HotWarning warning;
  HotSign sign = HotSign::notSettled;
};

/// `backwards`: the needle falls as the coolant warms.
HotAnswer hotAnswer(const Pair& pair, const PairOptions& options, bool backwards);

/// True temperature at which the gauge's own family takes the needle to its hot mark; the mark itself where places on
/// the dial mean family temperatures, or where the family never gets it there.
double matchedHotKelvin(const gauge::Gauge& gauge, const gauge::Conditions& conditions);

}  // namespace ohmkin::pairing
