#include <catalog/row_editor_state.h>
#include <exchange/cell.h>
#include <exchange/table_definition.h>
#include <quantity/capitalised.h>
#include <quantity/near_miss.h>
#include <workflow/edit_kinds.h>
#include <workflow/edit_names.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using exchange::FieldDefinition;
using exchange::TableDefinition;

EditType typeOf(const FieldDefinition& field) {
  switch (field.type) {
    case exchange::FieldType::integer:
      return EditType::wholeNumber;
    case exchange::FieldType::number:
      return EditType::number;
    case exchange::FieldType::date:
      return EditType::date;
    case exchange::FieldType::boolean:
      return EditType::yesNo;
    case exchange::FieldType::text:
      break;
  }
  return EditType::text;
}

/// "feed_coil" → "Feed coil", where nobody has said it better.
std::string plainLabel(std::string name) {
  std::replace(name.begin(), name.end(), '_', ' ');
  return capitalised(std::move(name));
}

EditField fieldOf(const TableDefinition& table, const FieldDefinition& definition) {
  EditField field;
  field.table = table.name;
  field.name = definition.name;
  field.label = plainLabel(definition.name);
  if (const auto words = fieldWords(table.name, definition.name)) {
    field.label = words->label;
    field.unit = words->unit;
  }
  field.help = definition.description;
  field.type = typeOf(definition);
  field.required = definition.required;
  field.key = std::find(table.primaryKey.begin(), table.primaryKey.end(), definition.name) != table.primaryKey.end();
  field.choices = definition.allowed;
  field.range = exchange::boundsOf(definition);
  for (const exchange::ForeignKey& reference : table.foreignKeys)
    if (reference.field == definition.name) field.refersTo = reference.table;
  return field;
}

EditPart partOf(const catalog::EditedPart& edited) {
  const TableDefinition& table = *exchange::tableDefinition(edited.table);
  EditPart part;
  part.name = table.name;
  part.label = plainLabel(std::string(tableWords(table.name)->plural));
  for (const FieldDefinition& field : table.fields) {
    if (field.name == edited.column) continue;
    if (field.name == "ordinal") part.inOrder = true;
    else part.fields.push_back(fieldOf(table, field));
  }
  return part;
}

EditKind kindOf(const TableDefinition& table, const TableWords& words) {
  EditKind kind;
  kind.name = table.name;
  kind.label = words.label;
  kind.plural = words.plural;
  kind.help = words.help;
  for (const std::string& key : table.primaryKey) kind.fields.push_back(fieldOf(table, *table.field(key)));
  for (const FieldDefinition& field : table.fields) {
    if (kind.field(field.name) == nullptr) kind.fields.push_back(fieldOf(table, field));
    kind.needsSource = kind.needsSource || field.name == "source";
  }
  for (const catalog::EditedPart& part : catalog::editedParts(table.name)) kind.parts.push_back(partOf(part));
  return kind;
}

std::vector<EditKind> makeKinds() {
  std::vector<EditKind> all;
  for (const TableDefinition& table : exchange::tableDefinitions()) {
    const TableWords* words = tableWords(table.name);
    if (words != nullptr && !catalog::isEditedPart(table.name)) all.push_back(kindOf(table, *words));
  }
  return all;
}

}  // namespace

const EditField* EditKind::field(std::string_view wanted) const {
  const auto found = std::find_if(fields.begin(), fields.end(), [&](const EditField& f) { return f.name == wanted; });
  return found == fields.end() ? nullptr : &*found;
}

const EditPart* EditKind::part(std::string_view wanted) const {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const EditPart& p) { return p.name == wanted; });
  return found == parts.end() ? nullptr : &*found;
}

std::vector<std::string> EditKind::key() const {
  std::vector<std::string> names;
  for (const EditField& f : fields)
    if (f.key) names.push_back(f.name);
  return names;
}

std::span<const EditKind> editKinds() {
  static const std::vector<EditKind> all = makeKinds();
  return all;
}

const EditKind* editKind(std::string_view name) {
  const std::string wanted = folded(name);
  for (const EditKind& kind : editKinds())
    if (wanted == folded(kind.name) || wanted == folded(kind.label) || wanted == folded(kind.plural)) return &kind;
  return nullptr;
}

}  // namespace ohmkin::workflow
