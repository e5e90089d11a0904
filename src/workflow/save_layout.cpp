#include <catalog/layout_writer.h>
#include <dating/decode.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/save_layout.h>
#include <algorithm>
#include <array>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kLongestName = 200;
constexpr std::size_t kLongestId = 64;

constexpr std::array kStated{catalog::SourceKind::published, catalog::SourceKind::makerSheet,
                             catalog::SourceKind::bench, catalog::SourceKind::commonPractice};

std::string_view trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1);
}

bool mayStandInId(char c) { return ('a' <= c && c <= 'z') || ('0' <= c && c <= '9'); }

Expected<void> checkNames(const dating::Layout& layout) {
  if (trimmed(layout.name).empty())
    return refuse("layout-name", "name", "none",
                  "a name to know the layout by, for example month letter, day, year digit");
  if (layout.name.size() > kLongestName)
    return refuse("layout-name", "name", fmt::format("{} characters", layout.name.size()),
                  fmt::format("at most {}", kLongestName));
  const bool fine = !layout.id.empty() && layout.id.size() <= kLongestId && layout.id.front() != '-' &&
                    layout.id.back() != '-' &&
                    std::all_of(layout.id.begin(), layout.id.end(), [](char c) { return c == '-' || mayStandInId(c); });
  if (!fine)
    return refuse(
        "layout-id", "id", fmt::format("'{}'", layout.id),
        fmt::format("small letters, digits and hyphens between them, at most {}, for example shop-head", kLongestId));
  return {};
}

catalog::DateLayoutRecord recordOf(const dating::Layout& layout, const LayoutToSave& asked) {
  catalog::DateLayoutRecord record;
  record.id = catalog::LayoutKey(layout.id);
  record.name = trimmed(layout.name);
  for (const auto place : {catalog::FoundOn::head, catalog::FoundOn::block, catalog::FoundOn::intake,
                           catalog::FoundOn::housing, catalog::FoundOn::assemblyStamp})
    if (catalog::text(place) == dating::text(layout.foundOn)) record.foundOn = place;
  record.example = trimmed(asked.example);
  record.exampleDate = asked.exampleDate;
  record.source = {
      {}, asked.source.kind, std::string(trimmed(asked.source.citation)), usualConfidence(asked.source.kind)};
  for (const dating::Field& field : layout.fields) {
    for (int kind = 0; kind <= static_cast<int>(catalog::DateFieldKind::separator); ++kind) {
      const auto same = static_cast<catalog::DateFieldKind>(kind);
      if (catalog::text(same) == dating::text(field.kind)) record.fields.push_back({same, field.text, field.optional});
    }
  }
  return record;
}

std::string kindsStated() {
  std::string all;
  for (const auto kind : kStated) all += (all.empty() ? "" : ", ") + std::string(catalog::text(kind));
  return all;
}

}  // namespace

double usualConfidence(catalog::SourceKind kind) {
  switch (kind) {
    case catalog::SourceKind::published:
      return 0.95;
    case catalog::SourceKind::makerSheet:
      return 0.9;
    case catalog::SourceKind::bench:
      return 0.8;
    case catalog::SourceKind::commonPractice:
      return 0.5;
    case catalog::SourceKind::demo:
      return 0;
  }
  return 0;
}

Expected<void> checkLayoutExample(const dating::Layout& layout, const std::string& example, Date day) {
  if (trimmed(example).empty())
    return refuse("layout-example", "example", "none", "a code as it is read, and the day it names");
  const auto decoded = dating::decode(layout, example);
  if (!decoded) return refuse("layout-example", "example", decoded.error().found, decoded.error().expected);
  const auto says = [&](const dating::Reading& reading) {
    return reading.plain() && reading.from <= day && day < reading.until;
  };
  if (std::any_of(decoded->readings.begin(), decoded->readings.end(), says)) return {};
  std::string expected = fmt::format("a code that the layout reads as {}, which it would write '{}'", plainDate(day),
                                     dating::encode(layout, day));
  for (const Finding& finding : decoded->findings) expected += fmt::format(" ({})", finding.sentence);
  return refuse("layout-example", "example", fmt::format("'{}'", example), std::move(expected));
}

