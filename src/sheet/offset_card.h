#pragma once
#include <sheet/paper.h>

#include <optional>

/// For a pair left as it is: a card of half a page for the glove box, with cut marks, and the same once more for the
/// file.
namespace ohmkin::sheet {

/// One line of the table, as it is read.
struct CardLine {
  std::string truth;        ///< "90 °C"
  std::string shown;        ///< "84 °C", "below the first mark"
  std::string error;        ///< "−6 K"
  std::string uncertainty;  ///< "4 K", k = 2
  bool warm = false;        ///< the one at the thermostat's temperature
};

/// One point of the plot, in the unit of the card.
struct CardPoint {
  double truth = 0;
  double shown = 0;
  double uncertainty = 0;  ///< of `shown`, k = 2
  bool onTheMarks = true;
};

struct OffsetCard {
  Heading heading;
  std::string driverLine;  ///< "Warmed up with the 82 °C thermostat the needle stands at 62 °C."
  std::string hotLine;     ///< when the needle comes to the hot mark; may be empty
  bool hotLate = false;    ///< later than it should: the dangerous way, in bold
  std::vector<CardLine> lines;
  std::vector<CardPoint> points;
  std::optional<CardPoint> warm;
  std::optional<double> hotMark;  ///< on the dial
  std::string unit;               ///< "°C"
  std::vector<std::string> cautions;
};

/// One page. Where there are more lines than the card holds every second, third … is printed; the one for the
/// thermostat always.
Pages drawOffsetCard(const OffsetCard& card, Paper paper);

}  // namespace ohmkin::sheet
