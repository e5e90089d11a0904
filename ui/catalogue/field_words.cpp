#include <catalogue/field_words.h>
#include <desk/catalogue_thread.h>
#include <QCoreApplication>
#include <QStringList>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;
using workflow::EditField;
using workflow::EditType;
using workflow::EditUnit;

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Catalogue", text); }

QString unitWords(EditUnit unit) {
  switch (unit) {
    case EditUnit::celsius:
      return tr("°C or °F");
    case EditUnit::kelvin:
      return tr("K");
    case EditUnit::ohms:
      return tr("Ω");
    case EditUnit::millimetres:
      return tr("mm, or 3/8 in");
    case EditUnit::metres:
      return tr("m");
    case EditUnit::newtonMetres:
      return tr("N·m or lbf·ft");
    case EditUnit::degrees:
      return tr("° clockwise from up");
    case EditUnit::volts:
      return tr("V");
    case EditUnit::kilopascals:
      return tr("kPa or psi");
    case EditUnit::part:
      return tr("0.08, or 8 %");
    case EditUnit::none:
      break;
  }
  return {};
}

}  // namespace

QString sentenceAt(const Refusal& refusal) {
  Refusal bare = refusal;
  bare.where.clear();
  return shown(desk::refusalSentence(bare).toStdString());
}

const EditField* fieldAt(const workflow::EditKind& kind, const workflow::FieldPlace& place) {
  if (place.part.empty()) return kind.field(place.field);
  const workflow::EditPart* part = kind.part(place.part);
  if (part == nullptr) return nullptr;
  for (const EditField& field : part->fields)
    if (field.name == place.field) return &field;
  return nullptr;
}

QString sentenceOf(const workflow::EditRefusal& refused, const std::string& kindName) {
  const workflow::EditKind* kind = workflow::editKind(kindName);
  QStringList lines;
  for (const Refusal& reason : refused.reasons) {
    const workflow::FieldPlace place = workflow::fieldPlace(reason.where);
    const EditField* field = kind == nullptr ? nullptr : fieldAt(*kind, place);
    if (field == nullptr) {
      lines << desk::refusalSentence(reason);
      continue;
    }
    const workflow::EditPart* part = place.part.empty() ? nullptr : kind->part(place.part);
    const QString where =
        part == nullptr
            ? plain(field->label)
            : QStringLiteral("%1 %2, %3").arg(plain(part->label)).arg(place.row + 1).arg(plain(field->label).toLower());
    lines << QStringLiteral("%1: %2").arg(where, sentenceAt(reason));
  }
  for (const workflow::UsedBy& user : refused.usedBy)
    if (const QString words = tr("Used by %1.").arg(plain(user.words()));
        !lines.join(QLatin1Char('\n')).contains(plain(user.words())))
      lines << words;
  for (const workflow::FieldChange& each : refused.conflict)
    lines << tr("%1 was %2 and is %3 now.")
                 .arg(plain(each.label), each.before.empty() ? tr("empty") : plain(each.before),
                      each.after.empty() ? tr("empty") : plain(each.after));
  return lines.join(QLatin1Char('\n'));
}

QString hintOf(const EditField& field) {
  if (const QString unit = unitWords(field.unit); !unit.isEmpty()) return unit;
  if (!field.refersTo.empty()) {
    const workflow::EditKind* kind = workflow::editKind(field.refersTo);
    return kind == nullptr ? QString() : tr("a %1").arg(plain(kind->label));
  }
  switch (field.type) {
    case EditType::date:
      return tr("as 1971-08-22");
    case EditType::wholeNumber:
      return tr("a whole number");
    case EditType::number:
      return tr("a number");
    default:
      return {};
  }
}

QString helpOf(const EditField& field) {
  QStringList words;
  if (!field.help.empty()) words << shown(field.help);
  if (!field.range.empty()) words << shown(field.range);
  return words.join(QStringLiteral(" · "));
}

QStringList choicesOf(const EditField& field) {
  QStringList all;
  for (const std::string& each : field.choices) all << plain(each);
  if (field.type == EditType::yesNo && all.isEmpty()) all << QStringLiteral("yes") << QStringLiteral("no");
  if (!all.isEmpty() && !field.required) all.prepend(QString());
  return all;
}

QString complaintOf(const EditField& field, const QString& text, const DisplayUnits& units) {
  const auto checked = workflow::checkField(field, text.toStdString(), units);
  return checked ? QString() : sentenceAt(checked.error());
}

}  // namespace ohmkin::shelves
