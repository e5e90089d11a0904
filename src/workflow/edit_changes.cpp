#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/edit_changes.h>
#include <workflow/edit_states.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kFieldsNamed = 4;

std::string fieldsNamed(const std::vector<FieldChange>& fields) {
  std::vector<std::string> labels;
  for (const FieldChange& field : fields)
    if (labels.size() < kFieldsNamed) labels.push_back(field.label);
  std::string text = fmt::format("{}", fmt::join(labels, ", "));
  if (fields.size() > kFieldsNamed) text += fmt::format(" and {} more", fields.size() - kFieldsNamed);
  return text;
}

std::string verb(bool was, bool is, bool renamed) {
  if (!was) return "added";
  if (!is) return "deleted";
  return renamed ? "renamed" : "changed";
}

}  // namespace

ChangeShown shownChange(const catalog::ChangeLine& line, const DisplayUnits& units) {
  ChangeShown shown{line, fmt::format("{}: {}", line.what, line.subject), {}};
  if (!line.kept()) return shown;
  const auto before = catalog::stateFromJson(line.before);
  const auto after = catalog::stateFromJson(line.after);
  const EditKind* kind = editKind(before ? before->table : after->table);
  if (kind == nullptr) return shown;
  shown.fields = differences(before, after, units);
  const bool renamed = before && after && keyOf(*kind, *before) != keyOf(*kind, *after);
  shown.sentence = fmt::format("{} {}", nameOf(*kind, keyOf(*kind, after ? *after : *before)),
                               verb(before.has_value(), after.has_value(), renamed));
  if (before && after && !shown.fields.empty()) shown.sentence += ": " + fieldsNamed(shown.fields);
  if (line.of != 0) shown.sentence = fmt::format("{}; {}", line.what, shown.sentence);
  return shown;
}

}  // namespace ohmkin::workflow
