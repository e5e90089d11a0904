#include <cli/date_arguments.h>
#include <fmt/format.h>
#include <quantity/parse.h>

namespace ohmkin::cli {
namespace {

constexpr const char* kSetByYou = "as you set it";

/// "30418:H 22 1" is a casting number and its date; without a colon the code alone.
workflow::CastingRead castingRead(dating::CastingRole role, const std::string& text) {
  const auto colon = text.find(':');
  if (colon == std::string::npos) return {"", role, "", text, ""};
  return {"", role, text.substr(0, colon), text.substr(colon + 1), ""};
}

/// "12" or "12,38".
Expected<dating::Lag> lagFrom(const std::string& text, const dating::Lag& usual, const char* option) {
  const auto unreadable = [&] {
    return refuse("lag-unreadable", option, "'" + text + "'",
                  "days for half of them, and perhaps for nine in ten: 12,38");
  };
  const auto comma = text.find(',');
  const auto half = parseNumber(text.substr(0, comma), option);
  if (!half) return unreadable();
  if (comma == std::string::npos) return dating::lagWithin(*half, usual, kSetByYou, option);
  const auto late = parseNumber(text.substr(comma + 1), option);
  if (!late) return unreadable();
  return dating::lagWithin(*half, *late, kSetByYou, option);
}

Expected<void> setBeliefs(const Arguments& given, dating::Beliefs& beliefs) {
  for (const auto& [option, lag] : {std::pair{"--casting-to-engine", &beliefs.castingToAssembly},
                                    std::pair{"--engine-to-vehicle", &beliefs.assemblyToVehicle}}) {
    if (!given.has(option)) continue;
    auto set = lagFrom(given.one(option), *lag, option);
    if (!set) return tl::make_unexpected(set.error());
    *lag = std::move(*set);
  }
  if (given.has("--still-first")) {
    const auto share = parseNumber(given.one("--still-first"), "--still-first");
    if (!share || !(*share > 0 && *share < 100))
      return refuse("share-unreadable", "--still-first", "'" + given.one("--still-first") + "'",
                    "per cent above 0 and below 100, for example 70");
    beliefs.firstEngine = *share / 100;
    beliefs.source = kSetByYou;
  }
  return {};
}

/// A day, or a whole year: its first day and the day after its last.
Expected<DateSpan> yearOrDay(const std::string& text) {
  if (text.size() == 4 && text.find_first_not_of("0123456789") == std::string::npos) {
    const int year = std::stoi(text);
    return DateSpan{date(year, 1, 1), date(year + 1, 1, 1)};
  }
  const auto day = parseDate(text, "--between");
  if (!day) return tl::make_unexpected(day.error());
  return DateSpan{*day, *day + std::chrono::days{1}};
}

Expected<DateSpan> datesBetween(const std::string& text) {
  const auto dots = text.find("..");
  if (dots == std::string::npos)
    return refuse("dates-unreadable", "--between", "'" + text + "'", "FROM..TO, for example 1950..1985");
  const auto from = yearOrDay(text.substr(0, dots));
  if (!from) return from;
  const auto to = yearOrDay(text.substr(dots + 2));
  if (!to) return to;
  if (*to->until <= *from->from)
    return refuse("dates-reversed", "--between", "'" + text + "'", "the earlier date first");
  return DateSpan{from->from, to->until};
}

}  // namespace

Expected<workflow::DateQuestion> dateQuestion(const Arguments& given) {
  workflow::DateQuestion asked;
  for (const auto& [option, role] :
       {std::pair{"--head", dating::CastingRole::head}, std::pair{"--block", dating::CastingRole::block},
        std::pair{"--intake", dating::CastingRole::intake}, std::pair{"--housing", dating::CastingRole::housing}}) {
    for (const std::string& text : given.all(option)) {
      asked.castings.push_back(castingRead(role, text));
      asked.castings.back().layout = given.one("--layout");
    }
  }
  asked.stamp = given.one("--stamp");
  asked.stampLayout = given.one("--stamp-layout");
  asked.padRecut = given.has("--recut");
  asked.line = given.one("--vehicle");
  if (given.has("--year")) {
    const auto year = parseNumber(given.one("--year"), "--year");
    if (!year || *year < 1900 || *year > 2100)
      return refuse("year-unreadable", "--year", "'" + given.one("--year") + "'",
                    "a model year of four digits, for example 1968");
    asked.year = ModelYear{static_cast<int>(*year)};
  }
  if (given.has("--built")) {
    const auto built = parseDate(given.one("--built"), "--built");
    if (!built) return tl::make_unexpected(built.error());
    asked.built = *built;
  }
  if (const auto set = setBeliefs(given, asked.beliefs); !set) return tl::make_unexpected(set.error());
  if (given.has("--between")) {
    const auto window = datesBetween(given.one("--between"));
    if (!window) return tl::make_unexpected(window.error());
    asked.window = *window;
  }
  if (asked.castings.empty() && asked.stamp.empty())
    return refuse("nothing-to-date", "", "no code",
                  "--head, --block, --intake, --housing or --stamp with the code as read");
  return asked;
}

}  // namespace ohmkin::cli
