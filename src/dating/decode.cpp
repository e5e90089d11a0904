#include <dating/calendar.h>
#include <dating/explain.h>
#include <fmt/format.h>
#include <algorithm>
#include <cstdlib>
#include <tuple>

namespace ohmkin::dating {
namespace {

double weightOf(const Path& path, Turned turned, const DecodeOptions& options) {
  double weight = turned == Turned::upsideDown ? options.upsideDownWeight
                  : turned == Turned::mirrored ? options.mirroredWeight
                                               : 1;
  for (int i = 0; i < path.swapped; ++i) weight *= options.swappedWeight;
  return path.spacing ? weight * options.spacingWeight : weight;
}

constexpr std::size_t kMostTried = 20'000;  ///< texts one character away whose days are looked up

/// Fewest assumptions first.
auto plainness(const Reading& r) { return std::tuple(-r.weight, r.swapped, r.filled, r.turned, r.spacing); }

void sortByLikelihood(std::vector<Reading>& readings) {
  std::ranges::sort(readings, {}, [](const Reading& r) { return std::tuple(-r.weight, r.from, r.until); });
}

/// The best explanation of each date stays.
void keepBest(std::vector<Reading>& readings) {
  std::ranges::sort(readings, {},
                    [](const Reading& r) { return std::tuple_cat(std::tuple(r.from, r.until), plainness(r)); });
  const auto [first, last] = std::ranges::unique(
      readings, [](const Reading& a, const Reading& b) { return a.from == b.from && a.until == b.until; });
  readings.erase(first, last);
  sortByLikelihood(readings);
}

/// One decoding: the layout made ready, the text, and what is allowed.
class Decoding {
 public:
  Decoding(const Layout& layout, SeenText text, Days window, const DecodeOptions& options)
      : layout_(layout),
        text_(std::move(text)),
        window_(window),
        options_(options),
        template_(templateOf(layout, parts(window.from).year - 1, parts(window.until).year + 1, false)) {}

  Expected<Decoded> run() {
    Decoded decoded;
    decoded.text = text_.plain;
    std::size_t width = 0;
    for (const Field& field : layout_.fields) width += widest(field);
    if (text_.glyphs.size() > width) {
      decoded.findings.push_back(
          {"date-not-this-layout", Severity::warning,
           fmt::format("The code has {} characters; this layout has at most {}.", text_.glyphs.size(), width),
           layout_.name, "your reading"});
      return decoded;
    }
    const PathsFound upright = look(Turned::upright, decoded.readings);
    if (tooMany_)
      return refuse("code-too-little-legible", "date code", fmt::format("'{}'", text_.plain),
                    "more legible characters to go by");
    if (options_.turnedToo) {
      look(Turned::upsideDown, decoded.readings);
      look(Turned::mirrored, decoded.readings);
    }
    keepBest(decoded.readings);
    const bool asTyped = std::ranges::any_of(
        decoded.readings, [](const Reading& r) { return r.turned == Turned::upright && r.swapped == 0; });
    if (!asTyped) explain(upright, decoded);
    return decoded;
  }

 private:
  /// Adds the readings of one way of holding the text; gives back the plain paths, for explaining.
  PathsFound look(Turned turned, std::vector<Reading>& readings) {
    const bool upright = turned == Turned::upright;
    PathsFound found = pathsThrough(template_, sight(text_, turned, upright), upright ? options_.mostSwapped : 0);
    tooMany_ |= upright && found.tooMany;
    for (const Path& path : found.paths) addReadings(path, turned, readings);
    std::erase_if(found.paths, [](const Path& path) { return path.swapped > 0; });
    return found;
  }

  void addReadings(const Path& path, Turned turned, std::vector<Reading>& readings) const {
    for (const Days& days : daysNamed(layout_, path, window_))
      readings.push_back({days.from, days.until, weightOf(path, turned, options_), path.taken, turned, path.swapped,
                          path.filled, path.spacing, text_.lowerCase});
  }

  void explain(const PathsFound& upright, Decoded& decoded) const {
    PathsFound plain = upright;
    if (plain.paths.empty()) plain = pathsThrough(template_, sight(text_, Turned::upright, false), 0);
    decoded.findings.push_back(whyImpossible(layout_, text_, plain, window_));
    std::optional<Reading> nearest;
    if (!decoded.readings.empty()) nearest = decoded.readings.front();
    else nearest = decoded.nearest = oneCharacterAway();
    if (!nearest) return;
    std::string how;
    for (const std::string& assumption : assumptions(decoded, *nearest)) how += (how.empty() ? "" : ", ") + assumption;
    decoded.findings.push_back(
        {"date-nearest-reading", Severity::note,
         fmt::format("Nearest that can be: {}, for example {} ({}).", nearest->taken, plainReading(*nearest),
                     how.empty() ? "one character read differently" : how),
         fmt::format("'{}' read as {}", text_.plain, layout_.name), "your reading"});
  }

