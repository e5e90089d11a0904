#include "edited_catalogue.h"

#include <catalog/catalogue_error.h>
#include <catalog/layouts.h>
#include <catalog/pack_writer.h>
#include <workflow/date_engine.h>
#include <workflow/layouts.h>
#include <workflow/save_layout.h>
#include <QTest>
#include <algorithm>
#include <filesystem>

using namespace ohmkin;
using test::inFile;
using workflow::LayoutToSave;

namespace {

dating::Layout layout(const std::vector<const char*>& fields) {
  dating::Layout made{"shop-head", "month letter, day always two digits, year digit", dating::FoundOn::head, {}};
  for (const char* field : fields) made.fields.push_back(*workflow::readField(field, "field"));
  return made;
}

LayoutToSave sound() {
  // A casting code of the usual kind, month letter, day, year digit: common practice, no source.
  return {layout({"month letter", "separator:-?", "day:00", "separator:-?", "year digit"}),
          "H-22-1",
          date(1981, 8, 22),
          {catalog::SourceKind::commonPractice, "as seen on three heads"},
          false};
}

}  // namespace

/// A shop adds a layout without code: whole, checked, with a source, as its own row.
class TestSaveLayout : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

  std::filesystem::path copyOf(const char* name) {
    const auto file = demo_.beside(name);
    std::filesystem::copy_file(demo_.file(), file, std::filesystem::copy_options::overwrite_existing);
    return file;
  }

 private slots:
  void a_sound_layout_is_kept_as_the_shops_own_and_reads_codes_at_once() {
    const auto file = copyOf("kept.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    const auto saved = workflow::saveLayout(catalogue, sound(), "test");
    QVERIFY2(saved, saved ? "" : saved.error().sentence().c_str());
    QVERIFY(!saved->replaced);
    QCOMPARE(inFile(file, "SELECT pack FROM date_layout WHERE id = 'shop-head'"), std::string("shop"));
    QCOMPARE(inFile(file, "SELECT count(*) FROM date_field WHERE layout = 'shop-head' AND pack = 'shop'"),
             std::string("5"));
    QCOMPARE(inFile(file,
                    "SELECT s.kind || ': ' || s.citation FROM date_layout l JOIN source s ON s.id = l.source WHERE "
                    "l.id = 'shop-head'"),
             std::string("common practice: as seen on three heads"));
    QCOMPARE(inFile(file, "SELECT who || ' ' || what || ' ' || subject FROM change_log ORDER BY id DESC LIMIT 1"),
             std::string("test row added date_layout shop-head"));
    QCOMPARE(inFile(file, "SELECT count(*) FROM pragma_foreign_key_check"), std::string("0"));

    workflow::DateQuestion question;
    question.castings.push_back({"", dating::CastingRole::head, "", "H-22-1", "shop-head"});
    question.window = {date(1975, 1, 1), date(1985, 1, 1)};
    const auto answer = workflow::dateEngine(catalogue, question);
    QVERIFY2(answer, answer ? "" : answer.error().sentence().c_str());
    QCOMPARE(isoDate(answer->posterior.castings.front().days.mostProbable()), std::string("1981-08-22"));
  }

  void what_cannot_be_told_apart_is_refused_and_nothing_is_written_data() {
    QTest::addColumn<QString>("code");
    QTest::addColumn<std::vector<const char*>>("fields");
    QTest::newRow("1 11 or 11 1") << "layout-ambiguous"
                                  << std::vector<const char*>{"month number", "day", "year digit"};
    QTest::newRow("month twice") << "layout-circular"
                                 << std::vector<const char*>{"month letter", "month number:00", "day:00", "year digit"};
    QTest::newRow("no year") << "layout-no-year" << std::vector<const char*>{"month letter", "day:00"};
    QTest::newRow("no fields") << "layout-empty" << std::vector<const char*>{};
    QTest::newRow("an optional day") << "layout-field-optional"
                                     << std::vector<const char*>{"month letter", "day:00?", "year digit"};
  }
  void what_cannot_be_told_apart_is_refused_and_nothing_is_written() {
    QFETCH(QString, code);
    QFETCH(std::vector<const char*>, fields);
    const auto file = copyOf("refused.ohmkin");
    const std::string before = test::bytesOf(file);
    auto asked = sound();
    asked.layout.fields = layout(fields).fields;
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    const auto saved = workflow::saveLayout(catalogue, asked, "test");
    QVERIFY(!saved);
    QCOMPARE(QString::fromStdString(saved.error().code), code);
    QVERIFY(test::bytesOf(file) == before);
  }

  void the_example_must_be_read_as_the_day_it_names() {
    auto asked = sound();
    asked.exampleDate = date(1981, 8, 21);
    QCOMPARE(workflow::checkLayoutToSave(asked).error().code, std::string("layout-example"));
    QVERIFY(workflow::checkLayoutToSave(asked).error().expected.find("H-21-1") != std::string::npos);
    asked = sound();
    asked.example = "F-31-1";  // June has 30 days
    QVERIFY(workflow::checkLayoutToSave(asked).error().expected.find("Jun") != std::string::npos);
  }

  void nothing_is_kept_without_a_source() {
    auto asked = sound();
    asked.source.citation = "  ";
    QCOMPARE(workflow::checkLayoutToSave(asked).error().code, std::string("source-citation"));
    asked.source = {catalog::SourceKind::demo, "made up"};
    QCOMPARE(workflow::checkLayoutToSave(asked).error().code, std::string("source-kind"));
    QVERIFY(!workflow::readSource("hearsay: a friend", "--source"));
    QVERIFY(!workflow::readSource("bench:", "--source"));
    QCOMPARE(workflow::readSource("maker sheet: page 12, table: dates", "--source")->citation,
             std::string("page 12, table: dates"));
  }

  void an_id_that_is_taken_is_replaced_only_with_leave() {
    const auto file = copyOf("taken.ohmkin");
    auto catalogue = catalog::Catalogue::open(file, catalog::Access::readWrite);
    auto asked = sound();
    asked.layout.id = "ridgeway-head";  // the demo pack's, referred to by its castings
    QCOMPARE(workflow::saveLayout(catalogue, asked, "test").error().code, std::string("layout-exists"));
    QVERIFY(inFile(file, "SELECT pack FROM date_layout WHERE id = 'ridgeway-head'") != "shop");
    asked.replace = true;
    const auto saved = workflow::saveLayout(catalogue, asked, "test");
    QVERIFY2(saved, saved ? "" : saved.error().sentence().c_str());
    QVERIFY(saved->replaced);
    QCOMPARE(inFile(file, "SELECT group_concat(DISTINCT pack) FROM date_field WHERE layout = 'ridgeway-head'"),
             std::string("shop"));
    QCOMPARE(inFile(file, "SELECT what FROM change_log ORDER BY id DESC LIMIT 1"), std::string("row changed"));
    QCOMPARE(inFile(file, "SELECT count(*) FROM pragma_foreign_key_check"), std::string("0"));
    QVERIFY(
        inFile(file, "SELECT before FROM change_log ORDER BY id DESC LIMIT 1").find("month letter, day, year digit") !=
        std::string::npos);
  }

  void an_open_reader_sees_the_new_layout() {
    const auto file = copyOf("reader.ohmkin");
    const auto reader = catalog::Catalogue::open(file, catalog::Access::readOnly);
    const std::size_t before = catalog::dateLayouts(reader).size();
    auto writer = catalog::Catalogue::open(file, catalog::Access::readWrite);
    QVERIFY(workflow::saveLayout(writer, sound(), "test"));
    QCOMPARE(catalog::dateLayouts(reader).size(), before + 1);
  }

  void fields_are_read_as_they_are_written() {
    const auto catalogue = demo_.open();
    for (const auto& record : catalog::dateLayouts(catalogue)) {
      for (const auto& field : workflow::layoutOf(record).fields) {
        const auto again = workflow::readField(workflow::fieldText(field), "");
        QVERIFY(again);
        QVERIFY(again->kind == field.kind && again->text == field.text && again->optional == field.optional);
      }
    }
    QVERIFY(workflow::readField("month leter", "--field").error().expected.find("perhaps month letter") !=
            std::string::npos);
  }

  void an_id_is_made_from_the_name() {
    QCOMPARE(workflow::layoutIdFrom(" Month letter, day (late) "), std::string("month-letter-day-late"));
    QCOMPARE(workflow::layoutIdFrom("–––"), std::string());
    QVERIFY(workflow::layoutIdFrom(std::string(500, 'x')).size() <= 64);
  }
};

QTEST_APPLESS_MAIN(TestSaveLayout)
#include "tst_save_layout.moc"
