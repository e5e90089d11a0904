#pragma once
#include <circuit/diagnosis.h>
#include <limits>

/// What a test, or two of them, would tell. Not for other rooms.
namespace ohmkin::circuit {

/// Expected information in bits about which repair is needed: the mutual information of repair and outcome (Cover and
/// Thomas, Elements of Information Theory, 2.4; from memory), given what was seen so far.
class Gain {
 public:
  Gain(const Predictions& predictions, const Posterior& posterior);
  [[nodiscard]] double ofTest(std::size_t test) const;
  [[nodiscard]] double ofBoth(std::size_t test, std::size_t then) const;
  /// Expected loss by the then cheapest repair: Conclusion::expectedLoss.
  [[nodiscard]] double lossAfter(std::size_t test) const;

 private:
  struct Live {
    std::size_t index;
    double weight;  ///< for each of its repairs
    std::size_t repair;
    std::size_t second;
    bool pair;
  };
  const Predictions& predictions_;
  std::size_t repairs_;
  std::vector<Live> live_;
  double now_ = 0;
};

}  // namespace ohmkin::circuit
