#include "edited_catalogue.h"

#include <workflow/edit_rows.h>

using namespace ohmkin;
using test::code;
using test::copyOf;
using test::inFile;
using test::thing;
using test::where;
using test::why;
using workflow::EditSession;

/// Every kind of thing: read into fields, checked at the field, saved whole or not at all.
class TestEditRows : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

 private slots:
  void every_thing_of_every_kind_saved_as_it_was_read_changes_nothing_data() {
    QTest::addColumn<bool>("fahrenheit");
    QTest::newRow("in °C") << false;
    QTest::newRow("in °F and lbf·ft") << true;
  }
  void every_thing_of_every_kind_saved_as_it_was_read_changes_nothing() {
    QFETCH(bool, fahrenheit);
    const DisplayUnits units =
        fahrenheit ? DisplayUnits{TemperatureUnit::fahrenheit, TorqueUnit::poundFoot} : DisplayUnits{};
    const auto file = copyOf(demo_, "unchanged.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    EditSession session(catalogue, "editor", units);
    const std::string before = inFile(file, "SELECT count(*) FROM change_log");
    std::size_t things = 0;
    for (const workflow::EditKind& kind : workflow::editKinds()) {
      const auto page = workflow::page(catalogue, {kind.name, {}, false, {}, {}, {}, 100000});
      QVERIFY(page);
      QVERIFY2(!page->rows.empty(), kind.name.c_str());
      for (const auto& row : page->rows) {
        const auto read = workflow::readThing(catalogue, kind.name, row.key, units);
        QVERIFY2(read, kind.name.c_str());
        const auto saved = session.save(*read);
        QVERIFY2(saved, (kind.name + ": " + why(saved)).c_str());
        QCOMPARE(saved->change, 0);
        ++things;
      }
    }
    QVERIFY(things > 200);
    QCOMPARE(inFile(file, "SELECT count(*) FROM change_log"), before);
    QVERIFY(!session.canUndo());
  }

  /// The same rules hold for what the packs brought: typed anew, as if a person had written all of it, it is taken.
  void every_thing_typed_anew_is_taken_and_holds_the_same_values() {
    const auto file = copyOf(demo_, "anew.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    for (const workflow::EditKind& kind : workflow::editKinds()) {
      const auto page = workflow::page(catalogue, {kind.name, {}, false, {}, {}, {}, 30});
      for (const auto& row : page->rows) {
        auto typed = thing(catalogue, kind.name.c_str(), row.key);
        const auto read = typed;
        typed.asRead.clear();
        if (kind.key().size() != 1) continue;  // years and lines have no second name
        const std::string key = kind.key().front();
        typed.fields[key] = kind.name == "thread" ? "copy of it" : "copy-of-it";
        EditSession session(catalogue, "editor");
        const auto saved = session.save(typed);
        QVERIFY2(saved, (kind.name + " " + row.key.front() + ": " + why(saved)).c_str());
        auto again = saved->thing;
        QCOMPARE(again.pack, std::string("shop"));
        again.fields[key] = read.fields.at(key);
        QVERIFY(again.fields == read.fields);
        QVERIFY(again.parts == read.parts);
        QVERIFY(session.undo());
      }
    }
    QVERIFY(test::sound(file));
  }

  void a_field_is_refused_at_the_field_as_typed_data() {
    QTest::addColumn<QString>("kind");
    QTest::addColumn<QString>("field");
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("code");
    const auto row = [](const char* kind, const char* field, const char* typed, const char* code) {
      QTest::addRow("%s.%s '%s'", kind, field, typed) << kind << field << typed << code;
    };
    row("sender", "name", "", "cell-empty");
    row("sender", "kind", "varible sender", "cell-not-allowed");
    row("sender", "thread", "no such", "reference-dangling");
    row("sender", "source", "nowhere", "reference-dangling");
    row("sender", "source", "", "cell-empty");
    row("sender", "reach", "-3", "cell-out-of-range");
    row("sender", "reach", "three", "cell-not-a-number");
    row("sender", "reach", "3 psi", "cell-not-a-number");
    row("sender", "torque_low", "20", "cell-not-a-number");  // N·m and lbf·ft differ by a third
    row("sender", "era_from", "1850", "cell-out-of-range");
    row("sender", "era_from", "19.5", "cell-not-a-whole-number");
    row("engine_family", "thermostat", "185", "cell-out-of-range");
    row("engine_family", "thermostat", "110 °F", "cell-out-of-range");
    row("casting", "cast_from", "1971-02-29", "cell-not-a-date");
    row("casting", "layout", "none such", "reference-dangling");
    row("curve", "coefficients", "1 2 three", "cell-of-another-form");
    row("thread", "tapered", "perhaps", "cell-not-yes-or-no");
    row("vehicle_line", "volts", "13", "cell-not-allowed");
    row("stands_in_for", "since", "long ago", "cell-of-another-form");
    row("source", "confidence", "110 %", "cell-not-a-number");
  }
  void a_field_is_refused_at_the_field_as_typed() {
    QFETCH(QString, kind);
    QFETCH(QString, field);
    QFETCH(QString, typed);
    QFETCH(QString, code);
    const auto file = copyOf(demo_, "refused.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    const auto page = workflow::page(catalogue, {kind.toStdString(), {}, false, {}, {}, {}, 1});
    auto one = thing(catalogue, kind.toUtf8(), page->rows.front().key);
    one.fields[field.toStdString()] = typed.toStdString();
    EditSession session(catalogue, "editor");
    const auto saved = session.save(one);
    QCOMPARE(test::code(saved), code.toStdString());
    QCOMPARE(where(saved), field.toStdString());
    const auto checked = workflow::checkThing(catalogue, one);
    QVERIFY(!checked.empty());
    QCOMPARE(checked.front().where, field.toStdString());
    const auto* definition = workflow::editKind(kind.toStdString())->field(field.toStdString());
    const auto alone = workflow::checkField(*definition, typed.toStdString(), {}, &catalogue);
    QVERIFY(!alone);
    QCOMPARE(alone.error().where, field.toStdString());
    QCOMPARE(alone.error().code, code.toStdString());
    QCOMPARE(inFile(file, "SELECT count(*) FROM change_log WHERE who = 'editor'"), std::string("0"));
  }

  /// No field of any kind takes a line break: the refusal names it, whichever it is.
  void a_line_break_is_refused_in_every_field_of_every_kind_and_part() {
    for (const workflow::EditKind& kind : workflow::editKinds()) {
      for (const workflow::EditField& field : kind.fields) {
        const auto checked = workflow::checkField(field, "a\nb");
        QVERIFY2(!checked, (kind.name + "." + field.name).c_str());
        QCOMPARE(checked.error().where, field.name);
      }
      for (const workflow::EditPart& part : kind.parts)
        for (const workflow::EditField& field : part.fields)
          QVERIFY2(!workflow::checkField(field, "a\nb"), (part.name + "." + field.name).c_str());
    }
  }

  void units_are_read_as_they_are_typed_data() {
    QTest::addColumn<QString>("kind");
    QTest::addColumn<QString>("field");
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("shown");
    const auto row = [](const char* kind, const char* field, const char* typed, const char* shown) {
      QTest::addRow("%s", typed) << kind << field << typed << shown;
    };
    row("engine_family", "thermostat", "185 °F", "85 °C");  // (185 − 32) · 5/9
    row("engine_family", "thermostat", "82,5", "82.5 °C");
    row("engine_family", "thermostat", "358.15 K", "85 °C");
    row("engine_family", "cap", "1 bar", "100 kPa");
    row("engine_family", "cap", "13 psi", "89.631844811 kPa");  // NIST SP 811 B.8: 6.894 757 kPa
    row("sender", "torque_low", "15 N·m", "15 N·m");
    row("sender", "torque_low", "10 lbf·ft", "13.558179483 N·m");  // NIST SP 811 B.8: 1.355 818 N·m
    row("sender", "hex", "3/8 in", "9.525 mm");                    // 25.4 mm, exactly
    row("sender", "hex", "1 1/16\"", "26.9875 mm");
    row("cluster", "lead_length", "2.4 m", "2400 mm");
    row("family", "tolerance", "8 %", "0.08");
    row("family", "cold_ohms", "1k2", "1200 Ω");
    row("family", "hot_ohms", "0.9 kΩ", "900 Ω");
    row("gauge", "low_stop", "−66°", "-66°");
    row("vehicle_line", "volts", "12 V", "12 V");
    row("thread", "tapered", "Yes", "yes");
    row("sender", "kind", "Warning-Switch", "warning switch");
    row("sender", "thread", " 1/4-18 NPT ", "1/4-18 NPT");
    row("sender", "name", "=1+1", "=1+1");
    row("sender", "name", "'quoted", "'quoted");
  }
  void units_are_read_as_they_are_typed() {
    QFETCH(QString, kind);
    QFETCH(QString, field);
    QFETCH(QString, typed);
    QFETCH(QString, shown);
    const auto* definition = workflow::editKind(kind.toStdString())->field(field.toStdString());
    const auto checked = workflow::checkField(*definition, typed.toStdString());
    QVERIFY2(checked, checked ? "" : checked.error().sentence().c_str());
    QCOMPARE(*checked, shown.toStdString());
  }

  void a_row_of_a_part_is_refused_at_its_row() {
    auto catalogue = catalog::Catalogue::open(copyOf(demo_, "part.ohmkin"), catalog::Access::readWrite);
    auto gauge = thing(catalogue, "gauge", {"GA-1"});
    gauge.parts.at("dial_mark").at(1).at("angle") = "400";
    EditSession session(catalogue, "editor");
    const auto saved = session.save(gauge);
    QCOMPARE(where(saved), std::string("dial_mark[2].angle"));
    const auto place = workflow::fieldPlace(where(saved));
    QCOMPARE(place.part, std::string("dial_mark"));
    QCOMPARE(place.row, std::size_t{1});
    QCOMPARE(place.field, std::string("angle"));
    auto casting = workflow::page(catalogue, {"casting", {}, false, {}, {}, {}, 100});
    for (const auto& row : casting->rows) {
      auto one = thing(catalogue, "casting", row.key);
      if (one.parts.at("port").empty()) continue;
      one.parts.at("port").push_back(one.parts.at("port").front());
      QCOMPARE(code(session.save(one)), std::string("key-twice"));
      return;
    }
    QFAIL("no casting with a port");
  }

  void what_does_not_hold_between_fields_is_refused_at_one_of_them() {
    auto catalogue = catalog::Catalogue::open(copyOf(demo_, "between.ohmkin"), catalog::Access::readWrite);
    EditSession session(catalogue, "editor");
    auto line = thing(catalogue, "vehicle line", {"ridgeway-utility"});
    line.fields["year_until"] = line.fields["year_from"];
    const auto saved = session.save(line);
    QCOMPARE(code(saved), std::string("row-rule"));
    QCOMPARE(where(saved), std::string("year_until"));
    auto gauge = thing(catalogue, "gauge", {"GA-1"});
    gauge.fields["magnet_strength"] = "0.1";
    QCOMPARE(code(session.save(gauge)), std::string("row-rule"));
  }

  void a_curve_that_turns_back_a_dial_out_of_order_and_an_example_that_is_not_read_are_refused() {
    auto catalogue = catalog::Catalogue::open(copyOf(demo_, "unsound.ohmkin"), catalog::Access::readWrite);
    EditSession session(catalogue, "editor");
    auto curve = thing(catalogue, "curve", {"F-bench"});
    auto& points = curve.parts.at("sample");
    points.at(2).at("ohms") = points.front().at("ohms");
    QCOMPARE(where(session.save(curve)), std::string("sample[1].ohms"));
    auto gauge = thing(catalogue, "gauge", {"GA-1"});
    auto& marks = gauge.parts.at("dial_mark");
    std::swap(marks.at(0).at("angle"), marks.at(1).at("angle"));
    QCOMPARE(where(session.save(gauge)), std::string("dial_mark[1].angle"));
    auto incomplete = thing(catalogue, "gauge", {"GA-1"});
    incomplete.fields["half"].clear();
    QCOMPARE(where(session.save(incomplete)), std::string("movement"));
    const auto layouts = workflow::page(catalogue, {"date_layout", {}, false, {}, {}, {}, 1});
    auto layout = thing(catalogue, "date layout", layouts->rows.front().key);
    layout.fields["example_date"] = "1901-01-01";
    QCOMPARE(where(session.save(layout)), std::string("example"));
    QVERIFY(!session.canUndo());
  }

  void a_part_that_would_replace_itself_in_the_end_is_refused_with_the_chain() {
    auto catalogue = catalog::Catalogue::open(copyOf(demo_, "circle.ohmkin"), catalog::Access::readWrite);
    EditSession session(catalogue, "editor");
    auto back = workflow::newThing("stands_in_for");
    back.fields = {{"sender", "BR-2201"}, {"replaces", "BR-2215"}, {"since", "1990"}, {"source", "demo-book"}};
    const auto saved = session.save(back);
    QCOMPARE(code(saved), std::string("replacement-circle"));
    QVERIFY(why(saved).find("BR-2201, replaced by BR-2207, replaced by BR-2215, replaced by BR-2201") !=
            std::string::npos);
  }

  void a_source_may_be_stated_with_the_fact_and_goes_with_it() {
    const auto file = copyOf(demo_, "source.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    EditSession session(catalogue, "editor");
    auto engine = thing(catalogue, "engine family",
                        workflow::page(catalogue, {"engine_family", {}, false, {}, {}, {}, 1})->rows.front().key);
    engine.fields["thermostat"] = "90";
    auto demo = session.save(engine, workflow::NewSource{{}, catalog::SourceKind::demo, "made up", {}});
    QCOMPARE(code(demo), std::string("source-kind"));
    QCOMPARE(code(session.save(engine, workflow::NewSource{{}, catalog::SourceKind::published, "  ", {}})),
             std::string("source-citation"));
    const auto saved = session.save(engine, workflow::NewSource{{}, catalog::SourceKind::makerSheet, "sheet 12", {}});
    QVERIFY2(saved, why(saved).c_str());
    const std::string id = saved->thing.fields.at("source");
    QCOMPARE(inFile(file, "SELECT kind || ': ' || citation FROM source WHERE id = '" + id + "' AND pack = 'shop'"),
             std::string("maker sheet: sheet 12"));
    QVERIFY(session.undo());
    QCOMPARE(inFile(file, "SELECT count(*) FROM source WHERE id = '" + id + "'"), std::string("0"));
    QVERIFY(session.redo());
    QCOMPARE(inFile(file, "SELECT count(*) FROM source WHERE id = '" + id + "'"), std::string("1"));
    QVERIFY(test::sound(file));
  }

  void deleting_what_is_used_says_by_what_and_changes_nothing() {
    const auto file = copyOf(demo_, "used.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    EditSession session(catalogue, "editor");
    const auto deleted = session.remove(thing(catalogue, "family", {"A"}));
    QCOMPARE(code(deleted), std::string("in-use"));
    const std::string gauges = inFile(file, "SELECT count(*) FROM gauge WHERE family = 'A'");
    QVERIFY2(why(deleted).find(gauges + " gauges (GA-0; GA-1; GA-2; …)") != std::string::npos, why(deleted).c_str());
    QVERIFY(deleted.error().usedBy.size() >= 3);  // senders, gauges, a curve
    QCOMPARE(inFile(file, "SELECT count(*) FROM family WHERE id = 'A'"), std::string("1"));
    QCOMPARE(inFile(file, "SELECT count(*) FROM change_log WHERE who = 'editor'"), std::string("0"));
  }

  void a_new_key_takes_the_shops_references_along_and_is_refused_where_packs_refer() {
    const auto file = copyOf(demo_, "rename.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    EditSession session(catalogue, "editor");
    auto packs = thing(catalogue, "family", {"A"});
    packs.fields["id"] = "AA";
    QCOMPARE(code(session.save(packs)), std::string("rename-refused"));

    auto family = workflow::newThing("family");
    family.fields = {{"id", "S1"},
                     {"name", "Shop's"},
                     {"measurand", "coolant temperature"},
                     {"direction", "falling"},
                     {"source", "demo-book"}};
    auto added = session.save(family);
    QVERIFY2(added, why(added).c_str());
    auto curve = workflow::newThing("curve");
    curve.fields = {
        {"id", "S1-curve"},  {"family", "S1"},      {"model", "beta"},      {"coefficients", "620 313.15 3720"},
        {"valid_low", "20"}, {"valid_high", "125"}, {"source", "demo-book"}};
    const auto drawn = session.save(curve);
    QVERIFY2(drawn, why(drawn).c_str());
    auto renamed = added->thing;
    renamed.fields["id"] = "S2";
    const auto done = session.save(renamed);
    QVERIFY2(done, why(done).c_str());
    QCOMPARE(inFile(file, "SELECT family FROM curve WHERE id = 'S1-curve'"), std::string("S2"));
    QCOMPARE(inFile(file, "SELECT what FROM change_log ORDER BY id DESC LIMIT 1"), std::string("row renamed"));
    QVERIFY(session.undo());
    QCOMPARE(inFile(file, "SELECT family FROM curve WHERE id = 'S1-curve'"), std::string("S1"));
    renamed = added->thing;
    renamed.fields["id"] = "A";
    QCOMPARE(code(session.save(renamed)), std::string("key-taken"));
    QVERIFY(test::sound(file));

    // A pack's sender moved to the shop's family: the sender is the shop's own by that, so the name may change again.
    auto sender = thing(catalogue, "sender", {"BR-2201"});
    sender.fields["family"] = "S1";
    QVERIFY(session.save(sender));
    renamed.fields["id"] = "S3";
    QVERIFY2(session.save(renamed), "the shop's own rows follow");
    QCOMPARE(inFile(file, "SELECT family FROM sender WHERE id = 'BR-2201'"), std::string("S3"));
  }

  void an_unknown_field_names_the_nearest() {
    auto catalogue = catalog::Catalogue::open(copyOf(demo_, "unknown.ohmkin"), catalog::Access::readWrite);
    auto sender = thing(catalogue, "sender", {"BR-2201"});
    sender.fields["raech"] = "3";
    EditSession session(catalogue, "editor");
    const auto saved = session.save(sender);
    QCOMPARE(code(saved), std::string("field-unknown"));
    QVERIFY(why(saved).find("perhaps reach") != std::string::npos);
    QVERIFY(!workflow::readThing(catalogue, "sender", {"BR-22"}));
    QVERIFY(workflow::readThing(catalogue, "sender", {"BR-22"}).error().expected.find("BR-2201") != std::string::npos);
  }

  void completions_begin_with_what_is_typed_and_then_hold_it() {
    auto catalogue = demo_.open();
    const auto all = workflow::completions(catalogue, "sender", "BR-22", 5);
    QVERIFY(!all.empty());
    for (const auto& one : all) QVERIFY(one.key.starts_with("BR-22"));
    QVERIFY(!workflow::completions(catalogue, "sender", "2207").empty());
    QCOMPARE(workflow::completions(catalogue, "sender", "2207").front().key, std::string("BR-2207"));
    QVERIFY(workflow::completions(catalogue, "sender", "%").empty());
  }
};

QTEST_APPLESS_MAIN(TestEditRows)
#include "tst_edit_rows.moc"
