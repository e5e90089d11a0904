#pragma once
#include <curve/model.h>
#include <string>
#include <string_view>

/// Models as the catalogue and exchange files keep them: a name and numbers separated by blanks, in the order of the
/// model's members.
///
///   beta            r0 (Ω)  t0 (K)  b (K)
///   steinhart-hart  c0 c1 [c2 [c3]]
///   exponential     a (Ω)  b (K)  c (K)
///   polynomial      r0 (Ω)  a1 a2 …  [c=Van Dusen's coefficient]
///   table           T (K) R (Ω) T R …, by rising temperature, at least four pairs
namespace ohmkin::curve {

/// Reads the form only; whether the curve is monotone over a span is for Curve::make. `where` names the cell in the
/// refusal.
Expected<Model> modelFrom(std::string_view name, std::string_view coefficients, std::string_view where = {});

std::string_view textName(const Model& model);  ///< "beta", "steinhart-hart", …
/// The shortest numbers that read back to the same doubles.
std::string coefficientText(const Model& model);
/// The law with its numbers, for a person: "R = 102 Ω · exp(3126 K · (1/T − 1/330.4 K))". Six digits; a person who
/// needs all of them takes coefficientText().
std::string equationText(const Model& model);

}  // namespace ohmkin::curve
