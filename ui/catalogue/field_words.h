#pragma once
#include <workflow/edit_session.h>
#include <QString>

/// What editing says of fields and refusals, in the window's words.
namespace ohmkin::shelves {

/// "Found '5x', expected a number above 0." without the place: it stands at the field.
QString sentenceAt(const Refusal& refusal);
/// All reasons of it, a line each; labels for columns where a reason says its place.
QString sentenceOf(const workflow::EditRefusal& refused, const std::string& kind);
/// What stands in a field when nothing is typed: "°C", "one of …", "as 1971-08-22".
QString hintOf(const workflow::EditField& field);
/// Help and range in one line; may be empty.
QString helpOf(const workflow::EditField& field);
/// The choices of a field as offered: an empty one first where it may be left out, yes and no where it is that.
QStringList choicesOf(const workflow::EditField& field);
/// Why a text would not do, whatever the catalogue holds; empty: it would.
QString complaintOf(const workflow::EditField& field, const QString& text, const DisplayUnits& units);
/// The field a place of a refusal names; null where it names none.
const workflow::EditField* fieldAt(const workflow::EditKind& kind, const workflow::FieldPlace& place);

}  // namespace ohmkin::shelves
