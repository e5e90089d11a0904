#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/date.h>
#include <quantity/quantity.h>
#include <optional>
#include <span>
#include <vector>

/// Senders and everything that looks like one.
namespace ohmkin::catalog {

enum class SenderKind {
  variableSender,
  warningSwitch,
  senderWithLampSwitch,
  pulsingContact,
  controllerSensor,
  fanSwitch
};
std::string_view text(SenderKind kind);  ///< "variable sender", …
std::optional<SenderKind> senderKind(std::string_view text);
enum class Grounding { throughCase, twoWire };
std::string_view text(Grounding grounding);

/// Calendar years, `from` up to but not including `until`; either may be unknown.
struct Era {
  std::optional<int> from;
  std::optional<int> until;
};

struct Sender {
  SenderKey id;
  std::string name;
  SenderKind kind = SenderKind::variableSender;
  std::optional<FamilyKey> family;  ///< none for switches and pulsing contacts
  ThreadKey thread;
  TerminalKey terminal;
  std::optional<Length> reach;  ///< below the hex
  std::optional<Length> hex;
  std::optional<Torque> torqueLow;
  std::optional<Torque> torqueHigh;
  Grounding grounding = Grounding::throughCase;
  Era fittedNew;
  Source source;
};

struct StandsInFor {
  SenderKey sender;    ///< the newer part
  SenderKey replaces;  ///< the older one
  std::string since;
  Source source;
};

/// Fitted new to this line with this engine in these model years.
struct OriginalSender {
  SenderKey sender;
  LineKey line;
  EngineKey engine;
  ModelYearSpan years;
  Source source;
};

std::vector<Sender> senders(const Catalogue& catalogue);  ///< all, by part number
std::vector<Sender> sendersWithThreads(const Catalogue& catalogue, std::span<const ThreadKey> threads);
std::vector<Sender> sendersOfFamily(const Catalogue& catalogue, const FamilyKey& family);
std::optional<Sender> sender(const Catalogue& catalogue, const SenderKey& key);
/// Letter case, blanks and the signs - . / aside.
std::vector<Sender> sendersNumbered(const Catalogue& catalogue, std::string_view partNumber);
std::vector<std::string> partNumbers(const Catalogue& catalogue);  ///< for near misses and completion

std::vector<OriginalSender> originalSenders(const Catalogue& catalogue, const LineKey& line, const EngineKey& engine,
                                            ModelYear year);
std::vector<OriginalSender> originalUses(const Catalogue& catalogue, const SenderKey& sender);

/// The chain towards newer parts, nearest step first; a chain that bites its tail ends there.
std::vector<StandsInFor> replacements(const Catalogue& catalogue, const SenderKey& sender);
/// The chain towards the older parts it stands in for, nearest step first.
std::vector<StandsInFor> replacedParts(const Catalogue& catalogue, const SenderKey& sender);

}  // namespace ohmkin::catalog
