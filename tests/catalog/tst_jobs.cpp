#include "small_catalogue.h"

#include <catalog/change_log.h>
#include <catalog/jobs.h>
#include <catalog/snapshot.h>
#include <QFile>
#include <QtTest>
#include <thread>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::DocumentKind;
using catalog::JobDocument;
using catalog::JobFields;
using catalog::JobNumber;
using catalog::JobState;

namespace {

JobFields said(const char* reference, const char* note = "") {
  JobFields fields;
  fields.reference = reference;
  fields.note = note;
  return fields;
}

JobDocument document(const char* text, const char* part = "") {
  JobDocument made;
  made.kind = DocumentKind::match;
  made.title = "a match";
  made.part = part;
  made.document = text;
  made.hash = std::string(64, 'a');
  return made;
}

QString found(const Catalogue& catalogue, const char* text, std::optional<JobState> state = {}) {
  QStringList numbers;
  for (const auto& job : catalog::jobs(catalogue, {text, state, false}, 100)) numbers << QString::number(job.id.value);
  return numbers.join(' ');
}

/// Every value of every table.
QString everything(Catalogue& catalogue) {
  QString all;
  auto& database = catalogue.connection().database();
  SQLite::Statement tables(database, "SELECT name FROM sqlite_schema WHERE type = 'table'");
  while (tables.executeStep()) {
    SQLite::Statement rows(database, "SELECT * FROM \"" + tables.getColumn(0).getString() + "\"");
    while (rows.executeStep())
      for (int c = 0; c < rows.getColumnCount(); ++c)
        all += QString::fromStdString(rows.getColumn(c).getString()) + '|';
  }
  return all;
}

bool inFile(const std::filesystem::path& file, const char* bytes) {
  QFile stream(QString::fromStdString(file.string()));
  return stream.open(QIODevice::ReadOnly) && stream.readAll().contains(bytes);
}

}  // namespace

class JobsTest : public QObject {
  Q_OBJECT
 private slots:
  void init() {
    folder_ = std::make_unique<test::Folder>();
    file_ = folder_->path("a.ohmkin");
    catalogue_.emplace(test::smallCatalogue(file_));
  }

  void a_job_comes_back_as_it_was_written() {
    JobFields fields = said("blue pickup", "asks for a sender");
    fields.vehicle = "1968 Ridge";
    fields.engine = "inline six";
    fields.seen = "needle low when warm";
    const auto opened = catalog::openJob(*catalogue_, fields, "Ann");
    QVERIFY(opened);
    const auto back = catalog::job(*catalogue_, opened->id);
    QCOMPARE(back->said.reference, std::string("blue pickup"));
    QCOMPARE(back->said.vehicle, std::string("1968 Ridge"));
    QCOMPARE(back->said.engine, std::string("inline six"));
    QCOMPARE(back->said.seen, std::string("needle low when warm"));
    QCOMPARE(back->said.note, std::string("asks for a sender"));
    QCOMPARE(back->openedBy, std::string("Ann"));
    QCOMPARE(back->said.state, JobState::open);
    QVERIFY(!back->opened.empty() && !back->changed.empty());
    QCOMPARE(catalog::openJob(*catalogue_, said(" \t"), "Ann").error().code, std::string("job-reference"));
  }

