#include <catalogue/thing_words.h>
#include <desk/catalogue_thread.h>
#include <workflow/edit_rows.h>
#include <workflow/show.h>
#include <QCoreApplication>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using workflow::EditField;
using workflow::EditKind;
using workflow::FieldTexts;

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Catalogue", text); }

QString textIn(const FieldTexts& texts, const std::string& field) {
  const auto at = texts.find(field);
  return at == texts.end() ? QString() : plain(at->second);
}

FactShown factOf(const EditField& field, const QString& text) {
  FactShown fact{plain(field.label), shown(text.toStdString()), {}};
  if (!field.refersTo.empty() && workflow::editKind(field.refersTo) != nullptr)
    fact.link = {field.refersTo, {text.toStdString()}};
  return fact;
}

SectionShown factsOf(const EditKind& kind, const workflow::Thing& thing) {
  SectionShown own;
  const std::vector<std::string> key = kind.key();
  for (const EditField& field : kind.fields) {
    const QString text = textIn(thing.fields, field.name);
    const bool titled = field.name == "name" || (field.key && key.size() == 1);
    if (text.isEmpty() || titled) continue;
    own.facts.push_back(factOf(field, text));
  }
  return own;
}

SectionShown partOf(const workflow::EditPart& part, const std::vector<FieldTexts>& rows) {
  SectionShown section;
  section.title = plain(part.label);
  std::vector<const EditField*> columns;
  for (const EditField& field : part.fields)
    if (std::any_of(rows.begin(), rows.end(),
                    [&](const FieldTexts& row) { return !textIn(row, field.name).isEmpty(); }))
      columns.push_back(&field);
  for (const EditField* field : columns) section.headings << plain(field->label);
  for (const FieldTexts& row : rows) {
    QStringList cells;
    for (const EditField* field : columns) cells << shown(textIn(row, field->name).toStdString());
    section.rows.push_back(cells);
  }
  return section;
}

QString titleOf(const workflow::Thing& thing) {
  for (const char* field : {"name", "citation", "standard"})
    if (const QString text = textIn(thing.fields, field); !text.isEmpty()) return shown(text.toStdString());
  return {};
}

/// Who names it: the first few as links, the rest counted.
std::vector<SectionShown> usageOf(const catalog::Catalogue& catalogue, const Ref& ref) {
  SectionShown usage;
  usage.title = tr("Used by");
  for (const workflow::UsedBy& each : workflow::usedBy(catalogue, ref.kind, ref.key)) {
    const EditKind* kind = workflow::editKind(each.kind);
    const bool saidBetter = ref.kind == "sender" && (each.kind == "original_sender" || each.field == "sender");
    if (kind == nullptr || kind->key().size() != 1) {
      if (saidBetter) continue;
      usage.facts.push_back({{}, shown(each.words()), {}});
      continue;
    }
    QString label = each.count == 1 ? plain(kind->label) : plain(kind->plural);
    if (each.count > static_cast<std::int64_t>(each.first.size()))
      label = tr("%1 %2, the first").arg(each.count).arg(label);
    for (const std::string& key : each.first) {
      usage.facts.push_back({label, shown(key), {each.kind, {key}}});
      label.clear();
    }
  }
  if (usage.facts.empty()) return {};
  return {usage};
}

/// What finding knows beyond the rows: where it was fitted new, what is sold today instead.
void addShown(ThingShown& thing, const catalog::Catalogue& catalogue, const DisplayUnits& units) {
  if (thing.ref.key.size() != 1) return;
  const QString word = thing.ref.kind == "engine_family" ? QStringLiteral("engine")
                       : thing.ref.kind == "family"      ? QStringLiteral("family")
                                                         : thing.kind;
  const auto kind = workflow::foundKindNamed(word.toStdString());
  if (!kind) return;
  const auto more = workflow::showThing(catalogue, thing.ref.key.front(), {*kind}, units);
  if (!more || more->id != thing.ref.key.front()) return;
  if (more->leadsTo) {
    thing.caution = shown(more->leadsTo->sentence);
    SectionShown today;
    today.title = tr("Sold today instead");
    for (const std::string& part : more->leadsTo->parts) today.facts.push_back({{}, shown(part), {"sender", {part}}});
    if (!today.facts.empty()) thing.sections.insert(thing.sections.begin(), today);
  }
  for (const workflow::ShownRows& rows : more->lists) {
    // The others stand there already: as the thing's own parts, as links, or as what is on the shelf.
    if (rows.rows.empty() || (rows.heading != "fitted new in" && rows.heading != "stands in for")) continue;
    SectionShown section;
    section.title = shown(rows.heading);
    if (!section.title.isEmpty()) section.title[0] = section.title[0].toUpper();
    if (rows.total > rows.rows.size())
      section.title = tr("%1 (%2 of %3)").arg(section.title).arg(rows.rows.size()).arg(rows.total);
    for (const std::string& row : rows.rows) section.facts.push_back({{}, shown(row), {}});
    thing.sections.push_back(section);
  }
}

}  // namespace

std::optional<ThingShown> shownThing(const OpenFile& open, const Ref& ref, const DisplayUnits& units) {
  const EditKind* kind = workflow::editKind(ref.kind);
  if (kind == nullptr) return {};
  const auto thing = workflow::readThing(open.catalogue(), ref.kind, ref.key, units);
  if (!thing) return {};
  ThingShown shownNow;
  shownNow.ref = {ref.kind, workflow::keyOf(*thing)};
  shownNow.kind = plain(kind->label);
  QStringList key;
  for (const std::string& each : shownNow.ref.key) key << plain(each);
  shownNow.number = key.join(QStringLiteral(" · "));
  shownNow.title = titleOf(*thing);
  shownNow.whose = thing->pack == "shop" ? tr("the shop's own") : tr("of the pack %1").arg(plain(thing->pack));
  shownNow.sections.push_back(factsOf(*kind, *thing));
  for (const workflow::EditPart& part : kind->parts)
    if (const auto rows = thing->parts.find(part.name); rows != thing->parts.end() && !rows->second.empty())
      shownNow.sections.push_back(partOf(part, rows->second));
  for (SectionShown& section : usageOf(open.catalogue(), shownNow.ref)) shownNow.sections.push_back(std::move(section));
  addShown(shownNow, open.catalogue(), units);
  return shownNow;
}

QString ThingShown::asText() const {
  QStringList lines{kind + QLatin1Char(' ') + number + (title.isEmpty() ? QString() : QStringLiteral(", ") + title)};
  if (!caution.isEmpty()) lines << caution;
  for (const SectionShown& section : sections) {
    if (!section.title.isEmpty()) lines << QString() << section.title;
    for (const FactShown& fact : section.facts)
      lines << (fact.label.isEmpty() ? fact.value : fact.label + QStringLiteral(": ") + fact.value);
    if (!section.headings.isEmpty()) lines << section.headings.join(QLatin1Char('\t'));
    for (const QStringList& row : section.rows) lines << row.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace ohmkin::shelves