Expected<void> checkStatedSource(const StatedSource& source) {
  if (source.kind == catalog::SourceKind::demo)
    return refuse("source-kind", "source", "demo", "where the shop knows it from: " + kindsStated());
  if (trimmed(source.citation).empty())
    return refuse("source-citation", "source", "nothing cited", "a page, a sheet, or what was seen and where");
  return {};
}

Expected<StatedSource> readSource(std::string_view text, std::string_view where) {
  const auto colon = text.find(':');
  const std::string_view named = trimmed(text.substr(0, colon));
  for (const auto kind : kStated) {
    if (folded(named) != folded(catalog::text(kind))) continue;
    StatedSource source{
        kind, std::string(colon == std::string_view::npos ? std::string_view{} : trimmed(text.substr(colon + 1)))};
    if (source.citation.empty()) break;
    return source;
  }
  return refuse("source-unreadable", std::string(where), fmt::format("'{}'", text),
                fmt::format("one of {}, then a colon and what is cited", kindsStated()));
}

Expected<dating::Field> readField(std::string_view text, std::string_view where) {
  std::string_view rest = text;
  dating::Field field;
  if (rest.ends_with('?')) {
    field.optional = true;
    rest.remove_suffix(1);
  }
  const auto colon = rest.find(':');
  if (colon != std::string_view::npos) field.text = rest.substr(colon + 1);
  const std::string_view named = trimmed(rest.substr(0, colon));
  std::vector<std::string> kinds;
  for (int kind = 0; kind <= static_cast<int>(dating::FieldKind::separator); ++kind)
    kinds.emplace_back(dating::text(static_cast<dating::FieldKind>(kind)));
  for (const std::string& kind : kinds) {
    if (folded(kind) != folded(named)) continue;
    field.kind = *dating::fieldKind(kind);
    return field;
  }
  return refuse("field-unknown", std::string(where), fmt::format("'{}'", text),
                fmt::format("KIND, KIND:TEXT or KIND:TEXT?, where KIND is one of {}{}", fmt::join(kinds, ", "),
                            perhaps(nearMisses(std::string(named), kinds))));
}

std::string fieldText(const dating::Field& field) {
  return fmt::format("{}{}{}{}", dating::text(field.kind), field.text.empty() ? "" : ":", field.text,
                     field.optional ? "?" : "");
}

Expected<dating::Layout> checkLayoutToSave(const LayoutToSave& asked) {
  if (const auto fine = checkNames(asked.layout); !fine) return tl::make_unexpected(fine.error());
  auto layout = dating::checkedLayout(asked.layout);
  if (!layout) return layout;
  if (const auto fine = checkLayoutExample(*layout, asked.example, asked.exampleDate); !fine)
    return tl::make_unexpected(fine.error());
  if (const auto fine = checkStatedSource(asked.source); !fine) return tl::make_unexpected(fine.error());
  return layout;
}

Expected<SavedLayout> saveLayout(catalog::Catalogue& catalogue, const LayoutToSave& asked, std::string_view who) {
  auto layout = checkLayoutToSave(asked);
  if (!layout) return tl::make_unexpected(layout.error());
  const auto kept = catalog::keepLayout(catalogue, recordOf(*layout, asked), who, asked.replace);
  if (!kept) return tl::make_unexpected(kept.error());
  SavedLayout saved{std::move(*layout), kept->replaced, {}};
  saved.sentence = kept->replaced
                       ? fmt::format("Layout '{}' replaced the one {} had; it is the shop's own now.", saved.layout.id,
                                     kept->replacedOwner == "shop" ? std::string("the shop")
                                                                   : fmt::format("the pack '{}'", kept->replacedOwner))
                       : fmt::format("Layout '{}' added, the shop's own.", saved.layout.id);
  return saved;
}

std::string layoutIdFrom(std::string_view name) {
  std::string id;
  for (char c : name) {
    if ('A' <= c && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (mayStandInId(c)) id += c;
    else if (!id.empty() && id.back() != '-') id += '-';
    if (id.size() == kLongestId) break;
  }
  while (!id.empty() && id.back() == '-') id.pop_back();
  return id;
}

}  // namespace ohmkin::workflow
