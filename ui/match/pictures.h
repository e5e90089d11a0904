#pragma once
#include <parts/dial_view.h>
#include <parts/error_plot.h>
#include <quantity/print.h>
#include <workflow/cards.h>

/// The gauge's dial and the error over the temperature, for the parts that draw them.
namespace ohmkin::match {

/// A dial marked in the unit the person does not use says so.
parts::DialPicture dialOf(const workflow::Branch& branch, const DisplayUnits& units);
parts::PlotPicture plotOf(const workflow::Branch& branch, const workflow::Candidate& candidate,
                          const DisplayUnits& units);

/// What was drawn, as an outline over the band of the plot.
std::vector<parts::PlotInterval> outlineOf(const pairing::Sampled& sampled, const DisplayUnits& units);

}  // namespace ohmkin::match
