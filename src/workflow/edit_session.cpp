#include <fmt/format.h>
#include <workflow/edit_attempt.h>
#include <workflow/edit_session.h>
#include <workflow/edit_states.h>

namespace ohmkin::workflow {
namespace {

using catalog::ThingState;

std::string jsonOf(const std::optional<ThingState>& state) { return state ? catalog::asJson(*state) : std::string(); }

/// Logs and keeps what was tried, and reads it as it is now.
Editing kept(catalog::RowEditor& editor, const Attempt& attempt, const EditKind& kind, const std::string& who,
             const std::string& what, const DisplayUnits& units) {
  const auto key = keyOf(kind, attempt.now ? *attempt.now : *attempt.before);
  catalog::ChangeLine line;
  line.who = who;
  line.what = what;
  line.subject = catalog::subjectOf(kind.name, key);
  line.before = jsonOf(attempt.before);
  line.after = jsonOf(attempt.now);
  line.id = editor.log(who, what, line.subject, line.before, line.after);
  if (const auto done = editor.keep(); !done) return tl::make_unexpected(refusedFor(done.error()));
  Edited edited{line.id, {}, shownChange(line, units).sentence};
  if (attempt.now) edited.thing = thingOf(kind, *attempt.now, units);
  const bool pack = attempt.before && attempt.before->pack != "shop";
  if (pack && attempt.now && attempt.now->pack == "shop") edited.sentence += "; it is the shop's own now";
  if (pack && !attempt.now)
    edited.sentence += fmt::format("; a later version of '{}' may bring it back", attempt.before->pack);
  edited.sentence += '.';
  return edited;
}

tl::unexpected<EditRefusal> nothing(const char* code, const char* expected) {
  return tl::make_unexpected(refusedFor({code, "", "nothing", expected}));
}

const EditKind* kindOf(const Thing& thing) { return editKind(thing.kind); }

tl::unexpected<EditRefusal> kindUnknown(const Thing& thing) {
  return tl::make_unexpected(
      refusedFor({"kind-unknown", "kind", fmt::format("'{}'", thing.kind), "a kind of thing that can be edited"}));
}

}  // namespace

std::string EditRefusal::text() const {
  std::string all;
  for (const Refusal& reason : reasons) all += (all.empty() ? "" : "\n") + reason.sentence();
  return all;
}

EditSession::EditSession(catalog::Catalogue& catalogue, std::string who, DisplayUnits units)
    : catalogue_(catalogue), who_(std::move(who)), units_(units) {}

Editing EditSession::save(const Thing& thing, const std::optional<NewSource>& source) {
  const EditKind* kind = kindOf(thing);
  if (kind == nullptr) return kindUnknown(thing);
  catalog::RowEditor editor(catalogue_);
  const auto attempt = attemptSave(catalogue_, editor, *kind, thing, source, units_);
  if (!attempt) return tl::make_unexpected(attempt.error());
  if (!attempt->changed)
    return Edited{0, thingOf(*kind, *attempt->before, units_),
                  nameOf(*kind, keyOf(*kind, *attempt->before)) + ": nothing had changed."};
  const bool renamed = attempt->before && keyOf(*kind, *attempt->before) != keyOf(*kind, *attempt->now);
  const char* what = !attempt->before ? "row added" : renamed ? "row renamed" : "row changed";
  auto edited = kept(editor, *attempt, *kind, who_, what, units_);
  if (!edited) return edited;
  done_.push_back({edited->change, 0});
  undone_.clear();
  return edited;
}

Editing EditSession::remove(const Thing& thing) {
  const EditKind* kind = kindOf(thing);
  if (kind == nullptr) return kindUnknown(thing);
  catalog::RowEditor editor(catalogue_);
  const auto attempt = attemptRemove(catalogue_, editor, *kind, thing, units_);
  if (!attempt) return tl::make_unexpected(attempt.error());
  auto edited = kept(editor, *attempt, *kind, who_, "row deleted", units_);
  if (!edited) return edited;
  done_.push_back({edited->change, 0});
  undone_.clear();
  return edited;
}

Editing EditSession::back(std::int64_t change, const std::string& what) {
  catalog::RowEditor editor(catalogue_);
  const auto line = catalog::change(catalogue_, change);
  if (!line)
    return tl::make_unexpected(
        refusedFor({"change-unknown", "", fmt::format("change {}", change), "the number of a change of the log"}));
  const auto attempt = attemptBack(catalogue_, editor, *line, units_);
  if (!attempt) return tl::make_unexpected(attempt.error());
  const EditKind* kind = editKind(attempt->now ? attempt->now->table : attempt->before->table);
  return kept(editor, *attempt, *kind, who_, what, units_);
}

Editing EditSession::undo() {
  if (done_.empty()) return nothing("nothing-to-undo", "a change made here");
  const Step step = done_.back();
  auto edited = back(step.change, fmt::format("change {} undone", step.change));
  if (!edited) return edited;
  done_.pop_back();
  undone_.push_back({edited->change, step.change});
  return edited;
}

Editing EditSession::redo() {
  if (undone_.empty()) return nothing("nothing-to-redo", "a change that was undone here");
  const Step step = undone_.back();
  auto edited = back(step.change, fmt::format("change {} redone", step.first));
  if (!edited) return edited;
  undone_.pop_back();
  done_.push_back({edited->change, 0});
  return edited;
}

Editing EditSession::revert(std::int64_t change) {
  auto edited = back(change, fmt::format("change {} reverted", change));
  if (!edited) return edited;
  done_.push_back({edited->change, 0});
  undone_.clear();
  return edited;
}

}  // namespace ohmkin::workflow
