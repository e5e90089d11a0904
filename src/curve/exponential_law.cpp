#include <curve/exponential_law.h>
#include <fmt/format.h>
#include <cmath>

namespace ohmkin::curve {

Expected<ExponentialLaw> ExponentialLaw::make(const Exponential& model, KelvinSpan span) {
  if (!std::isfinite(model.a) || model.a <= 0 || !std::isfinite(model.b) || !std::isfinite(model.c))
    return refuse("curve-numbers", "curve", fmt::format("a = {:g}, b = {:g}, c = {:g}", model.a, model.b, model.c),
                  "a above 0 Ω, and all three finite");
  if (model.b == 0)
    return refuse("curve-not-monotone", "curve", "b = 0", "a b other than 0, so that resistance changes");
  if ((span.low + model.c) * (span.high + model.c) <= 0)
    return refuse("curve-not-monotone", "curve", fmt::format("a pole at {:.2f} K", -model.c),
                  "a curve a·exp(b/(T + c)) whose pole at T = −c lies outside the span");
  ExponentialLaw law;
  law.a_ = model.a;
  law.lnA_ = std::log(model.a);
  law.b_ = model.b;
  law.c_ = model.c;
  return law;
}

void ExponentialLaw::gradient(double kelvin, std::span<double> out) const {
  const double shifted = kelvin + c_;
  out[0] = 1.0 / a_;
  out[1] = 1.0 / shifted;
  out[2] = -b_ / (shifted * shifted);
}

}  // namespace ohmkin::curve
