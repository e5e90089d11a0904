#pragma once
#include <catalog/row_editor.h>
#include <workflow/edit_session.h>

/// Inside this room only: a change up to the point where it would be kept.
namespace ohmkin::workflow {

struct Attempt {
  std::optional<catalog::ThingState> before;
  std::optional<catalog::ThingState> now;
  bool changed = false;
};

/// Everything of saving but the log and the commit. What is refused is left to the editor's roll-back.
tl::expected<Attempt, EditRefusal> attemptSave(const catalog::Catalogue& catalogue, catalog::RowEditor& editor,
                                               const EditKind& kind, const Thing& thing,
                                               const std::optional<NewSource>& source, const DisplayUnits& units);
tl::expected<Attempt, EditRefusal> attemptRemove(const catalog::Catalogue& catalogue, catalog::RowEditor& editor,
                                                 const EditKind& kind, const Thing& thing, const DisplayUnits& units);
/// Puts back what a line of the log had before it.
tl::expected<Attempt, EditRefusal> attemptBack(const catalog::Catalogue& catalogue, catalog::RowEditor& editor,
                                               const catalog::ChangeLine& line, const DisplayUnits& units);

Expected<std::vector<catalog::Cell>> keyFromTexts(const EditKind& kind, const std::vector<std::string>& key);
EditRefusal refusedFor(Refusal refusal);

}  // namespace ohmkin::workflow
