#pragma once
#include <circuit/gauge_circuit.h>
#include <QWidget>
#include <vector>

/// The chain opened into its circuit: battery, key switch, fuse, feed, board, regulator, gauge, lead, connector,
/// sender, block and the grounds, in the order of the current.
namespace ohmkin::fault {

/// What is drawn at one place; a place may stand for several parts of the network.
struct PartMark {
  QString name;           ///< under the symbol: "fuse"
  QString likelihood;     ///< "possible"; empty: nothing of it is suspected that is worth a word
  double suspicion = 0;   ///< that something of it is at fault, 0 … 1
  bool examined = false;  ///< by the test in hand
  friend bool operator==(const PartMark&, const PartMark&) = default;
};

/// Places in the drawing; what a gauge does not have is left out.
enum class Place {
  battery,
  keySwitch,
  fuse,
  feed,
  feedPin,
  regulator,
  gauge,  ///< feed coil, or heater
  feedShunt,
  leadPin,
  lead,
  connector,
  sender,
  thread,
  block,  ///< engine: its coolant
  strap,
  groundCoil,
  groundShunt,
  groundPin,  ///< of the gauge on the board, or the ground of the regulator's housing
  clusterGround,
  bodyGround,
  boardLeak,  ///< across the gauge; drawn only where it is looked at or suspected
  leadToChassis
};
inline constexpr std::size_t kPlaces = 22;

struct OpenedCircuit {
  bool regulated = false;
  bool feedShunt = false;
  bool groundShunt = false;
  std::array<PartMark, kPlaces> places;
  [[nodiscard]] const PartMark& at(Place place) const { return places[static_cast<std::size_t>(place)]; }
  [[nodiscard]] PartMark& at(Place place) { return places[static_cast<std::size_t>(place)]; }
  friend bool operator==(const OpenedCircuit&, const OpenedCircuit&) = default;
};

/// Where a part of the network is drawn; none for loads and for what a tester adds.
std::optional<Place> placeOf(circuit::Part part);

class OpenedChain : public QWidget {
  Q_OBJECT

 public:
  explicit OpenedChain(QWidget* parent = nullptr);
  void display(const OpenedCircuit& circuit);
  [[nodiscard]] const OpenedCircuit& circuit() const { return circuit_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  /// Where a place is drawn, its words included; empty for what is not drawn.
  [[nodiscard]] QRectF boxOf(Place place) const;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;

 private:
  OpenedCircuit circuit_;
};

}  // namespace ohmkin::fault