  void undo_goes_all_the_way_back_and_forth_again() {
    const JobNumber id = catalog::openJob(*catalogue_, said("first"), "Ann")->id;
    for (const char* note : {"one", "two", "three"})
      QVERIFY(catalog::changeJob(*catalogue_, id, said("first", note), "note changed", "Ann"));
    QVERIFY(catalog::keepDocument(*catalogue_, id, document("{}", "SN-1"), "Ann"));
    const auto note = [&] { return catalog::job(*catalogue_, id)->said.note; };
    const auto kept = [&] { return !catalog::documents(*catalogue_, id).front().removed; };
    QCOMPARE(found(*catalogue_, "SN-1"), QString::number(id.value));
    QCOMPARE(catalog::undoJob(*catalogue_, id, "Bob")->what, std::string("match kept"));
    QVERIFY(!kept());
    QCOMPARE(found(*catalogue_, "SN-1"), QString());
    for (const char* before : {"two", "one", ""}) {
      QVERIFY(catalog::undoJob(*catalogue_, id, "Bob"));
      QCOMPARE(note(), std::string(before));
    }
    QCOMPARE(catalog::undoJob(*catalogue_, id, "Bob").error().code, std::string("nothing-to-undo"));
    for (const char* after : {"one", "two", "three"}) {
      QVERIFY(catalog::redoJob(*catalogue_, id, "Bob"));
      QCOMPARE(note(), std::string(after));
    }
    QVERIFY(catalog::redoJob(*catalogue_, id, "Bob"));
    QVERIFY(kept());
    QVERIFY(!catalog::redoJob(*catalogue_, id, "Bob"));
    // A new change forgets what was undone.
    QVERIFY(catalog::undoJob(*catalogue_, id, "Bob"));
    QVERIFY(catalog::undoJob(*catalogue_, id, "Bob"));
    QVERIFY(catalog::changeJob(*catalogue_, id, said("first", "other"), "note changed", "Ann"));
    QVERIFY(!catalog::redoJob(*catalogue_, id, "Bob"));
    QVERIFY(catalog::undoJob(*catalogue_, id, "Bob"));
    QCOMPARE(note(), std::string("two"));
  }

  void a_document_stays_as_it_was_and_its_number_is_never_given_twice() {
    const JobNumber id = catalog::openJob(*catalogue_, said("x"), "Ann")->id;
    QCOMPARE(catalog::keepDocument(*catalogue_, id, document("{\"a\": 1}"), "Ann")->ordinal, 1);
    QCOMPARE(catalog::keepDocument(*catalogue_, id, document("{\"a\": 2}"), "Ann")->ordinal, 2);
    QVERIFY(catalog::removeDocument(*catalogue_, id, 2, "Ann"));
    QCOMPARE(catalog::removeDocument(*catalogue_, id, 2, "Ann").error().code, std::string("document-unknown"));
    QCOMPARE(catalog::keepDocument(*catalogue_, id, document("{\"a\": 3}"), "Ann")->ordinal, 3);
    const auto all = catalog::documents(*catalogue_, id);
    QCOMPARE(all.size(), std::size_t{3});
    QCOMPARE(all[0].document, std::string("{\"a\": 1}"));
    QVERIFY(all[1].removed);
    QCOMPARE(catalog::keepDocument(*catalogue_, {99}, document("{}"), "Ann").error().code, std::string("job-unknown"));
  }

  void whoever_is_slower_is_told_so() {
    const auto opened = catalog::openJob(*catalogue_, said("x"), "Ann");
    const auto seen = opened->changed;
    QTest::qSleep(2);  // changes are told apart by the millisecond
    QVERIFY(catalog::changeJob(*catalogue_, opened->id, said("x", "Bob's"), "note changed", "Bob", seen));
    const auto late = catalog::changeJob(*catalogue_, opened->id, said("x", "Ann's"), "note changed", "Ann", seen);
    QVERIFY(!late);
    QCOMPARE(late.error().code, std::string("job-changed"));
    QCOMPARE(catalog::job(*catalogue_, opened->id)->said.note, std::string("Bob's"));
  }

  void two_writers_lose_no_document() {
    const JobNumber id = catalog::openJob(*catalogue_, said("x"), "Ann")->id;
    const auto writer = [&] {
      Catalogue own = Catalogue::open(file_, Access::readWrite);
      for (int i = 0; i < 50; ++i) (void)catalog::keepDocument(own, id, document("{}"), "writer");
    };
    std::thread one(writer);
    std::thread two(writer);
    one.join();
    two.join();
    const auto all = catalog::documents(*catalogue_, id);
    QCOMPARE(all.size(), std::size_t{100});
    QCOMPARE(all.back().ordinal, 100);
  }

