#include <curve/beta_law.h>
#include <fmt/format.h>
#include <cmath>

namespace ohmkin::curve {

Expected<BetaLaw> BetaLaw::make(const Beta& model, KelvinSpan) {
  const double r0 = inOhms(model.r0);
  const double t0 = inKelvin(model.t0);
  if (!std::isfinite(r0) || r0 <= 0 || !std::isfinite(t0) || t0 <= 0 || !std::isfinite(model.b))
    return refuse("curve-numbers", "curve", fmt::format("r0 = {:g} Ω, t0 = {:g} K, b = {:g} K", r0, t0, model.b),
                  "a B-parameter curve with r0 above 0 Ω and t0 above 0 K, all finite");
  if (model.b == 0)
    return refuse("curve-not-monotone", "curve", "b = 0", "a b other than 0, so that resistance changes");
  BetaLaw law;
  law.lnR0_ = std::log(r0);
  law.t0_ = t0;
  law.b_ = model.b;
  return law;
}

void BetaLaw::gradient(double kelvin, std::span<double> out) const {
  out[0] = std::exp(-lnR0_);
  out[1] = b_ / (t0_ * t0_);
  out[2] = 1.0 / kelvin - 1.0 / t0_;
}

}  // namespace ohmkin::curve
