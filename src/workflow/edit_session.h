#pragma once
#include <workflow/edit_changes.h>
#include <workflow/edit_rows.h>
#include <tl/expected.hpp>

/// Saving, deleting, undo and redo. Each is one transaction with its line in the change log, whole or not at all.
namespace ohmkin::workflow {

/// Why nothing was changed.
struct EditRefusal {
  std::vector<Refusal> reasons;            ///< at least one; `where` as fieldPlace() reads it
  std::vector<UsedBy> usedBy;              ///< what stands in the way of deleting or renaming
  std::vector<FieldChange> conflict;       ///< before: as it was thought to be, after: as it is now
  [[nodiscard]] std::string text() const;  ///< all reasons, a line each
};

struct Edited {
  std::int64_t change = 0;  ///< its number in the log; 0: nothing had changed, nothing was written
  Thing thing;              ///< as it is now; empty kind where it was deleted
  std::string sentence;     ///< "sender SN-1: changed name, reach; it is the shop's own now."
};
using Editing = tl::expected<Edited, EditRefusal>;

/// One person at one window. Undo and redo have no limit; a new change forgets what could be redone. The catalogue
/// (readWrite) outlives it.
///
/// Rules: a fact needs a source that exists or is stated with it. Saving over somebody else's change since it was read
/// is refused (edit-moved-on). What a pack owned becomes the shop's own when it is changed; a later version of the pack
/// then reports it as a conflict. A new key takes the shop's references along in the same change; refused
/// (rename-refused) for a pack's thing and where a pack's rows refer to it. Deleting what is used is refused (in-use).
class EditSession {
 public:
  EditSession(catalog::Catalogue& catalogue, std::string who, DisplayUnits units = {});
  void setUnits(const DisplayUnits& units) { units_ = units; }  ///< of what is saved and shown from now on

  Editing save(const Thing& thing, const std::optional<NewSource>& source = {});
  Editing remove(const Thing& thing);  ///< as it was read

  [[nodiscard]] bool canUndo() const { return !done_.empty(); }
  [[nodiscard]] bool canRedo() const { return !undone_.empty(); }
  /// Refused where the row moved on since, or something stands on it; what can be undone stays as it was then.
  Editing undo();
  Editing redo();

  /// Takes back any change of the log, whoever made it; can be undone like any other. Refuses change-unknown,
  /// change-not-kept (a line that holds no before and after, such as a pack loaded), change-moved-on, in-use.
  Editing revert(std::int64_t change);

  [[nodiscard]] const std::string& who() const { return who_; }

 private:
  struct Step {
    std::int64_t change = 0;  ///< what is taken back next
    std::int64_t first = 0;   ///< of an undone one: the change that was undone
  };
  Editing back(std::int64_t change, const std::string& what);

  catalog::Catalogue& catalogue_;
  std::string who_;
  DisplayUnits units_;
  std::vector<Step> done_;
  std::vector<Step> undone_;
};

}  // namespace ohmkin::workflow
