#pragma once
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What can be edited, as data: a form and a table are made from it, and so are the words of `ohmkin edit`.
namespace ohmkin::workflow {

enum class EditType { text, wholeNumber, number, date, yesNo };

/// What a number is kept in, and so the unit of a bare number. Other units may be typed: 185 °F, 3/8 in, 15 psi, 8 %.
enum class EditUnit {
  none,
  celsius,
  kelvin,  ///< a difference
  ohms,
  millimetres,
  metres,
  newtonMetres,  ///< never bare: lbf·ft is as usual
  degrees,       ///< clockwise from straight up
  volts,
  kilopascals,
  part  ///< a part of something: 0.08, or 8 %
};

struct EditField {
  std::string table;  ///< the kind's, or the part's
  std::string name;   ///< stable, the column: "torque_low"
  std::string label;  ///< "Torque, least"
  std::string help;   ///< one line; may be empty
  EditType type = EditType::text;
  EditUnit unit = EditUnit::none;
  bool required = false;
  bool key = false;                  ///< a part of what names the thing
  std::vector<std::string> choices;  ///< the only values there are; empty: any
  std::string refersTo;              ///< the kind whose key it holds; empty: none. See completions()
  std::string range;                 ///< "above 0 and at most 1"; empty: none
};

/// Rows that belong to a thing and are saved with it: marks of a gauge, samples of a curve.
struct EditPart {
  std::string name;               ///< stable: "dial_mark"
  std::string label;              ///< "Marks"
  std::vector<EditField> fields;  ///< without the thing itself and, where `inOrder`, without the number in the order
  bool inOrder = false;           ///< the order of the rows is kept
};

struct EditKind {
  std::string name;               ///< stable: "vehicle_line"
  std::string label;              ///< "vehicle line"
  std::string plural;             ///< "vehicle lines"
  std::string help;               ///< one line
  std::vector<EditField> fields;  ///< the key's first
  std::vector<EditPart> parts;
  bool needsSource = false;
  [[nodiscard]] const EditField* field(std::string_view name) const;  ///< none: no such field
  [[nodiscard]] const EditPart* part(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> key() const;  ///< names of its fields, one in most kinds
};

/// All kinds, what is referred to first. Made once.
std::span<const EditKind> editKinds();
/// By its name or label, however it is written ("Vehicle lines", "vehicle-line"); none: no such kind.
const EditKind* editKind(std::string_view name);

}  // namespace ohmkin::workflow
