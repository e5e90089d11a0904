#include <cli/box_words.h>
#include <fmt/format.h>
#include <quantity/parse.h>
#include <quantity/print.h>
#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmkin::cli {
namespace {

constexpr std::string_view kMark = "mark:";

bool sameText(const std::string& a, const std::string& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

Expected<Angle> atMark(const std::string& name, const std::string& word, const std::vector<catalog::DialMark>& marks) {
  const auto found =
      std::find_if(marks.begin(), marks.end(), [&](const auto& mark) { return sameText(mark.text, name); });
  if (found != marks.end() && !name.empty()) return found->angle;
  if (marks.empty())
    return refuse("mark-without-dial", "OHMS=NEEDLE", "'" + word + "'", "--gauge, whose dial the mark stands on");
  std::string known;
  for (const auto& mark : marks)
    if (!mark.text.empty()) known += (known.empty() ? "" : ", ") + mark.text;
  return refuse("mark-unknown", "OHMS=NEEDLE", "'" + word + "'",
                known.empty() ? "degrees, since no mark of this dial has a text" : "one of the dial's marks: " + known);
}

}  // namespace

Expected<gauge::BoxReading> boxReading(const std::string& word, const std::vector<catalog::DialMark>& marks,
                                       double uncertainty) {
  const auto bad = [&] {
    return refuse("box-reading-unreadable", "OHMS=NEEDLE", "'" + word + "'",
                  "ohms of the box, or open, and the needle: 120=35, 0=70> on the right stop, open=<-66 on the left, "
                  "60=mark:H at a mark, 60=22@10.5 fed by 10.5 V");
  };
  const auto equals = word.find('=');
  if (equals == std::string::npos) return bad();
  gauge::BoxReading reading;
  reading.uncertainty = uncertainty;
  const std::string box = word.substr(0, equals);
  if (box == "open") {
    reading.box = ohms(std::numeric_limits<double>::infinity());
  } else {
    const auto number = parseNumber(box);
    if (!number || *number < 0) return bad();
    reading.box = ohms(*number);
  }
  std::string needle = word.substr(equals + 1);
  if (const auto at = needle.rfind('@'); at != std::string::npos) {
    const auto supply = parseNumber(needle.substr(at + 1));
    if (!supply || !(*supply > 0) || *supply > 40) return bad();
    reading.supply = volts(*supply);
    needle.erase(at);
  }
  if (needle.ends_with('>')) reading.rests = gauge::Rests::onRightStop, needle.pop_back();
  else if (needle.starts_with('<')) reading.rests = gauge::Rests::onLeftStop, needle.erase(0, 1);
  if (needle.starts_with(kMark)) {
    const auto angle = atMark(needle.substr(kMark.size()), word, marks);
    if (!angle) return tl::make_unexpected(angle.error());
    reading.needle = *angle;
    return reading;
  }
  const auto degrees = parseNumber(needle);
  if (!degrees || std::abs(*degrees) > 180) return bad();
  reading.needle = {*degrees};
  return reading;
}

std::string boxName(Ohms box) { return std::isinf(inOhms(box)) ? "open" : inOhms(box) == 0 ? "grounded" : print(box); }

}  // namespace ohmkin::cli
