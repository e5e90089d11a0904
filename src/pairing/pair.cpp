#include <pairing/pair.h>

#include <cmath>

namespace ohmkin::pairing {
namespace {

bool isStandard(const gauge::Conditions& c) {
  const gauge::Conditions standard;
  return c.cluster == standard.cluster && c.supply == standard.supply && c.regulatorWorks == standard.regulatorWorks &&
         c.groundRise == standard.groundRise && c.groundOhms == standard.groundOhms;
}

}  // namespace

Pair::Pair(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
           const gauge::Conditions& conditions)
    : gauge_(&gauge), sender_(&sender), trim_(trim), conditions_(conditions), standard_(isStandard(conditions)) {}

Expected<Pair> Pair::make(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                          const gauge::Conditions& conditions) {
  Pair out(gauge, sender, trim, conditions);
  if (trim.topology() == Topology::feedToSender) {
    auto altered = trimmed(gauge, trim);
    if (!altered) return tl::make_unexpected(altered.error());
    out.altered_ = std::move(*altered);
  }
  return out;
}

Ohms Pair::senderOhms(double kelvin) const { return ohms(std::exp(sender_->lnOhms(kelvin))); }

double Pair::shownFor(Ohms seen) const {
  return standard_ ? gauge().shownAtOhms(inOhms(seen)) : inKelvin(gauge().indicated(seen, conditions_).shown);
}

double Pair::shownSlope(Ohms seen) const {
  if (standard_) return gauge().shownSlope(std::log(inOhms(seen)));
  constexpr double kStep = 1e-5;
  return (shownFor(seen * std::exp(kStep)) - shownFor(seen * std::exp(-kStep))) / (2 * kStep);
}

double Pair::gain(double kelvin) const {
  const Ohms sender = senderOhms(kelvin);
  return shownSlope(trim_.seen(sender)) * trim_.sensitivity(sender).sender * sender_->lnOhmsSlope(kelvin);
}

}  // namespace ohmkin::pairing
