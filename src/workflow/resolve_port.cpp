#include <catalog/joints.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/engine_date.h>
#include <workflow/resolve_port.h>
#include <algorithm>
#include <map>

namespace ohmkin::workflow {
namespace {

using catalog::Casting;
using catalog::Catalogue;
using catalog::EngineFamily;
using catalog::Port;

struct Seen {
  std::optional<catalog::ThreadKey> thread;
  std::string location;
};

Expected<Seen> whatWasSeen(const Catalogue& catalogue, const Question& question) {
  Seen seen;
  if (!question.portThread.empty()) {
    std::vector<std::string> designations;
    for (const auto& thread : catalog::threads(catalogue)) {
      designations.push_back(thread.id.text);
      if (folded(thread.id.text) == folded(question.portThread)) seen.thread = thread.id;
    }
    if (!seen.thread)
      return refuse("thread-unknown", "--port", fmt::format("'{}'", question.portThread),
                    "a thread of this catalogue" + perhaps(nearMisses(question.portThread, designations)));
  }
  if (!question.portLocation.empty()) {
    const auto locations = catalog::portLocations(catalogue);
    const auto same = std::find_if(locations.begin(), locations.end(),
                                   [&](const auto& l) { return folded(l) == folded(question.portLocation); });
    if (same == locations.end())
      return refuse("port-location-unknown", "--port-location", fmt::format("'{}'", question.portLocation),
                    "a place of this catalogue" + perhaps(nearMisses(question.portLocation, locations)));
    seen.location = *same;
  }
  if (!question.terminal.empty() && catalog::terminalsNamed(catalogue, question.terminal).empty()) {
    std::vector<std::string> names;
    for (const auto& terminal : catalog::terminals(catalogue))
      names.insert(names.end(), {terminal.name, terminal.id.text});
    return refuse("terminal-unknown", "--terminal", fmt::format("'{}'", question.terminal),
                  "a terminal style of this catalogue" + perhaps(nearMisses(question.terminal, names)));
  }
  return seen;
}

Expected<std::vector<Casting>> namedCastings(const Catalogue& catalogue, const std::string& number) {
  std::vector<Casting> found = catalog::castingsNumbered(catalogue, number);
  if (found.empty())
    return refuse(
        "casting-unknown", "--casting", fmt::format("'{}'", number),
        "a casting number of this catalogue" + perhaps(nearMisses(number, catalog::castingNumbers(catalogue))));
  return found;
}

Expected<std::vector<EngineFamily>> possibleEngines(const Catalogue& catalogue, const Question& question,
                                                    const std::optional<catalog::VehicleLine>& line) {
  if (!question.engine.empty()) {
    auto found = catalog::engineFamiliesNamed(catalogue, question.engine);
    if (!found.empty()) return found;
    std::vector<std::string> names;
    for (const auto& engine : catalog::engineFamilies(catalogue))
      names.insert(names.end(), {engine.name, engine.id.text});
    return refuse("engine-unknown", "--engine", fmt::format("'{}'", question.engine),
                  "an engine family of this catalogue" + perhaps(nearMisses(question.engine, names)));
  }
  std::vector<EngineFamily> found;
  if (line && question.year) {
    for (auto& original : catalog::originalEngines(catalogue, line->id, *question.year))
      found.push_back(std::move(original.engine));
  }
  return found;
}

/// Castings of an engine that can be on an engine of this model year or build date; all of them where none is known.
std::vector<Casting> castingsInTime(const Catalogue& catalogue, const EngineFamily& engine, const Question& question) {
  std::vector<Casting> found = catalog::castingsOf(catalogue, engine.id);
  std::optional<DateSpan> window;
  if (question.engineBuilt) window = castingWindow(*question.engineBuilt);
  else if (question.engine.empty() && question.year) window = castingWindow(*question.year);
  if (!window) return found;
  std::vector<Casting> inTime;
  for (const Casting& casting : found) {
    const bool overlaps = (!casting.cast.from || *casting.cast.from < *window->until) &&
                          (!casting.cast.until || *window->from < *casting.cast.until);
    if (overlaps) inTime.push_back(casting);
  }
  return inTime.empty() ? found : inTime;
}

/// Gauge-sender ports of a casting that agree with what was seen.
std::vector<Port> senderPorts(const Catalogue& catalogue, const Casting& casting, const Seen& seen) {
  std::vector<Port> found = catalog::ports(catalogue, casting.id);
  std::erase_if(found, [&](const Port& port) {
    if (!seen.location.empty()) return port.location != seen.location;
    return port.usedBy != catalog::PortUse::gaugeSender;
  });
  if (!seen.thread) return found;
  std::vector<Port> sameThread;
  std::copy_if(found.begin(), found.end(), std::back_inserter(sameThread),
               [&](const Port& port) { return port.thread == *seen.thread; });
  return sameThread.empty() ? found : sameThread;
}

std::string portWords(const PortChoice& choice) {
  std::string words;
  if (choice.casting)
    words = fmt::format("{} casting {}", catalog::text(choice.casting->role), choice.casting->id.text);
  else if (choice.engine) words = choice.engine->name;
  if (choice.thread) words += fmt::format("{}{}", words.empty() ? "" : ", ", choice.thread->text);
  return words;
}

class Resolver {
 public:
  Resolver(const Catalogue& catalogue, const Question& question, const std::optional<catalog::VehicleLine>& line,
           Seen seen)
      : catalogue_(catalogue), question_(question), line_(line), seen_(std::move(seen)) {}

