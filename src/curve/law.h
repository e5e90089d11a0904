#pragma once
#include <curve/beta_law.h>
#include <curve/exponential_law.h>
#include <curve/polynomial_law.h>
#include <curve/steinhart_hart_law.h>
#include <curve/table_law.h>

/// A model made ready over a span: checked to be finite, positive and strictly monotone there, with what its inner
/// loops need worked out.
namespace ohmkin::curve {

using Law = std::variant<BetaLaw, SteinhartHartLaw, ExponentialLaw, PolynomialLaw, TableLaw>;

/// Refuses where the model is not strictly monotone and positive over the span or its numbers are not finite.
Expected<Law> lawOf(const Model& model, KelvinSpan span);

}  // namespace ohmkin::curve
