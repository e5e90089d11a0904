#pragma once
#include <dating/layout.h>
#include <finding/finding.h>

namespace ohmkin::dating {

enum class Turned {
  upright,
  upsideDown,  ///< order reversed, 6 seen for 9, W for M
  mirrored     ///< order reversed, as where the pattern was cut the right way round
};

/// One meaning of a text: the days it may name and what had to be assumed.
struct Reading {
  Date from;          ///< first day
  Date until;         ///< day after the last: a month or a week where the layout names no day
  double weight = 1;  ///< likelihood of seeing this text if so, relative to a clear, plain text; 0 < weight ≤ 1
  std::string taken;  ///< the text as taken: look-alikes swapped, unreadable characters filled, turned upright
  Turned turned = Turned::upright;
  int swapped = 0;       ///< look-alike characters taken for one another
  int filled = 0;        ///< unreadable characters filled in
  bool spacing = false;  ///< spaces or separators missing, or spaces where the layout has none
  bool lowerCase = false;

  [[nodiscard]] bool plain() const { return turned == Turned::upright && swapped == 0 && filled == 0 && !spacing; }
  friend bool operator==(const Reading&, const Reading&) = default;
};

/// A day known by other means (a build sheet, a date the person typed), as evidence beside codes.
Reading knownDay(Date day);

/// Weights are judgement from memory, no source.
struct DecodeOptions {
  DateSpan window;        ///< dates thought possible; an open end means 1 Jan 1900 or 1 Jan 2030. At most 300 years.
  int mostSwapped = 2;    ///< look-alikes swapped at once, upright only
  bool turnedToo = true;  ///< try upside down and mirrored
  double swappedWeight = 0.05;  ///< for each character
  double spacingWeight = 0.8;
  double upsideDownWeight = 0.02;
  double mirroredWeight = 0.005;
};

struct Decoded {
  std::string text;               ///< as read: trimmed, single spaces
  std::vector<Reading> readings;  ///< most likely first, then by date; none: impossible under this layout, see findings
  std::vector<Finding> findings;  ///< why the plain text cannot be a date, and the nearest that can
  std::optional<Reading> nearest;  ///< where nothing reads: the nearest legible text, one character away
};

inline constexpr std::size_t kLongestCode = 10'000;  ///< characters looked at; longer is refused

/// Every date in the window that the legible text can mean under the layout. `?` stands for one unreadable character.
/// One-digit years give one date in each decade. Refuses texts that are empty, longer than kLongestCode or wholly
/// unreadable, unsound layouts and windows that are empty or too wide. Work is bounded for any bytes.
Expected<Decoded> decode(const Layout& layout, std::string_view text, const DecodeOptions& options = {});

/// What a reading assumes, as words for a person: "8 read as 3", "upside down"; empty for a plain one.
std::vector<std::string> assumptions(const Decoded& decoded, const Reading& reading);

/// "14 Mar 1975", "Mar 1975", "week of 10 Mar 1975".
std::string plainReading(const Reading& reading);

}  // namespace ohmkin::dating