  Expected<EngineSide> run() {
    if (!question_.casting.empty()) {
      auto castings = namedCastings(catalogue_, question_.casting);
      if (!castings) return tl::make_unexpected(castings.error());
      fromCastings(*castings, Basis::known);
    } else {
      auto engines = possibleEngines(catalogue_, question_, line_);
      if (!engines) return tl::make_unexpected(engines.error());
      side_.castingUnknown = true;
      for (const EngineFamily& engine : *engines) fromEngine(engine);
    }
    if (side_.choices.empty()) onlyWhatWasSeen();
    mergeAlike();
    chips();
    return std::move(side_);
  }

 private:
  void add(const EngineFamily& engine, const std::optional<Casting>& casting, std::optional<Port> port,
           Basis engineBasis) {
    PortChoice choice;
    choice.engine = engine;
    choice.casting = casting;
    choice.engineBasis = engineBasis;
    choice.thread = port ? std::optional(port->thread) : std::nullopt;
    choice.portBasis = port ? (engineBasis == Basis::known ? Basis::known : Basis::inferred) : Basis::notSeen;
    if (seen_.thread) {
      choice.portBasis = choice.thread && *choice.thread != *seen_.thread ? Basis::conflict : Basis::seen;
      if (choice.portBasis == Basis::conflict)
        side_.findings.push_back(
            {"port-thread-not-the-castings", Severity::warning,
             fmt::format(
                 "The port was seen as {}, but {} has {} there: measure it again; it may have been bushed or recut.",
                 seen_.thread->text, portWords(choice), choice.thread->text),
             "what was seen against the casting", catalog::cite(port->source)});
      choice.thread = seen_.thread;  // what is in front of the person goes before the book
    }
    choice.port = std::move(port);
    side_.choices.push_back(std::move(choice));
  }

  void fromCastings(const std::vector<Casting>& castings, Basis basis) {
    for (const Casting& casting : castings) {
      const auto engine = catalog::engineFamily(catalogue_, casting.engine);
      if (!engine) continue;
      const std::vector<Port> ports = senderPorts(catalogue_, casting, seen_);
      for (const Port& port : ports) add(*engine, casting, port, basis);
      if (ports.empty() && basis == Basis::known) elsewhereOnTheEngine(*engine, casting);
    }
  }

