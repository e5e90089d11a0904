#include <embedded/ohmkin_tables.h>
#include <exchange/formula_guard.h>
#include <exchange/licence_text.h>
#include <exchange/package_writer.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

namespace ohmkin::exchange {
namespace {

using nlohmann::ordered_json;

constexpr std::string_view kLineEnd = "\r\n";  // RFC 4180

std::string cellText(const Cell& cell, const FieldDefinition& field) {
  const std::string text = textOf(cell);
  return std::holds_alternative<std::string>(cell) && isGuarded(field) ? guarded(text) : text;
}

void putCell(std::string& csv, const std::string& text) {
  const bool quoted = text.find_first_of(",\"\r\n") != std::string::npos ||
                      (!text.empty() && (text.front() == ' ' || text.back() == ' '));
  if (!quoted) {
    csv += text;
    return;
  }
  csv += '"';
  for (const char c : text) {
    csv += c;
    if (c == '"') csv += c;
  }
  csv += '"';
}

std::string csvOf(const Table& table) {
  std::string csv;
  std::vector<const FieldDefinition*> fields;
  for (const std::string& column : table.columns) {
    if (!fields.empty()) csv += ',';
    csv += column;
    fields.push_back(table.definition->field(column));
  }
  csv += kLineEnd;
  for (std::size_t r = 0; r < table.size(); ++r) {
    const auto row = table.row(r);
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (c > 0) csv += ',';
      putCell(csv, cellText(row[c], *fields[c]));
    }
    csv += kLineEnd;
  }
  return csv;
}

/// The fields as schema/catalogue-tables.json has them, in the words every Table Schema tool knows: an exclusive bound
/// is written as a bound, which is weaker, and our own words are left out.
ordered_json plainField(ordered_json field) {
  field.erase("blanks");
  const auto constraints = field.find("constraints");
  if (constraints == field.end()) return field;
  for (const auto& [exclusive, plain] : {std::pair("exclusiveMinimum", "minimum"), {"exclusiveMaximum", "maximum"}})
    if (const auto bound = constraints->find(exclusive); bound != constraints->end()) {
      const ordered_json value = *bound;
      constraints->erase(exclusive);
      if (!constraints->contains(plain)) (*constraints)[plain] = value;
    }
  return field;
}

using Keys = std::set<std::string, std::less<>>;

/// Values of one column, as text.
Keys valuesOf(const Table& table, const std::string& column) {
  Keys all;
  const auto at = std::find(table.columns.begin(), table.columns.end(), column) - table.columns.begin();
  for (std::size_t r = 0; r < table.size(); ++r)
    if (const auto* text = std::get_if<std::string>(&table.row(r)[static_cast<std::size_t>(at)])) all.insert(*text);
  return all;
}

/// Said only where it holds within the package: a tool that checks it cannot see the catalogue.
bool holdsInside(const Table& table, const std::string& column, const std::string& refersTo, const Package& package) {
  const auto whole = std::find_if(package.tables.begin(), package.tables.end(),
                                  [&](const Table& t) { return t.definition->name == refersTo; });
  if (whole == package.tables.end()) return false;
  const Keys there = valuesOf(*whole, whole->definition->primaryKey.front());
  const Keys asked = valuesOf(table, column);
  return std::includes(there.begin(), there.end(), asked.begin(), asked.end());
}

ordered_json schemaOf(const Table& table, const Package& package, const ordered_json& definitions) {
  ordered_json schema;
  for (const auto& definition : definitions.at("tables")) {
    if (definition.at("name") != table.definition->name) continue;
    const ordered_json& whole = definition.at("schema");
    schema["fields"] = ordered_json::array();
    for (const std::string& column : table.columns)
      for (const auto& field : whole.at("fields"))
        if (field.at("name") == column) schema["fields"].push_back(plainField(field));
    schema["primaryKey"] = whole.at("primaryKey");
    schema["missingValues"] = ordered_json::array({""});
    ordered_json inside = ordered_json::array();
    for (const auto& key : whole.value("foreignKeys", ordered_json::array()))
      if (holdsInside(table, key.at("fields"), key.at("reference").at("resource"), package)) inside.push_back(key);
    if (!inside.empty()) schema["foreignKeys"] = inside;
  }
  return schema;
}

ordered_json licencesOf(std::string_view text) {
  ordered_json all = ordered_json::array();
  while (!text.empty()) {
    const auto end = text.find(", ");
    const std::string one(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 2);
    ordered_json licence;
    licence["name"] = licenceName(one);
    if (licence["name"] != one) licence["title"] = one;
    all.push_back(std::move(licence));
  }
  return all;
}

std::string descriptorOf(const Package& package) {
  const ordered_json definitions = ordered_json::parse(tables::files().front().text);
  ordered_json document;
  document["profile"] = "tabular-data-package";
  document["name"] = package.descriptor.id;
  document["title"] = package.descriptor.title;
  document["version"] = package.descriptor.version;
  if (!package.descriptor.licence.empty()) document["licenses"] = licencesOf(package.descriptor.licence);
  document["resources"] = ordered_json::array();
  for (const Table& table : package.tables) {
    ordered_json resource;
    resource["name"] = table.definition->name;
    resource["path"] = table.file;
    resource["profile"] = "tabular-data-resource";
    resource["format"] = "csv";
    resource["mediatype"] = "text/csv";
    resource["encoding"] = "utf-8";
    resource["schema"] = schemaOf(table, package, definitions);
    document["resources"].push_back(std::move(resource));
  }
  return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

bool same(const Cell& a, const Cell& b) {
  const auto empty = [](const Cell& c) {
    const auto* text = std::get_if<std::string>(&c);
    return std::holds_alternative<std::monostate>(c) || (text != nullptr && text->empty());
  };
  return a == b || (empty(a) && empty(b));
}

/// Everything is read back before it goes out; what a reader would refuse or change is complained of.
void readBack(const std::vector<WrittenFile>& files, const Package& package, Complaints& complaints) {
  std::vector<PackageFile> views;
  views.reserve(files.size());
  for (const WrittenFile& file : files) views.push_back({file.name, file.text});
  const auto back =
      readPackage(PackageSource::memory(std::move(views)), [](std::string_view, std::string_view) { return true; });
  if (!back) {
    complaints = back.error();
    return;
  }
  for (const Table& written : package.tables) {
    const Table& read = *std::find_if(back->tables.begin(), back->tables.end(),
                                      [&](const Table& t) { return t.definition == written.definition; });
    for (std::size_t i = 0; i < written.cells.size(); ++i)
      if (i >= read.cells.size() || !same(written.cells[i], read.cells[i])) {
        const std::size_t row = i / written.columns.size();
        complaints.add("cell-not-kept",
                       fmt::format("{}:{}:{}", written.file, row + 2, written.columns[i % written.columns.size()]),
                       "a value that would not come back as it is", "one that does");
        break;
      }
  }
  if (!(back->descriptor.title == package.descriptor.title && back->descriptor.licence == package.descriptor.licence))
    complaints.add("descriptor-text", "datapackage.json", shown(package.descriptor.title),
                   "a title and a licence that come back as they are");
}

}  // namespace

tl::expected<std::vector<WrittenFile>, Complaints> writePackage(const Package& package) {
  std::vector<WrittenFile> files;
  files.push_back({"datapackage.json", descriptorOf(package)});
  for (const Table& table : package.tables) files.push_back({table.file, csvOf(table)});
  Complaints complaints;
  readBack(files, package, complaints);
  if (!complaints.none()) return tl::make_unexpected(std::move(complaints));
  return files;
}

}  // namespace ohmkin::exchange
