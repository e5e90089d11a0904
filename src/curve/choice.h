#pragma once
#include <curve/trial.h>

/// Which form the readings call for, and why.
namespace ohmkin::curve {

struct Choice {
  Trial trial;
  std::string reason;
  std::vector<Candidate> candidates;
};

/// Tries what may suit a falling or a rising run. Readings that the most flexible form casts out are left out of the
/// comparison of all.
Expected<Choice> choose(const Readings& readings, bool robust);
/// The form the person asked for, whatever another would do.
Expected<Choice> asAsked(Form form, const Readings& readings, bool robust);

}  // namespace ohmkin::curve