  /// Replaces each character in turn, and takes what lies nearest in the alphabet to what was seen.
  [[nodiscard]] std::optional<Reading> oneCharacterAway() const {
    const Sight plain = sight(text_, Turned::upright, false);
    std::optional<Reading> best;
    int nearest = 0;
    std::size_t tried = 0;
    for (std::size_t place = 0; place < text_.glyphs.size(); ++place) {
      if (text_.glyphs[place] == '?') continue;
      const PathsFound found = pathsThrough(template_, blurred(plain, place), 0);
      for (const Path& path : found.paths) {
        std::string taken = path.taken;
        std::erase(taken, ' ');
        const int distance = place < taken.size() ? std::abs(taken[place] - text_.glyphs[place]) : 128;
        // Nearer ones only, and not for ever: a text of question marks has hundreds of thousands, none of them a day.
        if (best && distance >= nearest) continue;
        if (++tried > kMostTried) return best;
        std::vector<Reading> readings;
        addReadings(path, Turned::upright, readings);
        if (readings.empty()) continue;
        best = readings.front();
        best->filled = 0;
        best->swapped = 1;
        best->weight *= options_.swappedWeight;
        nearest = distance;
      }
    }
    return best;
  }

  const Layout& layout_;
  SeenText text_;
  Days window_;
  const DecodeOptions& options_;
  Template template_;
  bool tooMany_ = false;
};

Expected<void> checkOptions(const DecodeOptions& options) {
  for (const double weight :
       {options.swappedWeight, options.spacingWeight, options.upsideDownWeight, options.mirroredWeight})
    if (!(weight > 0 && weight <= 1))
      return refuse("weight-out-of-range", "decoding", fmt::format("{}", weight), "a weight above 0, at most 1");
  if (options.mostSwapped < 0 || options.mostSwapped > 3)
    return refuse("swaps-out-of-range", "decoding", fmt::format("{}", options.mostSwapped),
                  "0 to 3 look-alikes at once");
  return {};
}

std::string shortened(std::string_view text) {
  constexpr std::size_t kShown = 24;
  const std::string plain = seen(text.substr(0, std::min(text.size(), kShown))).plain;
  return fmt::format("'{}{}'", plain, text.size() > kShown ? "…" : "");
}

}  // namespace

Reading knownDay(Date day) {
  Reading reading;
  reading.from = day;
  reading.until = day + std::chrono::days{1};
  reading.taken = plainDate(day);
  return reading;
}

Expected<Decoded> decode(const Layout& layout, std::string_view text, const DecodeOptions& options) {
  const auto sound = soundLayout(layout);
  if (!sound) return tl::make_unexpected(sound.error());
  if (const auto fine = checkOptions(options); !fine) return tl::make_unexpected(fine.error());
  const auto window = closedWindow(options.window);
  if (!window) return tl::make_unexpected(window.error());
  if (text.size() > kLongestCode)
    return refuse("code-too-long", "date code",
                  fmt::format("{} characters, beginning {}", text.size(), shortened(text)),
                  fmt::format("at most {} characters", kLongestCode));
  SeenText characters = seen(text);
  if (characters.glyphs.empty())
    return refuse("code-empty", "date code", "nothing",
                  "the characters cast or stamped, ? for those that cannot be read");
  if (characters.glyphs.find_first_not_of('?') == std::string::npos)
    return refuse("code-unreadable", "date code", shortened(text), "at least one legible character");
  return Decoding(*sound, std::move(characters), *window, options).run();
}

std::vector<std::string> assumptions(const Decoded& decoded, const Reading& reading) {
  std::vector<std::string> words;
  if (reading.turned == Turned::upsideDown) words.emplace_back("upside down");
  if (reading.turned == Turned::mirrored) words.emplace_back("mirrored");
  std::string taken = reading.taken;
  std::string typed = seen(decoded.text).glyphs;
  std::erase(taken, ' ');
  // Missing separators aside, the two run character by character.
  if (reading.turned == Turned::upright && taken.size() == typed.size())
    for (std::size_t i = 0; i < typed.size(); ++i) {
      if (taken[i] == typed[i]) continue;
      words.push_back(typed[i] == '?' ? fmt::format("unreadable character taken as {}", taken[i])
                                      : fmt::format("{} read as {}", typed[i], taken[i]));
    }
  else if (reading.filled > 0) words.emplace_back(fmt::format("unreadable characters filled: {}", reading.taken));
  if (reading.spacing) words.emplace_back("spaces or separators not as in the layout");
  if (reading.lowerCase) words.emplace_back("small letters taken as capitals");
  return words;
}

std::string plainReading(const Reading& reading) {
  const auto length = (reading.until - reading.from).count();
  const std::string first = plainDate(reading.from);
  if (length == 1) return first;
  if (length == 7) return fmt::format("week of {}", first);
  if (parts(reading.from).day == 1 && length >= 28 && length <= 31) return first.substr(first.find(' ') + 1);
  return fmt::format("{} to {}", first, plainDate(reading.until - std::chrono::days{1}));
}

}  // namespace ohmkin::dating
