#include <circuit/gauge_circuit.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::circuit {
namespace {

constexpr double kTorque = 0.03;  // of the field with the lead grounded: less does not overcome friction (memory)
constexpr double kFeedCoilOfHalf = 0.94;
constexpr double kGroundCoilOfHalf = 1.67;

/// Ohms of good wires, tracks, contacts and grounds, and of the usual loads. From memory, no source.
struct Usual {
  Part part;
  double ohms;
};
constexpr std::array kUsual{
    Usual{Part::battery, 0.02},        Usual{Part::keySwitch, 0.02},     Usual{Part::fuse, 0.01},
    Usual{Part::feed, 0.05},           Usual{Part::feedTrack, 0.02},     Usual{Part::regulatorCase, 0.02},
    Usual{Part::groundTrack, 0.01},    Usual{Part::clusterGround, 0.02}, Usual{Part::bodyGround, 0.005},
    Usual{Part::senderTrack, 0.02},    Usual{Part::lead, 0.1},           Usual{Part::connector, 0.02},
    Usual{Part::strap, 0.003},         Usual{Part::engineLoad, 3},       Usual{Part::bodyLoad, 6},
    Usual{Part::leadToChassis, kOpen}, Usual{Part::boardLeak, kOpen},    Usual{Part::lamps, kOpen},
    Usual{Part::probe, kOpen},         Usual{Part::box, kOpen},          Usual{Part::groundJumper, kOpen},
    Usual{Part::directFeed, kOpen},    Usual{Part::directLead, kOpen},   Usual{Part::feedShunt, kOpen},
    Usual{Part::groundShunt, kOpen}};

struct Ends {
  Post from;
  Post to;
};
constexpr std::array<Ends, kParts> kEnds{{
    {Post::battery, Post::earth},
    {Post::battery, Post::ignition},
    {Post::ignition, Post::fused},
    {Post::fused, Post::boardFeed},
    {Post::boardFeed, Post::regulatorIn},
    {Post::regulatorIn, Post::gaugeFeed},
    {Post::regulatorCase, Post::cluster},
    {Post::gaugeFeed, Post::gaugeSender},
    {Post::gaugeSender, Post::gaugeGround},
    {Post::gaugeFeed, Post::gaugeSender},
    {Post::gaugeSender, Post::gaugeGround},
    {Post::gaugeGround, Post::cluster},
    {Post::cluster, Post::body},
    {Post::body, Post::earth},
    {Post::gaugeSender, Post::boardLead},
    {Post::boardLead, Post::leadEnd},
    {Post::leadEnd, Post::senderTerminal},
    {Post::senderTerminal, Post::hex},
    {Post::hex, Post::engine},
    {Post::engine, Post::earth},
    {Post::leadEnd, Post::body},
    {Post::boardFeed, Post::boardLead},
    {Post::battery, Post::cluster},
    {Post::ignition, Post::engine},
    {Post::ignition, Post::body},
    {Post::gaugeFeed, Post::otherSender},
    {Post::otherSender, Post::cluster},
    {Post::otherSender, Post::body},
    {Post::leadEnd, Post::earth},
    {Post::gaugeSender, Post::earth},
    {Post::gaugeGround, Post::earth},
    {Post::battery, Post::gaugeFeed},
    {Post::gaugeSender, Post::senderTerminal},
}};

constexpr std::size_t index(Part part) { return static_cast<std::size_t>(part); }
constexpr Node nodeOf(Post post) { return static_cast<Node>(post); }

tl::unexpected<Refusal> wrong(std::string where, double found, std::string expected) {
  return refuse("circuit-out-of-range", std::move(where), fmt::format("{:g}", found), std::move(expected));
}

/// A coil at the posts is the coil beside its shunt.
Expected<double> besides(double atPosts, const std::optional<Ohms>& shunt, std::string where) {
  if (!shunt) return atPosts;
  if (!(inOhms(*shunt) > atPosts))
    return wrong(std::move(where), inOhms(*shunt), fmt::format("more than the {:g} Ω measured at the posts", atPosts));
  return 1 / (1 / atPosts - 1 / inOhms(*shunt));
}

/// The reversed gauge keeps its coils and shunts, with their ends on each other's posts.
Ends turnedOver(Ends ends) {
  const auto other = [](Post post) {
    if (post == Post::gaugeFeed) return Post::gaugeGround;
    return post == Post::gaugeGround ? Post::gaugeFeed : post;
  };
  return {other(ends.from), other(ends.to)};
}

bool ofTheGauge(Part part) {
  return part == Part::feedCoil || part == Part::groundCoil || part == Part::feedShunt || part == Part::groundShunt;
}

}  // namespace

