#pragma once
#include <catalog/senders.h>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Senders judged alike: part number, name, years, source and what is on the shelf are all that tells them apart. A
/// large catalogue has many parts and few such groups; each question here goes by an index to the group it means.
namespace ohmkin::catalog {

struct SenderGroup {
  ThreadKey thread;
  std::string likeness;  ///< tells the groups of one thread apart
  std::optional<FamilyKey> family;
  SenderKind kind = SenderKind::variableSender;
  TerminalKey terminal;
  std::string body;  ///< grounding, reach, hex and torque: the same text, the same body
  SenderKey first;   ///< of its parts, by number
  std::size_t senders = 0;
};
/// Of one thread, or of one family with that thread.
std::vector<SenderGroup> senderGroups(const Catalogue& catalogue, const ThreadKey& thread);
std::vector<SenderGroup> senderGroups(const Catalogue& catalogue, const ThreadKey& thread, const FamilyKey& family);

/// How many there are, counted up to `most`.
std::size_t sendersUpTo(const Catalogue& catalogue, const ThreadKey& thread, std::size_t most);
std::size_t sendersUpTo(const Catalogue& catalogue, const FamilyKey& family, std::size_t most);

/// A part and the group it is of.
struct GroupedSender {
  SenderKey id;
  ThreadKey thread;
  std::string likeness;
  bool superseded = false;
};
std::optional<GroupedSender> groupedSender(const Catalogue& catalogue, const SenderKey& sender);
/// Of the whole catalogue, by number. Their likeness is told no further than to the terminal: lengths become text
/// slowly, and few groups differ by them alone.
std::vector<GroupedSender> sendersOnTheShelf(const Catalogue& catalogue);
/// So much of a likeness as sendersOnTheShelf tells.
std::string_view toTerminal(const SenderGroup& group);
std::vector<GroupedSender> sendersWithBenchCurves(const Catalogue& catalogue);  ///< variable ones, by number

/// Of a group: those with none on the shelf, superseded or not, by number; at most so many.
std::vector<SenderKey> sendersOffTheShelf(const Catalogue& catalogue, const SenderGroup& group, bool superseded,
                                          std::size_t most);

/// The first variable sender by number, of that thread or family, that an engine left the works with in model years
/// that begin by `last` and end after `first`.
std::optional<SenderKey> firstOriginal(const Catalogue& catalogue, const EngineKey& engine, const ThreadKey& thread,
                                       ModelYear first, ModelYear last);
std::optional<SenderKey> firstOriginal(const Catalogue& catalogue, const EngineKey& engine, const FamilyKey& family,
                                       ModelYear first, ModelYear last);

}  // namespace ohmkin::catalog
