#pragma once
#include <curve/trial.h>

/// The difference between heating and cooling runs, fitted together with the curve.
namespace ohmkin::curve {

struct Lag {
  Hysteresis seen;
  Covariance covariance;  ///< of the curve's parameters with the lag beside them
};

/// One linear step from a fitted curve: its own derivatives and a column of half a lag up for cooling, down for
/// heating. None where either direction has fewer than two readings, or the readings do not tell lag and curve apart.
std::optional<Lag> lagOf(const Trial& trial, const Readings& readings);

/// The temperatures with half the lag taken off each run.
Readings withoutLag(Readings readings, double kelvins);

}  // namespace ohmkin::curve
