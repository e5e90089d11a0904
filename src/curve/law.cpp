#include <curve/law.h>

namespace ohmkin::curve {
namespace {

template <class L>
Expected<Law> widened(Expected<L> law) {
  if (!law) return tl::make_unexpected(law.error());
  return Expected<Law>(tl::in_place, std::in_place_type<L>, std::move(*law));
}

struct LawFor {
  KelvinSpan span;
  Expected<Law> operator()(const Beta& model) const { return widened(BetaLaw::make(model, span)); }
  Expected<Law> operator()(const SteinhartHart& model) const { return widened(SteinhartHartLaw::make(model, span)); }
  Expected<Law> operator()(const Exponential& model) const { return widened(ExponentialLaw::make(model, span)); }
  Expected<Law> operator()(const Polynomial& model) const { return widened(PolynomialLaw::make(model, span)); }
  Expected<Law> operator()(const MonotoneTable& model) const { return widened(TableLaw::make(model, span)); }
};

}  // namespace

Expected<Law> lawOf(const Model& model, KelvinSpan span) { return std::visit(LawFor{span}, model); }

}  // namespace ohmkin::curve
