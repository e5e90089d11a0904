#include <exchange/references.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <algorithm>
#include <map>
#include <unordered_map>

namespace ohmkin::exchange {
namespace {

constexpr char kBetweenKeys = '\x1f';  // no text cell holds a control character

using Keys = std::unordered_map<std::string, std::size_t>;  // key → line

std::optional<std::size_t> placeOf(const Table& table, const std::string& column) {
  const auto at = std::find(table.columns.begin(), table.columns.end(), column);
  if (at == table.columns.end()) return {};
  return static_cast<std::size_t>(at - table.columns.begin());
}

/// The row's key; empty where a part of it is missing, which has been complained of.
std::string keyOf(const Table& table, std::size_t row) {
  std::string key;
  for (const std::string& column : table.definition->primaryKey) {
    const auto at = placeOf(table, column);
    const std::string part = at ? textOf(table.row(row)[*at]) : std::string();
    if (part.empty()) return {};
    if (!key.empty()) key += kBetweenKeys;
    key += part;
  }
  return key;
}

std::string forReading(std::string key) {
  std::string::size_type at = 0;
  while ((at = key.find(kBetweenKeys, at)) != std::string::npos) key.replace(at, 1, ", ");
  return key;
}

Keys keysOf(const Table& table, Complaints& complaints) {
  Keys keys;
  keys.reserve(table.size());
  for (std::size_t row = 0; row < table.size(); ++row) {
    const std::string key = keyOf(table, row);
    if (key.empty()) continue;
    const auto [other, fresh] = keys.emplace(key, table.lines[row]);
    if (!fresh)
      complaints.add("key-twice",
                     fmt::format("{}:{}:{}", table.file, table.lines[row], table.definition->primaryKey.front()),
                     shown(forReading(key)), fmt::format("a key not used before (line {} has it)", other->second));
  }
  return keys;
}

void checkReference(const Table& table, const ForeignKey& reference, const Keys* there, const KnownElsewhere& known,
                    Complaints& complaints) {
  const auto at = placeOf(table, reference.field);
  if (!at) return;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const std::string key = textOf(table.row(row)[*at]);
    if (key.empty() || (there != nullptr && there->contains(key)) || (known && known(reference.table, key))) continue;
    complaints.add("reference-dangling", fmt::format("{}:{}:{}", table.file, table.lines[row], reference.field),
                   shown(key), fmt::format("the {} of a row of {}", reference.refersTo, reference.table));
  }
}

}  // namespace

void checkKeysAndReferences(const std::vector<Table>& tables, const std::set<std::string, std::less<>>& unread,
                            const KnownElsewhere& known, Complaints& complaints) {
  std::map<std::string, Keys> keys;
  for (const Table& table : tables) keys.emplace(table.definition->name, keysOf(table, complaints));
  for (const Table& table : tables)
    for (const ForeignKey& reference : table.definition->foreignKeys) {
      if (unread.contains(reference.table)) continue;
      const auto there = keys.find(reference.table);
      checkReference(table, reference, there == keys.end() ? nullptr : &there->second, known, complaints);
    }
}

}  // namespace ohmkin::exchange
