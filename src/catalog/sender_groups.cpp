#include <catalog/row.h>
#include <catalog/sender_groups.h>
#include <array>

namespace ohmkin::catalog {
namespace {

// The words of the index sender_by_likeness in schema/005_match.sql.
#define TO_TERMINAL "coalesce(p.family, '') || char(31) || p.kind || char(31) || p.terminal"
#define LIKENESS                                                                                                       \
  "coalesce(p.family, '') || char(31) || p.kind || char(31) || p.terminal || char(31) || p.grounding || char(31) || "  \
  "coalesce(p.reach, '') || char(31) || coalesce(p.hex, '') || char(31) || coalesce(p.torque_low, '') || char(31) || " \
  "coalesce(p.torque_high, '')"
#define SUPERSEDED "EXISTS (SELECT 1 FROM stands_in_for i WHERE i.replaces = p.id)"
#define GROUPED "p.id, p.thread, " LIKENESS ", " SUPERSEDED
#define OFF_THE_SHELF                                           \
  "SELECT p.id FROM sender p WHERE p.thread = ?1 AND " LIKENESS \
  " = ?2 AND NOT EXISTS (SELECT 1 FROM stock t WHERE t.sender = p.id AND t.quantity > 0) AND "
#define FIRST_ORIGINAL                                                                              \
  "SELECT o.sender FROM original_sender o INDEXED BY original_sender_by_engine CROSS JOIN sender p" \
  " ON p.id = o.sender WHERE o.engine = ?1 AND o.year_from <= ?2 AND o.year_until > ?3 AND p.kind = 'variable sender'"

constexpr char kBetween = '\x1f';
constexpr std::size_t kPassed = 16;  // parts of a group passed one by one before the rest are counted

SenderKey readKey(Row& row) { return row.key<SenderKey>(); }

GroupedSender readGrouped(Row& row) {
  GroupedSender one;
  one.id = row.key<SenderKey>();
  one.thread = row.key<ThreadKey>();
  one.likeness = row.text();
  one.superseded = row.flag();
  return one;
}

/// Where the group at `likeness` differs from what the tables' rules allow, the catalogue is damaged.
SenderGroup groupOf(const ThreadKey& thread, std::string likeness, Row& row) {
  SenderGroup group;
  std::array<std::size_t, 3> ends{};
  std::size_t from = 0;
  for (std::size_t& end : ends) {
    end = likeness.find(kBetween, from);
    if (end == std::string::npos) row.damaged(likeness);
    from = end + 1;
  }
  group.thread = thread;
  if (ends[0] > 0) group.family = FamilyKey{likeness.substr(0, ends[0])};
  const auto kind = senderKind(std::string_view(likeness).substr(ends[0] + 1, ends[1] - ends[0] - 1));
  if (!kind) row.damaged(likeness);
  group.kind = *kind;
  group.terminal = TerminalKey{likeness.substr(ends[1] + 1, ends[2] - ends[1] - 1)};
  group.body = likeness.substr(from);
  group.likeness = std::move(likeness);
  return group;
}

/// Groups whose likeness is from `low` up to but not including `high`. Small ones are stepped through; what is left of
/// a large one is counted by the index and jumped over.
std::vector<SenderGroup> groupsBetween(const Catalogue& catalogue, const ThreadKey& thread, const std::string& low,
                                       const std::string& high) {
  std::vector<SenderGroup> groups;
  Connection& connection = catalogue.connection();
  try {
    SQLite::Statement& from =
        connection.statement("SELECT " LIKENESS ", p.id FROM sender p WHERE p.thread = ?1 AND " LIKENESS
                             " >= ?2 AND " LIKENESS " < ?3 ORDER BY " LIKENESS ", p.id");
    SQLite::Statement& after =
        connection.statement("SELECT " LIKENESS ", p.id FROM sender p WHERE p.thread = ?1 AND " LIKENESS
                             " > ?2 AND " LIKENESS " < ?3 ORDER BY " LIKENESS ", p.id");
    SQLite::Statement& count =
        connection.statement("SELECT count(*) FROM sender p WHERE p.thread = ?1 AND " LIKENESS " = ?2");
    const Use useFrom(from);
    const Use useAfter(after);
    const Use useCount(count);
    bindAll(from, 1, thread.text, low, high);
    SQLite::Statement* steps = &from;
    while (steps->executeStep()) {
      const std::string_view likeness(steps->getColumn(0).getText(),
                                      static_cast<std::size_t>(steps->getColumn(0).size()));
      if (groups.empty() || groups.back().likeness != likeness) {
        Row row(*steps, connection);
        append(groups, groupOf(thread, row.text(), row));
        groups.back().first = row.key<SenderKey>();
      }
      SenderGroup& group = groups.back();
      if (++group.senders < kPassed) continue;
      count.reset();
      bindAll(count, 1, thread.text, group.likeness);
      if (count.executeStep()) group.senders = static_cast<std::size_t>(count.getColumn(0).getInt64());
      steps->reset();
      steps = &after;
      bindAll(after, 1, thread.text, group.likeness, high);
    }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
  return groups;
}

std::size_t readCount(Row& row) { return static_cast<std::size_t>(row.longWhole()); }

}  // namespace

std::vector<SenderGroup> senderGroups(const Catalogue& catalogue, const ThreadKey& thread) {
  return groupsBetween(catalogue, thread, "", "\xff");
}

std::vector<SenderGroup> senderGroups(const Catalogue& catalogue, const ThreadKey& thread, const FamilyKey& family) {
  return groupsBetween(catalogue, thread, family.text + kBetween, family.text + static_cast<char>(kBetween + 1));
}

std::size_t sendersUpTo(const Catalogue& catalogue, const ThreadKey& thread, std::size_t most) {
  return first(ask(catalogue, "SELECT count(*) FROM (SELECT 1 FROM sender p WHERE p.thread = ?1 LIMIT ?2)", readCount,
                   thread.text, static_cast<std::int64_t>(most)))
      .value_or(0);
}

std::size_t sendersUpTo(const Catalogue& catalogue, const FamilyKey& family, std::size_t most) {
  return first(ask(catalogue, "SELECT count(*) FROM (SELECT 1 FROM sender p WHERE p.family = ?1 LIMIT ?2)", readCount,
                   family.text, static_cast<std::int64_t>(most)))
      .value_or(0);
}

std::optional<GroupedSender> groupedSender(const Catalogue& catalogue, const SenderKey& sender) {
  return first(ask(catalogue, "SELECT " GROUPED " FROM sender p WHERE p.id = ?", readGrouped, sender.text));
}

std::vector<GroupedSender> sendersOnTheShelf(const Catalogue& catalogue) {
  return ask(
      catalogue,
      "SELECT p.id, p.thread, " TO_TERMINAL ", " SUPERSEDED
      " FROM (SELECT DISTINCT sender FROM stock WHERE quantity > 0) t CROSS JOIN sender p INDEXED BY sender_by_number "
      "ON p.id = t.sender",
      readGrouped);
}

std::string_view toTerminal(const SenderGroup& group) {
  return std::string_view(group.likeness).substr(0, group.likeness.size() - group.body.size() - 1);
}

std::vector<GroupedSender> sendersWithBenchCurves(const Catalogue& catalogue) {
  return ask(catalogue,
             "SELECT " GROUPED
             " FROM (SELECT DISTINCT sender FROM curve WHERE sender IS NOT NULL) c CROSS JOIN sender p "
             "ON p.id = c.sender WHERE p.kind = 'variable sender'",
             readGrouped);
}

std::vector<SenderKey> sendersOffTheShelf(const Catalogue& catalogue, const SenderGroup& group, bool superseded,
                                          std::size_t most) {
  const auto limit = static_cast<std::int64_t>(most);
  return superseded ? ask(catalogue, OFF_THE_SHELF SUPERSEDED " ORDER BY p.id LIMIT ?3", readKey, group.thread.text,
                          group.likeness, limit)
                    : ask(catalogue, OFF_THE_SHELF "NOT " SUPERSEDED " ORDER BY p.id LIMIT ?3", readKey,
                          group.thread.text, group.likeness, limit);
}

std::optional<SenderKey> firstOriginal(const Catalogue& catalogue, const EngineKey& engine, const ThreadKey& thread,
                                       ModelYear first, ModelYear last) {
  return catalog::first(ask(catalogue, FIRST_ORIGINAL " AND p.thread = ?4 ORDER BY o.sender LIMIT 1", readKey,
                            engine.text, last.value, first.value, thread.text));
}

std::optional<SenderKey> firstOriginal(const Catalogue& catalogue, const EngineKey& engine, const FamilyKey& family,
                                       ModelYear first, ModelYear last) {
  return catalog::first(ask(catalogue, FIRST_ORIGINAL " AND p.family = ?4 ORDER BY o.sender LIMIT 1", readKey,
                            engine.text, last.value, first.value, family.text));
}

}  // namespace ohmkin::catalog
