#pragma once
#include <bench/identify.h>
#include <curve/fit.h>
#include <measure/curve_plot.h>
#include <measure/suspect_bars.h>
#include <quantity/print.h>
#include <workflow/bench_families.h>
#include <span>

/// From what the use cases say to what is drawn; nothing is computed here but places on the axes.
namespace ohmkin::measure {

struct Pictured {
  std::vector<curve::Sample> samples;  ///< as the fit had them, where there is one
  const curve::Fit* fit = nullptr;
  const bench::Identification* whose = nullptr;
  std::optional<std::size_t> claimed;
  std::optional<Temperature> next;
};

CurvePicture pictureOf(const workflow::BenchFamilies& families, const Pictured& pictured, const DisplayUnits& units);
/// The likeliest first, "none of these" where it stands; those hardly possible are gathered.
std::vector<SuspectRow> suspectsOf(const workflow::BenchFamilies& families, const bench::Identification& whose,
                                   std::optional<std::size_t> claimed);

}  // namespace ohmkin::measure
