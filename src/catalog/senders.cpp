#include <catalog/row.h>
#include <catalog/senders.h>
#include <set>

namespace ohmkin::catalog {
namespace {

constexpr Words<SenderKind, 6> kKinds{{{SenderKind::variableSender, "variable sender"},
                                       {SenderKind::warningSwitch, "warning switch"},
                                       {SenderKind::senderWithLampSwitch, "sender with lamp switch"},
                                       {SenderKind::pulsingContact, "pulsing contact"},
                                       {SenderKind::controllerSensor, "controller sensor"},
                                       {SenderKind::fanSwitch, "fan switch"}}};
constexpr Words<Grounding, 2> kGroundings{{{Grounding::throughCase, "case"}, {Grounding::twoWire, "two-wire"}}};

#define SENDERS                                                                                                \
  "SELECT p.id, p.name, p.kind, p.family, p.thread, p.terminal, p.reach, p.hex, p.torque_low, p.torque_high, " \
  "p.grounding, p.era_from, p.era_until, " OHMKIN_SOURCE_COLUMNS " FROM sender p JOIN source s ON s.id = p.source "
#define ORIGINAL_SENDERS                                                                 \
  "SELECT o.sender, o.line, o.engine, o.year_from, o.year_until, " OHMKIN_SOURCE_COLUMNS \
  " FROM original_sender o JOIN source s ON s.id = o.source "
#define STANDING_IN                                              \
  "SELECT i.sender, i.replaces, i.since, " OHMKIN_SOURCE_COLUMNS \
  " FROM stands_in_for i JOIN source s ON s.id = i.source "

Sender readSender(Row& row) {
  Sender p;
  p.id = row.key<SenderKey>();
  p.name = row.text();
  p.kind = row.oneOf(kKinds);
  p.family = row.maybeKey<FamilyKey>();
  p.thread = row.key<ThreadKey>();
  p.terminal = row.key<TerminalKey>();
  p.reach = row.maybe(millimetres);
  p.hex = row.maybe(millimetres);
  p.torqueLow = row.maybe(newtonMetres);
  p.torqueHigh = row.maybe(newtonMetres);
  p.grounding = row.oneOf(kGroundings);
  p.fittedNew.from = row.maybeWhole();
  p.fittedNew.until = row.maybeWhole();
  p.source = row.source();
  return p;
}

OriginalSender readOriginalSender(Row& row) {
  OriginalSender o;
  o.sender = row.key<SenderKey>();
  o.line = row.key<LineKey>();
  o.engine = row.key<EngineKey>();
  o.years = row.modelYears();
  o.source = row.source();
  return o;
}

StandsInFor readStandsInFor(Row& row) {
  StandsInFor i;
  i.sender = row.key<SenderKey>();
  i.replaces = row.key<SenderKey>();
  i.since = row.text();
  i.source = row.source();
  return i;
}

/// Breadth first from `start`: `steps` are the links leaving a part, `next` the part a link leads to.
template <class Steps, class Next>
std::vector<StandsInFor> chain(const SenderKey& start, Steps steps, Next next) {
  std::vector<StandsInFor> found;
  std::set<SenderKey> met{start};
  std::vector<SenderKey> open{start};
  while (!open.empty()) {
    std::vector<SenderKey> further;
    for (const SenderKey& part : open)
      for (StandsInFor& link : steps(part))
        if (met.insert(next(link)).second) {
          further.push_back(next(link));
          found.push_back(std::move(link));
        }
    open = std::move(further);
  }
  return found;
}

}  // namespace

std::string_view text(SenderKind kind) { return wordFor(kKinds, kind); }
std::optional<SenderKind> senderKind(std::string_view text) {
  for (const auto& [kind, word] : kKinds)
    if (word == text) return kind;
  return {};
}
std::string_view text(Grounding grounding) { return wordFor(kGroundings, grounding); }

std::vector<Sender> senders(const Catalogue& catalogue) { return ask(catalogue, SENDERS "ORDER BY p.id", readSender); }

std::vector<Sender> sendersWithThreads(const Catalogue& catalogue, std::span<const ThreadKey> threads) {
  std::vector<Sender> all;
  for (const ThreadKey& thread : std::set<ThreadKey>(threads.begin(), threads.end())) {
    for (Sender& sender : ask(catalogue, SENDERS "WHERE p.thread = ? ORDER BY p.id", readSender, thread.text))
      append(all, std::move(sender));
  }
  return all;
}

std::vector<Sender> sendersOfFamily(const Catalogue& catalogue, const FamilyKey& family) {
  return ask(catalogue, SENDERS "WHERE p.family = ? ORDER BY p.id", readSender, family.text);
}

std::optional<Sender> sender(const Catalogue& catalogue, const SenderKey& key) {
  return first(ask(catalogue, SENDERS "WHERE p.id = ?", readSender, key.text));
}

std::vector<Sender> sendersNumbered(const Catalogue& catalogue, std::string_view partNumber) {
  return ask(
      catalogue,
      SENDERS
      "WHERE replace(replace(replace(replace(upper(p.id), ' ', ''), '-', ''), '.', ''), '/', '') = ? ORDER BY p.id",
      readSender, plainNumber(partNumber));
}

std::vector<std::string> partNumbers(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT id FROM sender ORDER BY id", onlyText);
}

std::vector<OriginalSender> originalSenders(const Catalogue& catalogue, const LineKey& line, const EngineKey& engine,
                                            ModelYear year) {
  return ask(catalogue,
             ORIGINAL_SENDERS
             "WHERE o.line = ?1 AND o.engine = ?2 AND o.year_from <= ?3 AND o.year_until > ?3 ORDER BY o.sender",
             readOriginalSender, line.text, engine.text, year.value);
}

std::vector<OriginalSender> originalUses(const Catalogue& catalogue, const SenderKey& sender) {
  return ask(catalogue, ORIGINAL_SENDERS "WHERE o.sender = ? ORDER BY o.line, o.engine, o.year_from",
             readOriginalSender, sender.text);
}

std::vector<StandsInFor> replacements(const Catalogue& catalogue, const SenderKey& sender) {
  return chain(
      sender,
      [&](const SenderKey& part) {
        return ask(catalogue, STANDING_IN "WHERE i.replaces = ? ORDER BY i.sender", readStandsInFor, part.text);
      },
      [](const StandsInFor& link) { return link.sender; });
}

std::vector<StandsInFor> replacedParts(const Catalogue& catalogue, const SenderKey& sender) {
  return chain(
      sender,
      [&](const SenderKey& part) {
        return ask(catalogue, STANDING_IN "WHERE i.sender = ? ORDER BY i.replaces", readStandsInFor, part.text);
      },
      [](const StandsInFor& link) { return link.replaces; });
}

}  // namespace ohmkin::catalog
