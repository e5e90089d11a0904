#pragma once
#include <string>
#include <string_view>
#include <vector>

/// How long words are on paper, without asking a font library: by the advance widths of DejaVu Sans, the typeface the
/// sheets name. Characters that are not in the table count a whole em, so that a line is rather too short than too
/// long.
namespace ohmkin::sheet {

enum class Weight { regular, bold };

/// Text that an XML document can hold: broken UTF-8 becomes U+FFFD, control characters and line breaks become blanks.
std::string cleaned(std::string_view text);
/// The same for elements already written, whose line breaks stay.
std::string cleanedElements(std::string_view elements);

/// Millimetres, for type of `size` millimetres to the em. Without kerning; never less than it comes out with it by more
/// than a hundredth.
double widthOf(std::string_view text, double size, Weight weight = Weight::regular);

/// Broken at blanks, never between a number and its unit, and inside a word that is longer than the line. `most` lines
/// at most, the last then ends in "…"; 0: as many as it takes. Empty text gives no line.
std::vector<std::string> wrapped(std::string_view text, double size, Weight weight, double width, std::size_t most = 0);

/// As many lines as wrapped() makes, but of about the same length: for what stands in large letters.
std::vector<std::string> balanced(std::string_view text, double size, Weight weight, double width, std::size_t most);

/// One line; what does not fit is cut off and "…" put in its place.
std::string elided(std::string_view text, double size, Weight weight, double width);

}  // namespace ohmkin::sheet
