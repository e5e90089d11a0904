#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

/// ohmkin layout as a shop uses it: look, try, keep; what is refused leaves the file as it was.
class TestLayoutCommand : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  test::Ran ask(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin() + 1, {"--catalog", demo_.file().string()});
    return test::run(arguments);
  }
  std::string listed() { return ask({"layout", "--list", "--json"}).out; }
  static std::vector<std::string> with(std::vector<std::string> these, const std::vector<std::string>& more) {
    these.insert(these.end(), more.begin(), more.end());
    return these;
  }
  /// Year, month letter, day. By the Gregorian calendar 74 C 09 is 9 March 1974.
  static std::vector<std::string> shopHead() {
    return {"layout",  "--name",         "Shop head",  "--field",  "year, two digits",
            "--field", "month letter",   "--field",    "day:00",   "--example",
            "74C09",   "--example-date", "1974-03-09", "--source", "common practice: as seen on three heads"};
  }

 private slots:
  void the_list_shows_every_layout_with_its_example() {
    const auto ran = ask({"layout", "--list"});
    QCOMPARE(ran.exit, 0);
    QVERIFY(std::count(ran.out.begin(), ran.out.end(), '\n') >= 10);
    const Json json = Json::parse(listed());
    QCOMPARE(QString::fromStdString(json["schema"]), QString("ohmkin.layouts"));
    for (const Json& layout : json["layouts"]) {
      const auto tried = ask({"layout", "--id", layout["id"], "--try", layout["example"], "--json"});
      QCOMPARE(tried.exit, 0);
      const Json readings = Json::parse(tried.out)["readings"];
      const std::string day = layout["example_date"];
      QVERIFY2(std::any_of(readings.begin(), readings.end(),
                           [&](const Json& r) { return r["from"] <= day && day < r["until"]; }),
               tried.out.c_str());
    }
  }
  void a_code_is_tried_under_fields_that_nobody_has_saved() {
    const auto before = test::bytesOf(demo_.file());
    const auto ran =
        ask({"layout", "--field", "month letter", "--field", "day:00", "--field", "year digit", "--try", "C091"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    QVERIFY2(ran.out.find("9 Mar 1971") != std::string::npos, ran.out.c_str());
    const auto impossible = ask(
        {"layout", "--field", "month letter", "--field", "day:00", "--field", "year, two digits", "--try", "F3174"});
    QVERIFY2(impossible.out.find("Jun") != std::string::npos, impossible.out.c_str());  // June has 30 days
    QVERIFY(test::bytesOf(demo_.file()) == before);
  }
  void what_is_refused_leaves_the_file_as_it_was_data() {
    QTest::addColumn<QStringList>("change");
    QTest::addColumn<QString>("says");
    // Day and year without anything between them, both of one digit or two: 111 may be 11 and 1, or 1 and 11.
    QTest::newRow("ambiguous") << QStringList{"--field", "day", "--field", "month number"} << "--field";
    QTest::newRow("circular: the month twice") << QStringList{"--field", "month letter", "--field", "day:00",
                                                              "--field", "year digit",   "--field", "month letter"}
                                               << "";
    QTest::newRow("no year") << QStringList{"--field", "month letter", "--field", "day:00"} << "";
    QTest::newRow("a kind nobody knows") << QStringList{"--field", "moon"} << "--field";
  }
  void what_is_refused_leaves_the_file_as_it_was() {
    QFETCH(QStringList, change);
    const auto before = test::bytesOf(demo_.file());
    const std::string list = listed();
    std::vector<std::string> asked{"layout",     "--name",   "Bad one",
                                   "--example",  "C091",     "--example-date",
                                   "1971-03-09", "--source", "common practice: nowhere"};
    for (const QString& word : change) asked.push_back(word.toStdString());
    const auto ran = ask(asked);
    QCOMPARE(ran.exit, 2);
    QVERIFY(ran.out.empty());
    QVERIFY2(ran.err.starts_with("ohmkin: ") && std::count(ran.err.begin(), ran.err.end(), '\n') == 1, ran.err.c_str());
    QVERIFY(test::bytesOf(demo_.file()) == before);
    QCOMPARE(listed(), list);
  }
  void an_example_that_reads_otherwise_and_a_missing_source_are_refused() {
    const auto before = test::bytesOf(demo_.file());
    auto wrongDay = shopHead();
    *std::find(wrongDay.begin(), wrongDay.end(), "1974-03-09") = "1974-03-10";
    const auto ran = ask(wrongDay);
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find("74C10") != std::string::npos, ran.err.c_str());  // how the layout would write that day
    auto noSource = shopHead();
    noSource.resize(noSource.size() - 2);
    QCOMPARE(ask(noSource).exit, 2);
    QVERIFY(test::bytesOf(demo_.file()) == before);
  }
  void a_good_one_is_kept_read_by_date_and_not_replaced_unasked() {
    const auto saved = ask(shopHead());
    QVERIFY2(saved.exit == 0, saved.err.c_str());
    QVERIFY2(saved.out.find("shop-head") != std::string::npos, saved.out.c_str());
    QVERIFY(listed().find("\"shop-head\"") != std::string::npos);
    const auto dated = ask({"date", "--head", "74C09", "--layout", "shop-head"});
    QCOMPARE(dated.exit, 0);
    QVERIFY2(dated.out.find("9 Mar 1974") != std::string::npos, dated.out.c_str());
    const auto before = test::bytesOf(demo_.file());
    QCOMPARE(ask(shopHead()).exit, 2);  // taken
    QVERIFY(test::bytesOf(demo_.file()) == before);
    QCOMPARE(ask(with(shopHead(), {"--replace"})).exit, 0);
  }
};

QTEST_APPLESS_MAIN(TestLayoutCommand)
#include "tst_layout_command.moc"
