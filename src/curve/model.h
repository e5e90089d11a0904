#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <array>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

/// The resistance–temperature models, as plain numbers.
namespace ohmkin::curve {

/// R = r0·exp(b·(1/T − 1/t0)); IEC 60539-1. Two points decide it.
struct Beta {
  Ohms r0;
  Temperature t0;
  double b;  ///< K; above 0 for a falling curve
};

/// 1/T = c0 + c1·L + c2·L³ with L = ln(R/Ω); Steinhart and Hart, Deep-Sea Research 15 (1968) 497. Two terms leave c2 at
/// 0; four terms add c3·L² (the form with all powers).
struct SteinhartHart {
  std::array<double, 4> c;
  int terms = 3;  ///< 2, 3 or 4
};

/// R = a·exp(b/(T + c)), T in kelvin: the form of NIST StRD MGH10.
struct Exponential {
  double a;  ///< Ω
  double b;  ///< K
  double c;  ///< K
};

/// R = r0·(1 + a1·t + a2·t² + …), t in °C; two coefficients are the Callendar–Van Dusen form of IEC 60751 above 0 °C.
/// For below 0 °C the standard's third term c·(t − 100)·t³ is `vanDusen`.
struct Polynomial {
  Ohms r0;
  std::vector<double> a;
  double vanDusen = 0;
};

/// Monotone piecewise cubic (PCHIP) in (1/T, ln R) through at least four measured points.
struct MonotoneTable {
  std::vector<std::pair<Temperature, Ohms>> points;  ///< by rising temperature
};

using Model = std::variant<Beta, SteinhartHart, Exponential, Polynomial, MonotoneTable>;

}  // namespace ohmkin::curve
