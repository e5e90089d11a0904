#pragma once
#include <cli/json_values.h>
#include <curve/fit.h>
#include <quantity/print.h>
#include <string>
#include <vector>

/// A fitted curve at the terminal: its numbers, how well it is known, what does not belong, and every reading beside
/// it.
namespace ohmkin::cli {

/// The curve alone; then `readingsText` for the table below it.
std::string fitText(const curve::Fit& fit, const DisplayUnits& units);
std::string readingsText(const curve::Fit& fit, const std::vector<curve::Sample>& samples, const DisplayUnits& units);

/// Into an object that may hold more.
void putFit(Json& out, const curve::Fit& fit, const std::vector<curve::Sample>& samples);

}  // namespace ohmkin::cli
