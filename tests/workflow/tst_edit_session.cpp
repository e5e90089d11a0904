#include "edited_catalogue.h"

#include <catalog/change_log.h>
#include <rapidcheck.h>
#include <workflow/export_pack.h>
#include <workflow/load_pack.h>
#include <map>

using namespace ohmkin;
using test::code;
using test::copyOf;
using test::inFile;
using test::thing;
using test::why;
using workflow::EditSession;

/// Undo, redo, the log, and two people at one file.
class TestEditSession : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

 private slots:
  void a_change_is_logged_with_who_when_before_and_after_and_can_be_reverted() {
    const auto file = copyOf(demo_, "log.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    EditSession session(catalogue, "Jo");
    auto sender = thing(catalogue, "sender", {"BR-2201"});
    const std::string was = sender.fields["name"];
    const std::string pack = sender.pack;
    sender.fields["name"] = "another name";
    const auto saved = session.save(sender);
    QVERIFY2(saved, why(saved).c_str());
    QCOMPARE(saved->thing.pack, std::string("shop"));
    const auto lines = catalog::changes(catalogue, {"BR-2201", "jo", "2020", {}, 0, 10});
    QCOMPARE(lines.size(), std::size_t{1});
    QCOMPARE(lines.front().subject, std::string("sender BR-2201"));
    QVERIFY(lines.front().kept());
    const auto shown = workflow::shownChange(lines.front());
    QCOMPARE(shown.fields.size(), std::size_t{1});
    QCOMPARE(shown.fields.front().before, was);
    QCOMPARE(shown.fields.front().after, std::string("another name"));
    EditSession other(catalogue, "Kim");
    const auto reverted = other.revert(saved->change);
    QVERIFY2(reverted, why(reverted).c_str());
    QCOMPARE(inFile(file, "SELECT name || pack FROM sender WHERE id = 'BR-2201'"), was + pack);
    QCOMPARE(catalog::changes(catalogue, {"BR-2201", {}, {}, {}, 0, 10}).front().of, saved->change);
    QCOMPARE(code(other.revert(saved->change)), std::string("change-moved-on"));
    QCOMPARE(code(other.revert(1)), std::string("change-not-kept"));
    QCOMPARE(code(other.revert(99999)), std::string("change-unknown"));
    QVERIFY(test::sound(file));
  }

  void what_another_changed_meanwhile_is_neither_saved_over_nor_undone() {
    const auto file = copyOf(demo_, "two.ohmkin");
    auto first = catalog::Catalogue::open(file, catalog::Access::readWrite);
    auto second = catalog::Catalogue::open(file, catalog::Access::readWrite);
    EditSession jo(first, "Jo");
    EditSession kim(second, "Kim");
    auto mine = thing(first, "sender", {"BR-2201"});
    auto theirs = thing(second, "sender", {"BR-2201"});
    mine.fields["name"] = "Jo's";
    theirs.fields["name"] = "Kim's";
    QVERIFY(jo.save(mine));
    const auto over = kim.save(theirs);
    QCOMPARE(code(over), std::string("edit-moved-on"));
    QCOMPARE(over.error().conflict.size(), std::size_t{1});
    QCOMPARE(over.error().conflict.front().after, std::string("Jo's"));
    auto again = thing(second, "sender", {"BR-2201"});
    again.fields["name"] = "Kim's";
    QVERIFY(kim.save(again));
    const auto undone = jo.undo();
    QCOMPARE(code(undone), std::string("change-moved-on"));
    QVERIFY(jo.canUndo());
    QVERIFY(kim.undo());
    QVERIFY(jo.undo());
    QVERIFY(test::sound(file));
  }

  void a_later_version_of_the_pack_reports_what_the_shop_made_its_own() {
    const auto file = copyOf(demo_, "upgrade.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    auto sender = thing(catalogue, "sender", {"BR-2201"});
    const auto exported = workflow::exportPack(catalogue, {sender.pack, {}, {}, "99.0.0", {}});
    QVERIFY(exported);
    std::vector<exchange::PackageFile> files;
    for (const auto& one : exported->files) files.push_back({one.name, one.text});
    const auto package = exchange::PackageSource::memory(files);
    sender.fields["name"] = "ours";
    EditSession session(catalogue, "Jo");
    const auto saved = session.save(sender);
    QVERIFY2(saved, why(saved).c_str());
    const auto conflicts = workflow::conflictsWith(catalogue, package);
    QVERIFY(conflicts);
    QCOMPARE(conflicts->size(), std::size_t{1});
    QCOMPARE(conflicts->front().row.key, std::vector<std::string>{"BR-2201"});
    QVERIFY(workflow::loadPack(catalogue, package, "Jo"));
    QCOMPARE(inFile(file, "SELECT name || pack FROM sender WHERE id = 'BR-2201'"), std::string("oursshop"));
    // The version it was of is gone: taken back, the row stays the shop's.
    const auto undone = session.undo();
    QVERIFY2(undone, why(undone).c_str());
    QCOMPARE(inFile(file, "SELECT pack FROM sender WHERE id = 'BR-2201'"), std::string("shop"));
    QVERIFY(test::sound(file));
  }

  void any_sequence_of_edits_undo_and_redo_goes_as_the_model_goes() {
    const auto file = copyOf(demo_, "random.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    const bool held = rc::check("undo and redo", [&] {
      EditSession session(catalogue, "random");
      using State = std::map<std::string, std::string>;  // makes there are, by id
      const auto state = [&] {
        State all;
        const auto page = workflow::page(catalogue, {"make", {}, false, {}, {}, {}, 1000});
        for (const auto& row : page->rows) all[row.texts[0]] = row.texts[1];
        return all;
      };
      std::vector<State> past;
      std::vector<State> future;
      State now = state();
      const auto steps = *rc::gen::container<std::vector<std::pair<int, int>>>(
          rc::gen::pair(rc::gen::inRange(0, 5), rc::gen::inRange(0, 4)));
      for (const auto& [what, which] : steps) {
        const std::string id = "made-" + std::to_string(which);
        if (what == 0 && session.canUndo()) {
          RC_ASSERT(session.undo().has_value());
          future.push_back(now);
          now = past.back();
          past.pop_back();
        } else if (what == 1 && session.canRedo()) {
          RC_ASSERT(session.redo().has_value());
          past.push_back(now);
          now = future.back();
          future.pop_back();
        } else if (what >= 2) {
          State next = now;
          workflow::Editing done;
          if (!now.contains(id)) {
            auto make = workflow::newThing("make");
            make.fields = {{"id", id}, {"name", "new"}};
            next[id] = "new";
            done = session.save(make);
          } else if (what == 2) {
            next.erase(id);
            done = session.remove(test::thing(catalogue, "make", {id}));
          } else {
            auto make = test::thing(catalogue, "make", {id});
            next[id] += 'x';
            make.fields["name"] = next[id];
            done = session.save(make);
          }
          RC_ASSERT(done.has_value());
          past.push_back(now);
          future.clear();
          now = next;
        }
        RC_ASSERT(state() == now);
        RC_ASSERT(session.canUndo() == !past.empty());
        RC_ASSERT(session.canRedo() == !future.empty());
      }
      while (session.canUndo()) RC_ASSERT(session.undo().has_value());
      RC_ASSERT(state() == (past.empty() ? now : past.front()));
    });
    QVERIFY(held);
    QVERIFY(test::sound(file));
  }
};

QTEST_APPLESS_MAIN(TestEditSession)
#include "tst_edit_session.moc"
