#include <pairing/allowed_ohms.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmkin::pairing {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kHair = 1e-7;  // relative; wider than any gauge's inverse is wrong
// The first seven of 25 stand evenly over the band, and the errors between them are hardly worse: more would rule out
// little and take as long each.
constexpr std::size_t kBounding = 7;

}  // namespace

AllowedOhms::AllowedOhms(const gauge::Gauge& gauge, const Stations& stations, double lowWeight)
    : gauge_(&gauge),
      stations_(&stations),
      bounding_(std::min(stations.size(), kBounding)),
      lowWeight_(lowWeight),
      shownGrounded_(gauge.shownAtOhms(0)),
      shownOpen_(gauge.shownAtOhms(kInfinite)),
      falls_(shownOpen_ < shownGrounded_),
      hotLow_(0),
      hotHigh_(kInfinite) {
  widen();
  if (!stations.hotBy) return;
  const double atTheMark = ohmsShowing(stations.hotBy->mark);
  if (falls_) hotHigh_ = atTheMark * (1 + kHair);
  else hotLow_ = atTheMark * (1 - kHair);
}

void AllowedOhms::widen() {
  low_.assign(bounding_, 0);
  high_.assign(bounding_, kInfinite);
}

double AllowedOhms::ohmsShowing(double k) const {
  if (falls_ ? k >= shownGrounded_ : k <= shownGrounded_) return 0;
  if (falls_ ? k <= shownOpen_ : k >= shownOpen_) return kInfinite;
  if (const auto found = gauge_->ohmsAt(kelvin(k))) return inOhms(*found);
  // Off the scale the gauge gives no ohms back; halving does.
  double less = std::log(1e-9);
  double more = std::log(1e12);
  for (int i = 0; i < 60; ++i) {
    const double middle = (less + more) / 2;
    const bool tooLow = gauge_->shownKelvin(middle) < k;
    (tooLow == falls_ ? more : less) = middle;
  }
  return std::exp((less + more) / 2);
}

void AllowedOhms::narrowTo(double target) {
  for (std::size_t i = 0; i < bounding_; ++i) {
    const double hottest = ohmsShowing(stations_->kelvin[i] + target);
    const double coldest = ohmsShowing(stations_->kelvin[i] - target / lowWeight_);
    low_[i] = std::min(hottest, coldest) * (1 - kHair);
    high_[i] = std::max(hottest, coldest) * (1 + kHair);
  }
}

}  // namespace ohmkin::pairing
