#pragma once
#include <finding/refusal.h>
#include <gauge/gauge.h>
#include <quantity/quantity.h>
#include <optional>
#include <string>

/// Resistors added between the lead and the gauge's sender post (behind the dash, never on the head), so that a sender
/// of another family reads better.
namespace ohmkin::pairing {

enum class Topology {
  none,
  series,              ///< R + s
  parallel,            ///< R ∥ p, from sender post to ground
  parallelThenSeries,  ///< (R ∥ p) + s
  seriesThenParallel,  ///< (R + s) ∥ p
  feedToSender         ///< x from the feed post to the sender post; changes the movement, not the ohms (fused)
};

class TrimNetwork {
 public:
  TrimNetwork() = default;  ///< none
  // Resistances above 0 and finite; the caller sees to it (makeNetwork checks what people type).
  static TrimNetwork series(Ohms s) { return {Topology::series, s, {}, {}}; }
  static TrimNetwork parallel(Ohms p) { return {Topology::parallel, {}, p, {}}; }
  static TrimNetwork parallelThenSeries(Ohms p, Ohms s) { return {Topology::parallelThenSeries, s, p, {}}; }
  static TrimNetwork seriesThenParallel(Ohms s, Ohms p) { return {Topology::seriesThenParallel, s, p, {}}; }
  static TrimNetwork feedToSender(Ohms x) { return {Topology::feedToSender, {}, {}, x}; }

  [[nodiscard]] Topology topology() const { return topology_; }
  [[nodiscard]] bool hasSeries() const;
  [[nodiscard]] bool hasParallel() const;
  [[nodiscard]] int parts() const;                               ///< how many resistors
  [[nodiscard]] Ohms seriesOhms() const { return series_; }      ///< 0 where there is none
  [[nodiscard]] Ohms parallelOhms() const { return parallel_; }  ///< 0 where there is none
  [[nodiscard]] Ohms feedOhms() const { return feed_; }          ///< 0 where there is none

  /// Ohms the gauge's sender post sees for these at the sender, 0 … ∞. Feed-to-sender leaves them as they are: see
  /// trimmed().
  [[nodiscard]] Ohms seen(Ohms sender) const;
  /// The sender behind what the post sees; none where no sender above 0 Ω and below ∞ makes it that.
  [[nodiscard]] std::optional<Ohms> senderBehind(Ohms seen) const;
  /// d ln seen / d ln of the sender, the series and the parallel resistor.
  struct Sensitivity {
    double sender = 1;
    double series = 0;
    double parallel = 0;
  };
  [[nodiscard]] Sensitivity sensitivity(Ohms sender) const;

  /// "510 Ω in parallel", "(sender ∥ 510 Ω) + 12 Ω", "1.2 kΩ from feed to sender post", "no resistor"
  [[nodiscard]] std::string name() const;

  friend bool operator==(const TrimNetwork&, const TrimNetwork&) = default;

 private:
  TrimNetwork(Topology topology, Ohms series, Ohms parallel, Ohms feed)
      : topology_(topology), series_(series), parallel_(parallel), feed_(feed) {}
  Topology topology_ = Topology::none;
  Ohms series_;
  Ohms parallel_;
  Ohms feed_;
};

/// Refuses resistances that are not above 0 and finite, or one that the topology does not have.
Expected<TrimNetwork> makeNetwork(Topology topology, Ohms series, Ohms parallel, Ohms feed);

/// The gauge with the network's feed resistor fitted (P' = P + C·RA/x, C the sender–ground coil); the gauge itself for
/// every other topology. Refuses feed-to-sender where the movement is not a crossed coil with both coils' ohms known.
Expected<gauge::Gauge> trimmed(const gauge::Gauge& gauge, const TrimNetwork& network);

}  // namespace ohmkin::pairing
