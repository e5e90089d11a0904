#pragma once
#include <catalog/row_editor.h>
#include <workflow/edit_changes.h>
#include <workflow/edit_rows.h>
#include <vector>

/// Inside this room only: between the fields of a form and the rows of the catalogue.
namespace ohmkin::workflow {

std::string placeText(const FieldPlace& place);  ///< what fieldPlace() reads

Thing thingOf(const EditKind& kind, const catalog::ThingState& state, const DisplayUnits& units);

struct BuiltState {
  catalog::ThingState state;
  std::vector<Refusal> refusals;
};
/// The rows the fields say, every field and row checked by the rules of the exchange format. A text that is still what
/// was shown of `before` stands for the very value it was shown of.
BuiltState stateOf(const catalog::Catalogue& catalogue, const EditKind& kind, const Thing& thing,
                   const std::optional<catalog::ThingState>& before, const DisplayUnits& units);

/// References that lead nowhere, `newSource` aside.
std::vector<Refusal> danglingOf(const catalog::Catalogue& catalogue, const EditKind& kind,
                                const catalog::ThingState& state, const std::string& newSource = {});

std::vector<FieldChange> differences(const std::optional<catalog::ThingState>& before,
                                     const std::optional<catalog::ThingState>& after, const DisplayUnits& units);

/// "sender SN-1"
std::string nameOf(const EditKind& kind, const std::vector<catalog::Cell>& key);
std::vector<catalog::Cell> keyOf(const EditKind& kind, const catalog::ThingState& state);

/// What the rows mean together, once they are written: a curve that goes one way, a dial that can be read, a layout
/// that reads its example, no part that replaces itself. By the same code that answers questions.
std::vector<Refusal> unsound(const catalog::Catalogue& catalogue, const catalog::ThingState& written);
/// The part of it that looks at other rows, for what was there before.
std::vector<Refusal> circular(const catalog::Catalogue& catalogue, const catalog::ThingState& written);

std::vector<UsedBy> inWords(const std::vector<catalog::Referring>& referring);

}  // namespace ohmkin::workflow
