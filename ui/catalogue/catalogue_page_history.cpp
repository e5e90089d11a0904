#include <catalogue/catalogue_page.h>
#include <catalogue/field_words.h>
#include <desk/catalogue_thread.h>
#include <desk/snapshot.h>

/// What was changed on the page, taken back and done again.
namespace ohmkin::shelves {

using desk::shown;

void CataloguePage::changed(const workflow::Edited& edited) {
  if (edited.change != 0) {
    QString words = shown(edited.sentence);
    if (words.endsWith(QLatin1Char('.'))) words.chop(1);
    history().push(new desk::Snapshot<bool>(words, false, true, [this](const bool& done) { takeBackEdit(!done); }));
  }
  refresh();
}

void CataloguePage::moved(qint64 movement, const QString& words) {
  if (movement != 0)
    history().push(new desk::Snapshot<bool>(
        words, false, true,
        [this, id = std::make_shared<qint64>(movement)](const bool& done) { takeBackMovement(id, !done); }));
  refresh();
}

void CataloguePage::takeBackEdit(bool back) {
  if (quiet_) return;
  clerk_.tell([this, back, units = settings_.units()](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    workflow::Editing done;
    try {
      workflow::EditSession& session = open.session(units);
      done = back ? session.undo() : session.redo();
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(refusalOf(error));
    }
    return [this, back, done = std::move(done)] {
      outcome(done ? shown(done->sentence) : sentenceOf(done.error(), {}), done.has_value(), back);
      if (done && !done->thing.kind.empty() && !thing_->editing())
        thing_->open({done->thing.kind, workflow::keyOf(done->thing)});
      refresh();
    };
  });
}

/// An undone movement is made again by undoing its undoing.
void CataloguePage::takeBackMovement(const std::shared_ptr<qint64>& movement, bool back) {
  if (quiet_) return;
  clerk_.tell([this, movement, back](OpenFile& open, const std::stop_token&) -> Clerk::Then {
    Expected<workflow::MovementDone> done = tl::make_unexpected(Refusal());
    try {
      done = workflow::undoMovement(open.writable(), catalog::MovementNumber{*movement}, open.who());
      if (done) *movement = done->movement.id.value;  // read again only here, on the thread
    } catch (const catalog::CatalogueError& error) {
      done = tl::make_unexpected(error.refusal());
    }
    return [this, back, done] {
      outcome(done ? shown(done->sentence) : desk::refusalSentence(done.error()), done.has_value(), back);
      refresh();
    };
  });
}

/// Where it was refused the history goes back to where it stood.
void CataloguePage::outcome(const QString& sentence, bool done, bool wasUndo) {
  if (!done) {
    quiet_ = true;
    history().setIndex(history().index() + (wasUndo ? 1 : -1));
    quiet_ = false;
  }
  tell(done ? sentence : wasUndo ? tr("Not undone. %1").arg(sentence) : tr("Not done again. %1").arg(sentence), !done);
}

void CataloguePage::refresh() {
  thing_->reload();
  table_->refresh();
  if (desks_->currentIndex() == shelf) shelf_->reload();
  changes_->reload();
  countRows();
}

}  // namespace ohmkin::shelves