GaugeCircuit::GaugeCircuit(CircuitFacts facts) : facts_(std::move(facts)) {
  const gauge::Dial& dial = facts_.gauge.dial();
  cold_ = dial.marks().front().angle.degrees;
  hot_ = dial.angleOf(dial.hotMark()).degrees;
}

Expected<GaugeCircuit> GaugeCircuit::make(const CircuitFacts& facts) {
  GaugeCircuit made(facts);
  const double supply = inVolts(facts.supply);
  if (!(supply >= 6 && supply <= 30)) return wrong("supply", supply, "volts of the battery from 6 to 30");
  if (!facts.sender.resistance(facts.running))
    return wrong("running temperature", inCelsius(facts.running), "°C that the sender's curve answers for");
  const double place = made.placeOf(facts.running);
  if (!(place > 0.05 && place < 0.95))
    return wrong("running temperature", inCelsius(facts.running),
                 "°C between the cold end of the dial and its hot mark");
  made.settleWires();
  if (const auto ok = made.settleMovement(); !ok) return tl::make_unexpected(ok.error());
  if (facts.restPlace && !made.regulated_) {
    made.stays_ = false;
    made.rest_ = *facts.restPlace;
  }
  return made;
}

void GaugeCircuit::settleWires() {
  for (const Usual& usual : kUsual) at(usual.part) = usual.ohms;
  healthy_.coolantKelvin = inKelvin(facts_.running);
  healthy_.tipKelvin = healthy_.coolantKelvin;
}

Expected<void> GaugeCircuit::settleMovement() {
  const auto& movement = facts_.gauge.movement();
  const auto* bimetal = movement ? std::get_if<gauge::Bimetal>(&*movement) : nullptr;
  if (bimetal != nullptr) {
    if (inVolts(facts_.supply) <= inVolts(bimetal->regulated) + 0.5)
      return wrong("supply", inVolts(facts_.supply), "volts above those of the regulator");
    regulated_ = true;
    stays_ = false;
    rest_ = placeAt(bimetal->rest.degrees);
    feedCoil_ = inOhms(bimetal->heater);
    groundCoil_ = kOpen;
    otherSender_ = senderOhms(facts_.running);
    fullCurrent_ = inVolts(bimetal->regulated) / feedCoil_;
    at(Part::feedCoil) = feedCoil_;
    at(Part::groundCoil) = kOpen;
  } else if (const auto* coil = movement ? std::get_if<gauge::CrossedCoil>(&*movement) : nullptr; coil != nullptr) {
    if (!coil->feedCoil || !coil->groundCoil) assumeCoils(coil->half, "the ohms of both coils are not known");
    const auto settled = settleCoils(*coil, coil->feedCoil && coil->groundCoil ? *coil->feedCoil : ohms(feedCoil_),
                                     coil->feedCoil && coil->groundCoil ? *coil->groundCoil : ohms(groundCoil_));
    if (!settled) return settled;
  } else {
    assumeCoils(ohms(senderOhms(facts_.running)), "the movement's coils are not known");
    at(Part::feedCoil) = feedCoil_;
    at(Part::groundCoil) = groundCoil_;
    fullCurrent_ = inVolts(facts_.supply) / feedCoil_;
  }
  if (!regulated_ && otherSender_ == 0) otherSender_ = groundCoil_ / kGroundCoilOfHalf;
  at(Part::otherFeedCoil) = feedCoil_;
  at(Part::otherGroundCoil) = groundCoil_;
  at(Part::otherSender) = otherSender_;
  return {};
}