  /// The casting read carries no sender port itself (a block, a plain intake): the engine's other castings do.
  void elsewhereOnTheEngine(const EngineFamily& engine, const Casting& read) {
    const std::size_t before = side_.choices.size();
    for (const Casting& casting : castingsInTime(catalogue_, engine, question_)) {
      for (const Port& port : senderPorts(catalogue_, casting, seen_)) add(engine, casting, port, Basis::inferred);
    }
    for (std::size_t i = before; i < side_.choices.size(); ++i) side_.choices[i].engineBasis = Basis::known;
    if (side_.choices.size() == before) add(engine, read, std::nullopt, Basis::known);
  }

  void fromEngine(const EngineFamily& engine) {
    const std::size_t before = side_.choices.size();
    fromCastings(castingsInTime(catalogue_, engine, question_), Basis::inferred);
    if (side_.choices.size() == before) add(engine, std::nullopt, std::nullopt, Basis::inferred);
    if (!question_.engine.empty()) {
      for (std::size_t i = before; i < side_.choices.size(); ++i) side_.choices[i].engineBasis = Basis::known;
    }
  }

  void onlyWhatWasSeen() {
    PortChoice choice;
    choice.thread = seen_.thread;
    if (seen_.thread) choice.portBasis = Basis::seen;
    side_.choices.push_back(std::move(choice));
  }

  /// Castings that put the same thread in the same place of the same engine are one answer, not several.
  void mergeAlike() {
    std::map<std::tuple<std::string, std::string, std::string>, PortChoice> merged;
    std::vector<std::tuple<std::string, std::string, std::string>> order;
    for (PortChoice& choice : side_.choices) {
      const auto key =
          std::tuple(choice.engine ? choice.engine->id.text : "", choice.thread ? choice.thread->text : "",
                     choice.port && question_.casting.empty() ? "" : (choice.port ? choice.port->location : ""));
      if (const auto found = merged.find(key); found != merged.end()) {
        found->second.weight += choice.weight;
        if (found->second.casting && choice.casting && found->second.casting->id != choice.casting->id)
          found->second.casting.reset();
        continue;
      }
      order.push_back(key);
      merged.emplace(key, std::move(choice));
    }
    side_.choices.clear();
    for (const auto& key : order) side_.choices.push_back(std::move(merged.at(key)));
    double total = 0;
    for (const PortChoice& choice : side_.choices) total += choice.weight;
    for (PortChoice& choice : side_.choices) {
      choice.weight /= total;
      choice.made = engineDate(catalogue_, question_, choice.casting);
      choice.assumes = choice.engine ? choice.engine->name : "";
      if (choice.thread) choice.assumes += (choice.assumes.empty() ? "port " : ", port ") + choice.thread->text;
      if (choice.port && !question_.casting.empty()) choice.assumes += ", " + choice.port->location;
    }
    if (side_.choices.size() == 1 && side_.choices.front().thread) side_.castingUnknown = false;
  }

  void chips() {
    const PortChoice& first = side_.choices.front();
    if (!first.made.words.empty()) side_.chips.push_back({first.made.words, Basis::inferred});
    if (side_.choices.size() == 1 && first.thread)
      side_.chips.push_back({"Port " + first.thread->text, first.portBasis});
    else if (side_.choices.size() > 1)
      side_.chips.push_back({fmt::format("{} ports possible", side_.choices.size()), Basis::inferred});
    else side_.chips.push_back({"Port not known: look at the casting number", Basis::notSeen});
  }

  const Catalogue& catalogue_;
  const Question& question_;
  const std::optional<catalog::VehicleLine>& line_;
  Seen seen_;
  EngineSide side_;
};

}  // namespace

Expected<EngineSide> resolveEngine(const Catalogue& catalogue, const Question& question,
                                   const std::optional<catalog::VehicleLine>& line) {
  auto seen = whatWasSeen(catalogue, question);
  if (!seen) return tl::make_unexpected(seen.error());
  if (const auto code = checkCastingDate(catalogue, question); !code) return tl::make_unexpected(code.error());
  return Resolver(catalogue, question, line, std::move(*seen)).run();
}

}  // namespace ohmkin::workflow
