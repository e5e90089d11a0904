#include <catalog/change_log.h>
#include <catalog/row.h>
#include <catalog/row_editor_state.h>
#include <charconv>

namespace ohmkin::catalog {
namespace {

/// "change 17 undone": 17.
std::int64_t changeIn(std::string_view what) {
  constexpr std::string_view kBegins = "change ";
  if (!what.starts_with(kBegins)) return 0;
  what.remove_prefix(kBegins.size());
  std::int64_t id = 0;
  const auto [end, error] = std::from_chars(what.data(), what.data() + what.size(), id);
  return error == std::errc{} ? id : 0;
}

#define CHANGES "SELECT id, at, who, what, subject, before, after FROM change_log "

ChangeLine readLine(Row& row) {
  ChangeLine line;
  line.id = row.longWhole();
  line.at = row.text();
  line.who = row.text();
  line.what = row.text();
  line.subject = row.text();
  line.before = row.text();
  line.after = row.text();
  line.of = changeIn(line.what);
  return line;
}

}  // namespace

bool ChangeLine::kept() const {
  const auto fits = [](const std::string& text) { return text.empty() || stateFromJson(text).has_value(); };
  return !(before.empty() && after.empty()) && fits(before) && fits(after);
}

std::vector<ChangeLine> changes(const Catalogue& catalogue, const ChangeFilter& filter) {
  // The subject is a table's name, a blank, the key; packs and imports are named by their key alone.
  return ask(catalogue,
             CHANGES
             "WHERE (?1 = 0 OR id < ?1) AND (?2 = '' OR subject = ?2 OR (instr(subject, ' ') > 0 AND substr(subject, "
             "instr(subject, ' ') + 1) = "
             "?2)) AND (?3 = '' OR lower(who) = ?3) AND (?4 = '' OR at >= ?4) AND (?5 = '' OR at < ?5) "
             "ORDER BY id DESC LIMIT ?6",
             readLine, filter.before, filter.of, loweredName(filter.who), filter.since, filter.until,
             static_cast<std::int64_t>(filter.most));
}

std::optional<ChangeLine> change(const Catalogue& catalogue, std::int64_t id) {
  return first(ask(catalogue, CHANGES "WHERE id = ?", readLine, id));
}

std::vector<ChangeLine> changesSince(const Catalogue& catalogue, std::int64_t line, std::size_t most) {
  return ask(catalogue, CHANGES "WHERE id > ? ORDER BY id LIMIT ?", readLine, line, static_cast<std::int64_t>(most));
}

}  // namespace ohmkin::catalog
