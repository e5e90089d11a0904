#include <catalog/change.h>
#include <catalog/layout_writer.h>
#include <catalog/search_index.h>
#include <fmt/format.h>

namespace ohmkin::catalog {
namespace {

/// The layout in one line, for the change log.
std::string inOneLine(const DateLayoutRecord& layout) {
  std::string line = fmt::format("{}; {};", layout.name, text(layout.foundOn));
  for (const DateField& field : layout.fields)
    line += fmt::format(" [{}{}{}{}]", text(field.kind), field.text.empty() ? "" : ":", field.text,
                        field.optional ? "?" : "");
  return line + fmt::format("; example '{}' {}; {}", layout.example, isoDate(layout.exampleDate), cite(layout.source));
}

void writeRows(Connection& connection, const DateLayoutRecord& layout) {
  const std::string source = "shop-layout-" + layout.id.text;
  change(
      connection,
      "INSERT INTO source (id, kind, citation, confidence, pack) VALUES (?, ?, ?, ?, 'shop') ON CONFLICT (id) DO "
      "UPDATE "
      "SET kind = excluded.kind, citation = excluded.citation, confidence = excluded.confidence, pack = excluded.pack",
      source, std::string(text(layout.source.kind)), layout.source.citation, layout.source.confidence);
  change(connection, "DELETE FROM date_field WHERE layout = ?", layout.id.text);
  change(connection,
         "INSERT INTO date_layout (id, name, found_on, example, example_date, source, pack) VALUES (?, ?, ?, ?, ?, ?, "
         "'shop') ON CONFLICT (id) DO UPDATE SET name = excluded.name, found_on = excluded.found_on, "
         "example = excluded.example, example_date = excluded.example_date, source = excluded.source, pack = "
         "excluded.pack",
         layout.id.text, layout.name, std::string(text(layout.foundOn)), layout.example, isoDate(layout.exampleDate),
         source);
  int ordinal = 0;
  for (const DateField& field : layout.fields)
    change(connection,
           "INSERT INTO date_field (layout, ordinal, kind, text, optional, pack) VALUES (?, ?, ?, ?, ?, 'shop')",
           layout.id.text, ++ordinal, std::string(text(field.kind)), field.text, field.optional ? 1 : 0);
}

/// "shop", or the id of a pack; none where there is no such layout.
std::optional<std::string> layoutOwner(const Catalogue& catalogue, const LayoutKey& key) {
  return first(ask(catalogue, "SELECT pack FROM date_layout WHERE id = ?", onlyText, key.text));
}

}  // namespace

Expected<LayoutKept> keepLayout(Catalogue& catalogue, const DateLayoutRecord& layout, std::string_view who,
                                bool replace) {
  Connection& connection = catalogue.connection();
  try {
    Change whole(connection);
    const auto before = dateLayout(catalogue, layout.id);
    LayoutKept kept;
    if (before) {
      kept = {true, layoutOwner(catalogue, layout.id).value_or("")};
      if (!replace)
        return refuse("layout-exists", layout.id.text,
                      kept.replacedOwner == "shop" ? "a layout the shop already has"
                                                   : fmt::format("a layout of the pack '{}'", kept.replacedOwner),
                      "an id that is free, or leave to replace it");
    }
    writeRows(connection, layout);
    indexRow(connection, "date_layout", layout.id.text);
    logChange(connection, who, before ? "row changed" : "row added", "date_layout " + layout.id.text,
              before ? inOneLine(*before) : std::string(), inOneLine(layout));
    whole.commit();
    return kept;
  } catch (const SQLite::Exception& failure) {
    if (breaksRule(failure))
      return refuse("row-refused", layout.id.text, "a layout that breaks a rule of the tables", brokenRule(failure));
    rethrow(failure, catalogue.file());
  }
}

}  // namespace ohmkin::catalog