  void a_search_finds_every_field_in_whatever_spelling_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("jobs");
    QTest::newRow("everything, newest first") << ""
                                              << "3 2 1";
    QTest::newRow("reference") << "PICKUP"
                               << "1";
    QTest::newRow("inside of a word") << "icku"
                                      << "1";
    QTest::newRow("vehicle") << "ridge"
                             << "2 1";
    QTest::newRow("two words of two fields") << "ridge van"
                                             << "2";
    QTest::newRow("part, its signs left out") << "br2215"
                                              << "1";
    QTest::newRow("part with its signs") << "BR-2215"
                                         << "1";
    QTest::newRow("part of a kept answer") << "SN-102"
                                           << "3";
    QTest::newRow("note, an accent in another case") << "MÜNCHEN"
                                                     << "3";
    QTest::newRow("nothing") << "zzz"
                             << "";
    QTest::newRow("a word and one that is not there") << "ridge zzz"
                                                      << "";
    QTest::newRow("what SQL would take for a pattern") << "%"
                                                       << "";
    QTest::newRow("hostile") << "'; DROP TABLE job; --"
                             << "";
  }
  void a_search_finds_every_field_in_whatever_spelling() {
    JobFields one = said("blue pickup");
    one.vehicle = "1968 Ridge";
    one.part = "BR-2215";
    JobFields two = said("van");
    two.vehicle = "ridge";
    const JobFields three = said("third", "from münchen");
    for (const JobFields& fields : {one, two, three}) QVERIFY(catalog::openJob(*catalogue_, fields, "Ann"));
    QVERIFY(catalog::keepDocument(*catalogue_, {3}, document("{}", "SN-102"), "Ann"));
    QFETCH(QString, text);
    QTEST(found(*catalogue_, text.toUtf8().constData()), "jobs");
  }

  void a_search_can_be_for_open_or_put_away_ones() {
    JobFields done = said("a");
    done.state = JobState::done;
    QVERIFY(catalog::openJob(*catalogue_, said("a"), "Ann"));
    QVERIFY(catalog::openJob(*catalogue_, done, "Ann"));
    JobFields away = said("a");
    away.deleted = "2026-01-01T00:00:00Z";
    QVERIFY(catalog::openJob(*catalogue_, away, "Ann"));
    QCOMPARE(found(*catalogue_, "a", JobState::open), QString("1"));
    QCOMPARE(found(*catalogue_, "", JobState::done), QString("2"));
    QCOMPARE(catalog::jobs(*catalogue_, {"a", {}, true}, 9).front().id.value, std::int64_t{3});
    QCOMPARE(catalog::jobCount(*catalogue_), std::int64_t{2});
  }

  void a_duplicate_asks_the_same_and_has_no_answer() {
    JobFields fields = said("blue pickup", "note");
    fields.state = JobState::done;
    fields.part = "BR-1";
    fields.cause = "lead-open";
    const JobNumber id = catalog::openJob(*catalogue_, fields, "Ann")->id;
    QVERIFY(catalog::keepDocument(*catalogue_, id, document("{}"), "Ann"));
    const auto twin = catalog::duplicateJob(*catalogue_, id, "Bob");
    QVERIFY(twin && twin->id != id);
    QCOMPARE(twin->said.reference, std::string("blue pickup"));
    QCOMPARE(twin->said.note, std::string("note"));
    QCOMPARE(twin->said.state, JobState::open);
    QVERIFY(twin->said.part.empty() && twin->said.cause.empty());
    QVERIFY(catalog::documents(*catalogue_, twin->id).empty());
  }

  void causes_are_counted_by_symptom() {
    for (const auto& [cause, symptom] :
         {std::pair{"lead-open", "low"}, {"lead-open", "low"}, {"lead-open", ""}, {"", ""}}) {
      JobFields fields = said("x");
      fields.cause = cause;
      fields.symptom = symptom;
      QVERIFY(catalog::openJob(*catalogue_, fields, "Ann"));
    }
    JobFields away = said("x");
    away.cause = "lead-open";
    away.deleted = "2026-01-01T00:00:00Z";
    QVERIFY(catalog::openJob(*catalogue_, away, "Ann"));
    const auto counts = catalog::causesFound(*catalogue_);
    QCOMPARE(counts.size(), std::size_t{2});
    QCOMPARE(counts[1].symptom, std::string("low"));
    QCOMPARE(counts[1].jobs, std::int64_t{2});
  }

  void an_erased_job_leaves_no_trace_in_any_table_nor_in_the_file() {
    const std::string reference = "Zephyrine Quillfeather";
    const std::string note = "lives beyond the old weir";
    const JobNumber other = catalog::openJob(*catalogue_, said("stays"), "Ann")->id;
    const JobNumber id = catalog::openJob(*catalogue_, said(reference.c_str()), "Ann")->id;
    for (int i = 0; i < 40; ++i) {  // rows come and go around it
      QVERIFY(catalog::changeJob(
          *catalogue_, id, said(reference.c_str(), (note + std::string(static_cast<std::size_t>(i) * 37, 'n')).c_str()),
          "note changed", "Ann"));
      QVERIFY(catalog::openJob(*catalogue_, said("another"), "Ann"));
    }
    QVERIFY(catalog::keepDocument(*catalogue_, id, document(("{\"for\": \"" + reference + "\"}").c_str()), "Ann"));
    QVERIFY(catalog::undoJob(*catalogue_, id, "Ann"));
    const auto sold = catalog::moveStock(
        *catalogue_,
        {catalog::StockMovementKind::sale, catalog::SenderKey{"SN-10.1"}, "B4", 1, {}, "to " + reference, id}, "Ann");
    QVERIFY(sold);
    QVERIFY(everything(*catalogue_).contains("Quillfeather"));

    const auto erased = catalog::eraseJob(*catalogue_, id, "Bob");
    QVERIFY(erased);
    QCOMPARE(erased->documents, 1);
    QCOMPARE(erased->movements, 1);
    QVERIFY(erased->logClean);
    const QString all = everything(*catalogue_);
    QVERIFY(!all.contains("Quillfeather", Qt::CaseInsensitive));
    QVERIFY(!all.contains("old weir", Qt::CaseInsensitive));
    for (const char* name : {"a.ohmkin", "a.ohmkin-wal"}) {
      for (const char* trace : {"Quillfeather", "quillfeather", "old weir"})
        QVERIFY2(!inFile(folder_->path(name), trace), name);
    }
    // The piece stays sold, another job stays, and the log says that one was erased.
    QCOMPARE(catalog::movement(*catalogue_, sold->id)->leftInBin, 4);
    QVERIFY(catalog::job(*catalogue_, other));
    QVERIFY(!catalog::job(*catalogue_, id));
    QVERIFY(all.contains(QString("job erased|job %1|").arg(id.value)));
    QVERIFY(catalog::openJob(*catalogue_, said("new"), "Ann")->id > id);
    QCOMPARE(catalog::eraseJob(*catalogue_, id, "Bob").error().code, std::string("job-unknown"));
  }

  void a_reader_in_the_way_of_erasing_is_told_of() {
    const JobNumber id = catalog::openJob(*catalogue_, said("x"), "Ann")->id;
    const Catalogue reader = Catalogue::open(file_, Access::readOnly);
    const catalog::Snapshot reading(reader);
    (void)catalog::jobCount(reader);
    catalogue_->connection().database().setBusyTimeout(10);
    const auto erased = catalog::eraseJob(*catalogue_, id, "Bob");
    QVERIFY(erased);
    QVERIFY(!erased->logClean);
  }

  void what_came_after_a_document_was_kept_is_told_apart() {
    const JobNumber id = catalog::openJob(*catalogue_, said("x"), "Ann")->id;
    const auto kept = catalog::keepDocument(*catalogue_, id, document("{}"), "Ann");
    QVERIFY(catalog::changesSince(*catalogue_, kept->logLine, 9).empty());
    QVERIFY(catalog::setMinimum(*catalogue_, catalog::SenderKey{"SN-10.1"}, "A1", 3, "Bob"));
    const auto since = catalog::changesSince(*catalogue_, kept->logLine, 9);
    QCOMPARE(since.size(), std::size_t{1});
    QCOMPARE(since.front().what, std::string("minimum changed"));
  }

 private:
  std::unique_ptr<test::Folder> folder_;
  std::filesystem::path file_;
  std::optional<Catalogue> catalogue_;
};

QTEST_APPLESS_MAIN(JobsTest)
#include "tst_jobs.moc"
