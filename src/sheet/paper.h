#pragma once
#include <finding/refusal.h>

#include <string>
#include <string_view>
#include <vector>

/// Sheets to print: each page an SVG of its own in true millimetres, black on white. Text is printed, never obeyed.
namespace ohmkin::sheet {

enum class Paper { a4, letter };
enum class Way { portrait, landscape };

/// Millimetres: ISO 216 A4, 210 × 297; ANSI Y14.1 size A ("Letter"), 8.5 × 11 in of 25.4 mm.
struct PaperSize {
  double width = 0;
  double height = 0;
};
PaperSize sizeOf(Paper paper, Way way = Way::portrait);

/// "A4", "Letter", in whatever case.
Expected<Paper> parsePaper(std::string_view text, std::string_view where = {});

/// One SVG document a page; one user unit is one millimetre.
using Pages = std::vector<std::string>;

/// What every sheet about a gauge and a sender says at its head.
struct Heading {
  std::string gauge;
  std::string gaugeFamily;  ///< what the gauge was built for; empty where that is in its name
  std::string sender;
  std::string senderFamily;
  std::string date;  ///< as a person writes it: "22 Aug 1971"
};

}  // namespace ohmkin::sheet