void GaugeCircuit::assumeCoils(Ohms half, std::string_view what) {
  feedCoil_ = kFeedCoilOfHalf * inOhms(half);
  groundCoil_ = kGroundCoilOfHalf * inOhms(half);
  findings_.push_back({"coils-assumed", Severity::note,
                       fmt::format("Volts and ohms at the gauge's posts are rough: {}, so {:.0f} Ω from feed to sender "
                                   "and {:.0f} Ω from sender to ground are assumed.",
                                   what, feedCoil_, groundCoil_),
                       "", kFromMemory});
}

Expected<void> GaugeCircuit::settleCoils(const gauge::CrossedCoil& coil, Ohms feedCoil, Ohms groundCoil) {
  feedCoil_ = inOhms(feedCoil);
  groundCoil_ = inOhms(groundCoil);
  const auto feed = besides(feedCoil_, facts_.feedShunt, "shunt from feed to sender post");
  if (!feed) return tl::make_unexpected(feed.error());
  const auto ground = besides(groundCoil_, facts_.groundShunt, "shunt from sender to ground post");
  if (!ground) return tl::make_unexpected(ground.error());
  at(Part::feedCoil) = *feed;
  at(Part::groundCoil) = *ground;
  if (facts_.feedShunt) at(Part::feedShunt) = inOhms(*facts_.feedShunt);
  if (facts_.groundShunt) at(Part::groundShunt) = inOhms(*facts_.groundShunt);
  settleFields(coil, feedCoil_, groundCoil_);
  return {};
}

// Field ∝ Q + Rs·P; tapped coils: Q = RB·a, P = a + b (a, b: field by an ampere through the posts feed–sender and
// sender–ground). |Q| = 1, |P| = 1/half. A shunt takes part of the posts' current past its coil, so the coil itself
// makes that much more of a field by the ampere.
void GaugeCircuit::settleFields(const gauge::CrossedCoil& coil, double feedAtPosts, double groundAtPosts) {
  const auto towards = [](double degrees) {
    return Field{std::sin(degrees * kRadiansPerDegree), std::cos(degrees * kRadiansPerDegree)};
  };
  const Field q = towards(coil.grounded.degrees);
  const Field p = towards((coil.grounded + coil.sweep).degrees);
  Field a{};
  Field b{};
  for (const std::size_t axis : {0U, 1U}) {
    a[axis] = q[axis] / groundAtPosts;
    b[axis] = p[axis] / inOhms(coil.half) - a[axis];
    a[axis] *= at(Part::feedCoil) / feedAtPosts;
    b[axis] *= at(Part::groundCoil) / groundAtPosts;
  }
  coilFields_ = {a, b};
  fullCurrent_ = inVolts(facts_.supply) / at(Part::feedCoil);
  if (!coil.magnet) return;
  stays_ = false;
  const Field pull = towards(coil.magnet->pull.degrees);
  const double strength = coil.magnet->strength * std::hypot(a[0], a[1]) * gauge::kStandardVolts / at(Part::feedCoil);
  magnet_ = {pull[0] * strength, pull[1] * strength};
  rest_ = std::clamp(placeAt(facts_.gauge.dial().onStops(coil.magnet->pull).degrees), -0.2, 1.2);
}

double GaugeCircuit::senderOhms(Temperature t) const { return std::exp(facts_.sender.lnOhms(inKelvin(t))); }

double GaugeCircuit::placeOf(Temperature t) const {
  const gauge::Dial& dial = facts_.gauge.dial();
  return placeAt(dial.onStops(dial.angleOf(t)).degrees);
}

