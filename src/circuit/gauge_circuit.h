#pragma once
#include <circuit/network.h>
#include <curve/curve.h>
#include <finding/finding.h>
#include <gauge/gauge.h>
#include <array>
#include <limits>
#include <string_view>

/// The whole circuit of a temperature gauge as one resistive network: battery, key, fuse, feed, printed board,
/// regulator where there is one, gauge, lead, connector, sender at the engine's temperature, thread, grounds, a second
/// gauge of the same kind and the lamps that share the ground. Whatever may fail is a part of it from the start, at 0
/// or infinite ohms.
namespace ohmkin::circuit {

/// The places a meter can touch.
enum class Post {
  earth,  ///< grounded battery post
  battery,
  ignition,  ///< behind the key switch
  fused,
  boardFeed,  ///< feed pin of the board
  regulatorIn,
  gaugeFeed,  ///< also the regulator's output
  gaugeSender,
  boardLead,  ///< pin of the board where the lead begins
  leadEnd,    ///< at the engine, before the connector
  senderTerminal,
  hex,
  engine,
  gaugeGround,
  cluster,  ///< its case and common ground
  body,
  otherSender,
  regulatorCase
};
inline constexpr std::size_t kPosts = 18;

/// What joins them, in the order of the current.
enum class Part {
  battery,
  keySwitch,
  fuse,
  feed,
  feedTrack,
  regulator,
  regulatorCase,
  feedCoil,  ///< of a bimetal: its heater
  groundCoil,
  feedShunt,    ///< across the posts feed – sender
  groundShunt,  ///< across the posts sender – ground
  groundTrack,
  clusterGround,
  bodyGround,
  senderTrack,
  lead,
  connector,
  sender,
  thread,
  strap,  ///< engine block to battery
  leadToChassis,
  boardLeak,  ///< damp or dirt between feed and lead on the board
  lamps,
  engineLoad,  ///< ignition: its current comes back through the strap
  bodyLoad,    ///< what else is on: its current comes back through the body
  otherFeedCoil,
  otherGroundCoil,
  otherSender,
  // What a tester adds.
  probe,         ///< unplugged lead to the battery post
  box,           ///< gauge's sender post to the battery post
  groundJumper,  ///< gauge's ground post to the battery post
  directFeed,    ///< battery to the gauge's feed post
  directLead     ///< gauge's sender post to the sender's terminal
};
inline constexpr std::size_t kParts = 33;
std::string_view partCode(Part part);  ///< "cluster-ground": stable, as the data files have it
std::string_view partName(Part part);  ///< "the ground of the cluster"
std::optional<Part> partOf(std::string_view code);
std::optional<Post> postOf(std::string_view code);

inline constexpr double kOpen = std::numeric_limits<double>::infinity();

/// What may differ from one moment or one fault to the next.
struct Condition {
  std::array<double, kParts> ohms{};  ///< of each part; 0 … infinite
  double coolantKelvin = 0;           ///< true, in the engine
  double tipKelvin = 0;               ///< at the sender's tip: another one where it hangs in air
  double senderFactor = 1;            ///< its ohms against those of its curve; ohms[sender] are in series with them
  std::optional<double> stuckAt;      ///< place of a needle that does not turn
  bool levelLow = false;
  bool reversed = false;         ///< feed and ground of the gauge exchanged
  bool regulatorHolds = true;    ///< false: its contact as ohms[regulator] says, 0 stuck closed, infinite dead
  std::optional<double> supply;  ///< volts; none: the circuit's own
};

struct CircuitFacts {
  gauge::Gauge gauge;
  curve::Curve sender;
  Temperature running = celsius(88);               ///< where a warm engine stands
  Volts supply = volts(12.6);                      ///< of the battery, engine off
  std::optional<double> restPlace = std::nullopt;  ///< where the needle goes with the key off, where that is known
  /// On the gauge's own posts, where it has them; above the coils' ohms at the posts.
  std::optional<Ohms> feedShunt = std::nullopt;
  std::optional<Ohms> groundShunt = std::nullopt;
};

/// Where the needle stands as a part of the way from the cold end of the dial (0) to the hot mark (1).
struct Needle {
  double place = 0;
  bool torque = true;  ///< false: no current turns it, and it stays where it was or goes to its rest
};

class GaugeCircuit {
 public:
  /// Coil ohms that are not known are assumed (0.94 and 1.67 of the ohms at half the sweep), a movement that is not
  /// known is taken for a crossed coil true to its family; findings() says so. Both from memory, no source, as are the
  /// ohms of good wires, tracks and grounds. Refuses a shunt not above the coil's ohms at the posts, a running
  /// temperature off the sender's curve or off the dial, a supply outside 6–30 V or not above the regulator's.
  static Expected<GaugeCircuit> make(const CircuitFacts& facts);

  [[nodiscard]] const Condition& healthy() const { return healthy_; }
  [[nodiscard]] bool regulated() const { return regulated_; }
  [[nodiscard]] bool needleStays() const { return stays_; }  ///< without current, where it was
  [[nodiscard]] double restPlace() const { return rest_; }   ///< without current, otherwise
  [[nodiscard]] double senderOhms(Temperature t) const;      ///< of the sender meant for it
  [[nodiscard]] const CircuitFacts& facts() const { return facts_; }
  [[nodiscard]] const std::vector<Finding>& findings() const { return findings_; }

  [[nodiscard]] Network network(const Condition& condition) const;
  [[nodiscard]] Needle needle(const Condition& condition, const Solution& solution) const;
  [[nodiscard]] Needle otherNeedle(const Solution& solution) const;
  /// Of a supply on the bench: the regulator's where the gauge has one.
  [[nodiscard]] double benchVolts() const;
  /// Where the dial has this temperature, or the stop it would pass.
  [[nodiscard]] double placeOf(Temperature t) const;

 private:
  explicit GaugeCircuit(CircuitFacts facts);
  Expected<void> settleMovement();
  Expected<void> settleCoils(const gauge::CrossedCoil& coil, Ohms feedCoil, Ohms groundCoil);
  void settleFields(const gauge::CrossedCoil& coil, double feedAtPosts, double groundAtPosts);
  void assumeCoils(Ohms half, std::string_view what);
  void settleWires();
  [[nodiscard]] double& at(Part part) { return healthy_.ohms[static_cast<std::size_t>(part)]; }
  [[nodiscard]] Needle turned(double feedAmperes, double groundAmperes) const;
  [[nodiscard]] Needle byCoilFields(double feedAmperes, double groundAmperes) const;
  [[nodiscard]] double placeAt(double degrees) const { return (degrees - cold_) / (hot_ - cold_); }

  CircuitFacts facts_;
  Condition healthy_;
  bool regulated_ = false;
  bool stays_ = true;
  double rest_ = 0;
  double cold_ = 0;  ///< degrees at place 0 and 1
  double hot_ = 1;
  double feedCoil_ = 0;  ///< ohms, at the posts
  double groundCoil_ = 0;
  double otherSender_ = 0;
  /// Field an ampere through each coil makes, and a return magnet's: clockwise from straight up, (sine, cosine).
  using Field = std::array<double, 2>;
  std::optional<std::array<Field, 2>> coilFields_;
  Field magnet_{};
  double fullCurrent_ = 1;  ///< through the feed coil, lead grounded, at the circuit's supply
  std::vector<Finding> findings_;
};

}  // namespace ohmkin::circuit
