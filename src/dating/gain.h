#pragma once
#include <span>
#include <vector>

namespace ohmkin::dating {

/// Shannon entropy in bits of a discrete distribution (Shannon 1948, Bell System Technical Journal 27, 379). Weights
/// need not sum to 1.
double entropyBits(std::span<const double> weights);

/// Bits an observation is expected to take off the entropy of `prior`: outcomes[o][s] is the probability of seeing
/// outcome o if state s is true; for each s they sum to 1. The mutual information of state and outcome, never below 0.
double expectedGainBits(std::span<const double> prior, std::span<const std::vector<double>> outcomes);

}  // namespace ohmkin::dating