double GaugeCircuit::benchVolts() const {
  if (!regulated_) return inVolts(facts_.supply);
  return inVolts(std::get<gauge::Bimetal>(*facts_.gauge.movement()).regulated);
}

Network GaugeCircuit::network(const Condition& condition) const {
  Network network;
  network.nodes = static_cast<int>(kPosts);
  network.resistors.reserve(kParts);
  for (std::size_t i = 0; i < kParts; ++i) {
    const Part part{static_cast<int>(i)};
    const Ends ends = condition.reversed && ofTheGauge(part) ? turnedOver(kEnds[i]) : kEnds[i];
    network.resistors.push_back({nodeOf(ends.from), nodeOf(ends.to), condition.ohms[i], 0});
  }
  network.resistors[index(Part::battery)].volts = condition.supply.value_or(inVolts(facts_.supply));
  network.resistors[index(Part::sender)].ohms +=
      std::exp(facts_.sender.lnOhms(condition.tipKelvin)) * condition.senderFactor;
  if (regulated_ && condition.regulatorHolds) {
    network.resistors[index(Part::regulator)].ohms = kOpen;
    network.regulators.push_back(
        {nodeOf(Post::regulatorIn), nodeOf(Post::gaugeFeed), nodeOf(Post::regulatorCase), benchVolts(), 0.05});
  }
  return network;
}

Needle GaugeCircuit::byCoilFields(double feedAmperes, double groundAmperes) const {
  const auto& [a, b] = *coilFields_;
  const Field coils{a[0] * feedAmperes + b[0] * groundAmperes, a[1] * feedAmperes + b[1] * groundAmperes};
  const double full = std::hypot(a[0], a[1]) * fullCurrent_;
  const bool torque = std::hypot(coils[0], coils[1]) > kTorque * full;
  if (!torque) return {rest_, false};
  const double degrees = std::atan2(coils[0] + magnet_[0], coils[1] + magnet_[1]) / kRadiansPerDegree;
  // Counted from the middle of the dial, so that a needle past a stop stays on that side.
  const double middle = (cold_ + hot_) / 2;
  const double counted = middle + std::remainder(degrees - middle, 360);
  return {placeAt(facts_.gauge.dial().onStops({counted}).degrees), true};
}

Needle GaugeCircuit::turned(double feedAmperes, double groundAmperes) const {
  if (coilFields_) return byCoilFields(feedAmperes, groundAmperes);
  const auto& dial = facts_.gauge.dial();
  if (regulated_) {
    const auto& bimetal = std::get<gauge::Bimetal>(*facts_.gauge.movement());
    const double share = feedAmperes / fullCurrent_;
    const double degrees = bimetal.rest.degrees + (bimetal.grounded - bimetal.rest).degrees * share * share;
    return {placeAt(dial.onStops({degrees}).degrees), std::abs(share) > kTorque};
  }
  // Known by its readings only: what ohms in the sender's place part the current between the coils so?
  if (std::abs(feedAmperes) < kTorque * fullCurrent_) return {rest_, false};
  const double part = groundAmperes / feedAmperes;
  const double felt = part >= 1 ? kOpen : std::max(0.0, groundCoil_ * part / (1 - part));
  return {placeAt(facts_.gauge.indicated(ohms(felt)).needle.degrees), true};
}

Needle GaugeCircuit::needle(const Condition& condition, const Solution& solution) const {
  if (condition.stuckAt) return {*condition.stuckAt, true};
  return turned(solution.amperes(index(Part::feedCoil)).value_or(0),
                solution.amperes(index(Part::groundCoil)).value_or(0));
}

Needle GaugeCircuit::otherNeedle(const Solution& solution) const {
  return turned(solution.amperes(index(Part::otherFeedCoil)).value_or(0),
                solution.amperes(index(Part::otherGroundCoil)).value_or(0));
}

}  // namespace ohmkin::circuit
