#pragma once
#include <cmath>
#include <cstddef>
#include <numbers>

/// Numbers that share two unknown factors: y_i = f_i·τ + g_i·c + e_i with τ, c ~ N(0, 1) and e_i ~ N(0, noise_i), all
/// independent. Their density and what they say of one more, in time proportional to their number (Woodbury's identity
/// and the determinant lemma, Golub and Van Loan, Matrix Computations, 2.1.4; from memory).
namespace ohmkin::bench {

struct Shares {
  double first = 0;   ///< f
  double second = 0;  ///< g
  double noise = 1;   ///< a variance, above 0
};

class SharedNormal {
 public:
  void add(double y, const Shares& s) {
    const double weight = 1 / s.noise;
    s11_ += s.first * s.first * weight;
    s12_ += s.first * s.second * weight;
    s22_ += s.second * s.second * weight;
    y1_ += s.first * y * weight;
    y2_ += s.second * y * weight;
    yy_ += y * y * weight;
    noises_ *= s.noise;
    if (noises_ < 1e-200) {
      lnNoise_ += std::log(noises_);
      noises_ = 1;
    }
    ++count_;
  }

  [[nodiscard]] double lnDensity() const {
    const double explained = y1_ * firstMean() + y2_ * secondMean();
    return -0.5 * (static_cast<double>(count_) * std::log(2 * std::numbers::pi) + lnNoise_ + std::log(noises_) +
                   std::log(determinant()) + yy_ - explained);
  }

  /// What the numbers so far say of τ and of c.
  [[nodiscard]] double firstMean() const { return ((1 + s22_) * y1_ - s12_ * y2_) / determinant(); }
  [[nodiscard]] double secondMean() const { return ((1 + s11_) * y2_ - s12_ * y1_) / determinant(); }

  /// One more number, given those so far.
  struct Prediction {
    double mean = 0;
    double variance = 1;
  };
  [[nodiscard]] Prediction predict(const Shares& s) const {
    const double known =
        ((1 + s22_) * s.first * s.first - 2 * s12_ * s.first * s.second + (1 + s11_) * s.second * s.second) /
        determinant();
    return {s.first * firstMean() + s.second * secondMean(), s.noise + known};
  }

 private:
  [[nodiscard]] double determinant() const { return (1 + s11_) * (1 + s22_) - s12_ * s12_; }

  double s11_ = 0, s12_ = 0, s22_ = 0, y1_ = 0, y2_ = 0, yy_ = 0;
  double noises_ = 1;  ///< product of the noises not yet in lnNoise_: one logarithm for many
  double lnNoise_ = 0;
  std::size_t count_ = 0;
};

}  // namespace ohmkin::bench
