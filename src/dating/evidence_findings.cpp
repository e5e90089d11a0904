#include <dating/date_words.h>
#include <dating/enumeration.h>
#include <dating/evidence_findings.h>
#include <dating/model_year.h>
#include <fmt/format.h>
#include <quantity/capitalised.h>
#include <algorithm>
#include <tuple>

namespace ohmkin::dating {

using std::chrono::days;

namespace {

/// "the left head"; "head A" is a name already.
std::string the(const std::string& name) {
  const auto letter = name.size() > 2 && name[name.size() - 2] == ' ' ? name.back() : ' ';
  const bool named = ('A' <= letter && letter <= 'Z') || ('0' <= letter && letter <= '9');
  return named ? name : "the " + name;
}

void add(const Evidence& evidence, Posterior& posterior, std::string code, Severity severity, std::string sentence,
         std::string what) {
  posterior.findings.push_back({std::move(code), severity, std::move(sentence), std::move(what),
                                "your readings; usual lags " + evidence.beliefs.source});
}

void noteConflict(Posterior& posterior, std::string one, std::string other) {
  if (!posterior.conflict) posterior.conflict = Conflict{std::move(one), std::move(other)};
}

bool bothHeads(const Evidence& evidence, const Fact& one, const Fact& other) {
  return one.casting && other.casting && evidence.castings[*one.casting].role == CastingRole::head &&
         evidence.castings[*other.casting].role == CastingRole::head;
}

/// The day to look around, where codes repeat in every decade.
Date about(const Posterior& posterior) {
  return posterior.assembly.empty() ? Date{} : posterior.assembly.mostProbable();
}

/// A casting and the stamp.
void castingAgainstStamp(const Evidence& evidence, const Fact& casting, const Fact& stamp, Posterior& posterior) {
  const NearestDays said = nearest(casting, stamp, about(posterior));
  const bool recut = evidence.stamp && evidence.stamp->padRecut;
  const std::string weighs = recut ? "The pad was re-cut, so the casting counts for more."
                                   : fmt::format("{} was changed later, or the stamp is not this engine's or misread.",
                                                 capitalised(the(casting.name)));
  const std::string facts =
      fmt::format("{} {}, assembly stamp {}", casting.name, plainDate(said.one), plainDate(said.other));
  if (said.one > said.other)
    add(evidence, posterior, "casting-after-assembly", Severity::warning,
        fmt::format("{} was cast {} after the engine was assembled. {}", capitalised(the(casting.name)),
                    plainInterval((said.one - said.other).count()), weighs),
        facts);
  else
    add(evidence, posterior, "casting-long-before-assembly", Severity::warning,
        fmt::format("{} was cast {} before the engine was assembled, longer than castings lie about. {}",
                    capitalised(the(casting.name)), plainInterval((said.other - said.one).count()), weighs),
        facts);
}

void castingAgainstCasting(const Evidence& evidence, const Fact& one, const Fact& other, Posterior& posterior) {
  const NearestDays said = nearest(one, other, about(posterior));
  add(evidence, posterior, "castings-disagree", Severity::warning,
      fmt::format("{} and {} were cast {} apart, too far for one engine: one of them was changed.",
                  capitalised(the(one.name)), the(other.name), plainInterval((said.one - said.other).count())),
      fmt::format("{} {}, {} {}", one.name, plainDate(said.one), other.name, plainDate(said.other)));
}

}  // namespace

void findConflicts(const Evidence& evidence, const Days& window, Posterior& posterior) {
  for (const DatedCasting& casting : evidence.castings) {
    if (!codeOutsideSpan(casting)) continue;
    noteConflict(posterior, "date code of " + the(casting.name), "production span of " + the(casting.name));
    add(evidence, posterior, "casting-outside-span", Severity::warning,
        fmt::format("The date on {} falls outside the years in which its casting number was made: one of the two is "
                    "misread.",
                    the(casting.name)),
        fmt::format("code {}", plainReading(casting.readings.front())));
  }
  const std::vector<Fact> facts = factsOf(evidence, window);
  for (const auto& [i, j] : disagreements(facts)) {
    const Fact& one = facts[i];
    const Fact& other = facts[j];
    noteConflict(posterior, one.name, other.name);
    if (!other.casting) castingAgainstStamp(evidence, one, other, posterior);
    else if (!bothHeads(evidence, one, other))  // two heads have a sentence of their own
      castingAgainstCasting(evidence, one, other, posterior);
  }
  if (posterior.conflict)
    add(evidence, posterior, "dates-conflict", Severity::warning,
        fmt::format("No date fits both {} and {}.", the(posterior.conflict->one), the(posterior.conflict->other)),
        "all dates given");
}

void findHeadsApart(const Evidence& evidence, const Days& window, Posterior& posterior) {
  const std::vector<Fact> facts = factsOf(evidence, window);
  for (std::size_t i = 0; i < facts.size(); ++i)
    for (std::size_t j = i + 1; j < facts.size(); ++j) {
      if (!bothHeads(evidence, facts[i], facts[j])) continue;
      const bool coded = !evidence.castings[*facts[i].casting].readings.empty() &&
                         !evidence.castings[*facts[j].casting].readings.empty();
      const NearestDays cast = nearest(facts[i], facts[j], about(posterior));
      const auto apart = std::abs((cast.one - cast.other).count());
      if (!coded || apart <= evidence.beliefs.headsApart) continue;
      const double first = posterior.castings[*facts[i].casting].fittedAtAssembly;
      const double second = posterior.castings[*facts[j].casting].fittedAtAssembly;
      // Only a clear lead is worth naming one of them.
      const std::string which =
          std::abs(first - second) < 0.2
              ? "the dates do not say which"
              : fmt::format("more likely {}", the(first < second ? facts[i].name : facts[j].name));
      add(evidence, posterior, "heads-apart", Severity::warning,
          fmt::format("The heads were cast {} apart: one was changed, {}. Go by the date of the head that the sender "
                      "screws into.",
                      plainInterval(apart), which),
          fmt::format("{} {}, {} {}", facts[i].name, plainDate(cast.one), facts[j].name, plainDate(cast.other)));
    }
}

void findEras(const Evidence& evidence, Posterior& posterior) {
  for (std::size_t i = 0; i < posterior.castings.size(); ++i)
    if (const DayDistribution& cast = posterior.castings[i].days; !cast.empty())
      add(evidence, posterior, "casting-era", Severity::note,
          fmt::format("{}: {}.", capitalised(evidence.castings[i].name), eraSummary(cast)), evidence.castings[i].name);
  if (!posterior.assembly.empty())
    add(evidence, posterior, "engine-era", Severity::note,
        fmt::format("Engine assembled: {}.", eraSummary(posterior.assembly)), "all dates given");
}

void findModelYear(const Evidence& evidence, Posterior& posterior) {
  const VehicleDate& vehicle = evidence.vehicle;
  if (!vehicle.year) return;
  const DateSpan produced = vehicle.yearProduced.value_or(usualProduction(*vehicle.year));
  if (vehicle.built && !produced.holds(*vehicle.built))
    add(evidence, posterior, "built-outside-model-year", Severity::caution,
        fmt::format("Vehicles of model year {} were not usually built as far off as {}.", vehicle.year->value,
                    plainDate(*vehicle.built)),
        "vehicle");
  if (!produced.from) return;
  for (std::size_t i = 0; i < posterior.castings.size(); ++i) {
    const DayDistribution& cast = posterior.castings[i].days;
    if (cast.empty()) continue;
    const auto before = (*produced.from - cast.mostProbable()).count();
    const std::string name = capitalised(the(evidence.castings[i].name));
    const std::string facts = fmt::format("{} {}", evidence.castings[i].name, plainDate(cast.mostProbable()));
    if (before > 0 && before <= evidence.beliefs.earlyCasting)
      add(evidence, posterior, "casting-before-model-year", Severity::note,
          fmt::format("{} was cast {} before the first vehicles of model year {} were built: normal for early ones.",
                      name, plainInterval(before), vehicle.year->value),
          facts);
    else if (before > evidence.beliefs.earlyCasting && before <= 365)
      add(evidence, posterior, "casting-well-before-model-year", Severity::caution,
          fmt::format("{} was cast {} before the first vehicles of model year {} were built: earlier than usual.", name,
                      plainInterval(before), vehicle.year->value),
          facts);
  }
}

namespace {

/// Days from the vehicle's build to the day: above 0 later, below 0 earlier, 0 within it.
std::int64_t afterVehicle(Date day, const Days& vehicle) {
  if (day >= vehicle.until) return (day - vehicle.until + days{1}).count();
  return day < vehicle.from ? -(vehicle.from - day).count() : 0;
}

/// Who dates the engine in the sentence: the head, or else the casting, likeliest to be its own; none: the assembly.
std::optional<std::size_t> spokesman(const Evidence& evidence, const Posterior& posterior) {
  std::optional<std::size_t> best;
  const auto rank = [&](std::size_t i) {
    const bool own = posterior.castings[i].fittedAtAssembly >= 0.5;
    return std::tuple(own, evidence.castings[i].role == CastingRole::head, posterior.castings[i].fittedAtAssembly);
  };
  for (std::size_t i = 0; i < posterior.castings.size(); ++i) {
    if (posterior.castings[i].days.empty() || evidence.castings[i].readings.empty()) continue;
    if (!best || rank(i) > rank(*best)) best = i;
  }
  return best;
}

/// The engine is hardly the first: older or younger, by how much, and how settled that is.
void findOtherEngine(const Evidence& evidence, const Days& vehicle, Posterior& posterior) {
  constexpr double kSettled = 0.8;
  const auto speaker = spokesman(evidence, posterior);
  const DayDistribution& cast = speaker ? posterior.castings[*speaker].days : posterior.assembly;
  const Date day = cast.mostProbable();
  const auto after = afterVehicle(day, vehicle);
  const std::string what =
      speaker ? capitalised(the(evidence.castings[*speaker].name)) + " was cast" : "The engine was assembled";
  const bool decadeSettled = cast.decades().front().probability >= kSettled;
  const std::string interval = decadeSettled ? plainInterval(after) + " " : "";
  const std::string chance = percent(*posterior.firstEngine);
  const std::string share = fmt::format("(chance that it is the vehicle's first: {})", chance);
  const std::string facts = fmt::format("{} {}", what, decadeSettled ? plainDate(day) : eraSummary(cast));
  const auto tell = [&](std::string code, Severity severity, std::string sentence) {
    add(evidence, posterior, std::move(code), severity, std::move(sentence), facts);
  };
  const bool longBefore = -after > evidence.beliefs.assemblyToVehicle.longest;
  if (after > 0 && cast.within({vehicle.until, {}}) >= kSettled)
    tell("later-engine", Severity::warning,
         fmt::format("{} {}after the vehicle was built: the engine is a later one {}.", what, interval, share));
  else if (longBefore && cast.within({{}, vehicle.from}) >= kSettled)
    tell("earlier-engine", Severity::warning,
         fmt::format("{} {}before the vehicle was built: the engine came out of an older one {}.", what, interval,
                     share));
  else if (after <= 0 && !longBefore)
    tell("perhaps-not-first-engine", Severity::caution,
         fmt::format("{} {}before the vehicle was built: perhaps not its first engine {}.", what, interval, share));
  else
    tell("another-engine", Severity::warning,
         fmt::format("The dates do not fit the vehicle's first engine ({}); whether this one is older or younger than "
                     "the vehicle is not settled.",
                     chance));
}

}  // namespace

void findFirstEngine(const Evidence& evidence, const Days& window, Posterior& posterior) {
  const auto vehicle = vehicleDays(evidence.vehicle, window);
  if (!vehicle || !posterior.firstEngine || posterior.assembly.empty()) return;
  const double first = *posterior.firstEngine;
  if (first >= 0.5) {
    add(evidence, posterior, "first-engine", Severity::note,
        fmt::format("The dates fit: this is {} the vehicle's first engine ({}).",
                    first >= 0.9 ? "very likely" : "probably", percent(first)),
        "engine and vehicle dates");
    for (std::size_t i = 0; i < posterior.castings.size(); ++i) {
      const CastingPosterior& casting = posterior.castings[i];
      if (casting.days.empty() || casting.fittedAtAssembly >= 0.5) continue;
      if (const auto after = afterVehicle(casting.days.mostProbable(), *vehicle); after > 0)
        add(evidence, posterior, "casting-changed", Severity::warning,
            fmt::format("{} was cast {} after the vehicle was built: it was changed; the engine itself fits.",
                        capitalised(the(evidence.castings[i].name)), plainInterval(after)),
            fmt::format("{} {}", evidence.castings[i].name, plainDate(casting.days.mostProbable())));
    }
    return;
  }
  findOtherEngine(evidence, *vehicle, posterior);
}

}  // namespace ohmkin::dating
