#include "command_runner.h"
#include "demo_catalogue.h"

#include <QStringList>
#include <QTest>
#include <fstream>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

/// ohmkin movement, and what pair, trim and dial make of the file it writes. Box readings are worked from the
/// three-number law by hand (tests/gauge checks that law against Kirchhoff), θ = 70 + atan2(x·sin δ, 1 + x·cos δ),
/// δ = −140°, x = R/96: the law the demo's gauge GA-1 states.
class TestMovementCommand : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

  test::Ran onDemo(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin() + 1, {"--catalog", demo_.file().string()});
    return test::run(arguments);
  }
  std::string saved(const std::string& name, const std::string& text) {
    const auto path = demo_.beside(name.c_str());
    std::ofstream(path.string(), std::ios::binary) << text;
    return path.string();
  }
  double errorAt(std::size_t row, std::vector<std::string> more) {
    std::vector<std::string> all{"pair", "--gauge", "GA-1", "--sender", "A", "--json"};
    all.insert(all.end(), more.begin(), more.end());
    const auto ran = onDemo(all);
    if (ran.exit != 0) qWarning("%s", ran.err.c_str());
    return Json::parse(ran.out)["errors"]["rows"][row]["error_k"].get<double>();
  }

 private slots:
  void a_measured_movement_gives_the_pair_the_catalogue_gives_for_the_same_movement() {
    const auto ran = test::run({"movement", "30=55.21", "60=32.38", "96=0", "150=-31.09", "300=-54.76", "--json"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json json = Json::parse(ran.out);
    QVERIFY(std::abs(json["law"]["half_ohm"].get<double>() - 96) < 0.1);
    const std::string file = saved("as-stated.json", ran.out);
    for (const std::size_t row : {0U, 8U, 16U})
      QVERIFY(std::abs(errorAt(row, {"--movement", file}) - errorAt(row, {})) < 0.2);
    const auto text = onDemo({"pair", "--gauge", "GA-1", "--sender", "A", "--movement", file});
    QVERIFY2(text.out.find("movement as measured") != std::string::npos, text.out.c_str());
  }
  void a_drifted_movement_reads_otherwise() {
    // ohms at half the sweep down by a tenth: every sender seems to have a tenth more ohms, and reads colder
    const auto ran = test::run({"movement", "27=55.21", "54=32.38", "86.4=0", "135=-31.09", "270=-54.76", "--json"});
    const std::string file = saved("drifted.json", ran.out);
    for (const std::size_t row : {4U, 16U}) QVERIFY(errorAt(row, {"--movement", file}) < errorAt(row, {}) - 1);
  }
  void any_movement_can_be_taken_as_bench_points() {
    const std::vector<std::string> words{"0=70",       "30=55.21",   "60=32.38",   "96=0",
                                         "150=-31.09", "300=-54.76", "600=-63.31", "open=-70"};
    std::vector<std::string> arguments{"movement", "--kind", "bench-points", "--json"};
    arguments.insert(arguments.end(), words.begin(), words.end());
    const auto ran = test::run(arguments);
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json law = Json::parse(ran.out)["law"];
    QCOMPARE(law["points"].size(), std::size_t{8});
    QVERIFY(law["points"][7]["ohm"] == "open");
    QVERIFY(std::abs(law["points"][2]["ohm"].get<double>() - 60) < 1e-9);
    const std::string file = saved("points.json", ran.out);
    for (const std::size_t row : {0U, 8U, 16U})
      QVERIFY(std::abs(errorAt(row, {"--movement", file}) - errorAt(row, {})) < 1.5);
  }
  void a_return_magnet_is_found_at_two_supplies_and_makes_the_supply_matter() {
    // the same coils with a magnet of 0.08 of their field pulling to −60°, weakening 46 Ω, worked from
    // tan θ' = (V/13.5·x·sin δ + 0.08·sin(−130°)(1 + R/46)) / (V/13.5·(1 + x·cos δ) + 0.08·cos(−130°)(1 + R/46))
    const auto ran = test::run({"movement", "--key-off", "-60", "--read-to", "0.1", "--json", "30=43.65@11",
                                "60=13.16@11", "96=-17.44@11", "150=-39.37@11", "300=-55.97@11", "30=46.89@15",
                                "60=18.09@15", "96=-13.61@15", "150=-37.64@15", "300=-55.71@15"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json magnet = Json::parse(ran.out)["law"]["return_magnet"];
    QVERIFY2(std::abs(magnet["strength"].get<double>() - 0.08) < 0.01, ran.out.c_str());
    QVERIFY2(std::abs(magnet["pull_deg"].get<double>() + 60) < 1, ran.out.c_str());
    const std::string file = saved("magnet.json", ran.out);
    const double low = errorAt(8, {"--movement", file, "--supply", "10.5"});
    const double high = errorAt(8, {"--movement", file, "--supply", "15"});
    QVERIFY(high - low > 0.5);  // a weaker field lets the magnet pull the needle home
  }
  void the_needle_may_be_read_at_marks_of_the_dial() {
    const auto marks = onDemo({"movement", "--gauge", "GA-1", "30=55.21", "60=32.38", "150=-31.09", "42=mark:125"});
    QVERIFY2(marks.exit == 0, marks.err.c_str());
    const auto unknown = onDemo({"movement", "--gauge", "GA-1", "30=55", "60=34", "150=mark:warm"});
    QCOMPARE(unknown.exit, 2);
    QVERIFY2(unknown.err.find("one of the dial's marks: 40") != std::string::npos, unknown.err.c_str());
    const auto without = test::run({"movement", "30=55", "60=34", "150=mark:H"});
    QCOMPARE(without.exit, 2);
    QVERIFY2(without.err.find("expected --gauge") != std::string::npos, without.err.c_str());
  }
  void words_that_do_not_fit_are_refused_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("says");
    const auto row = [](const char* name, const QStringList& arguments, const char* says) {
      QTest::newRow(name) << arguments << says;
    };
    row("no needle", {"30", "60=3", "90=1"}, "OHMS=NEEDLE");
    row("supply of nothing", {"30=4@0", "60=3", "90=1"}, "OHMS=NEEDLE");
    row("negative ohms", {"-30=4", "60=3", "90=1"}, "expected");
    row("kind", {"--kind", "iron", "30=4", "60=3", "90=1"}, "crossed-coil, bimetal or bench-points");
    row("one coil", {"--feed-coil", "90", "30=4", "60=3", "90=1"}, "both coils");
    row("magnet of a bimetal", {"--kind", "bimetal", "--key-off", "-50", "30=4", "60=3", "90=1"}, "return magnet");
    row("one supply", {"--key-off", "-50", "30=40", "60=3", "90=-10", "150=-30", "300=-40"}, "two supplies");
    row("three points", {"--kind", "bench-points", "30=4", "60=3", "90=1"}, "at least four");
    row("to and fro", {"--kind", "bench-points", "30=4", "60=3", "90=5", "120=2"}, "turning the same way");
  }
  void words_that_do_not_fit_are_refused() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, says);
    std::vector<std::string> all{"movement"};
    for (const QString& word : arguments) all.push_back(word.toStdString());
    const auto ran = test::run(all);
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find(says.toStdString()) != std::string::npos, ran.err.c_str());
    QCOMPARE(std::count(ran.err.begin(), ran.err.end(), '\n'), 1);
  }
  void files_that_are_no_movement_are_refused_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("says");
    const auto row = [](const char* name, const char* text, const char* says) { QTest::newRow(name) << text << says; };
    row("no JSON", "grounded 70", "no JSON object");
    row("another document", R"({"schema": "ohmkin.plan", "version": 1})", "another kind of document");
    row("newer", R"({"schema": "ohmkin.movement", "version": 2})", "version 2");
    row("without law", R"({"schema": "ohmkin.movement", "version": 1, "movement": "bimetal"})", "law");
    row("half a law",
        R"({"schema": "ohmkin.movement", "version": 1, "movement": "crossed coil", "law": {"grounded_deg": 70}})",
        "law.sweep_deg");
    row("out of range",
        R"({"schema": "ohmkin.movement", "version": 1, "movement": "crossed coil",
            "law": {"grounded_deg": 70, "sweep_deg": -140, "half_ohm": -3}})",
        "ohms above 0");
    row("points of no shape",
        R"({"schema": "ohmkin.movement", "version": 1, "movement": "bench points", "law": {"points": [3, 4, 5, 6]}})",
        "points[0]");
  }
  void files_that_are_no_movement_are_refused() {
    QFETCH(QString, text);
    QFETCH(QString, says);
    const std::string file = saved("bad.json", text.toStdString());
    const auto ran = onDemo({"pair", "--gauge", "GA-1", "--sender", "A", "--movement", file});
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find(says.toStdString()) != std::string::npos, ran.err.c_str());
  }
  void a_bare_family_has_no_dial_to_turn_a_needle_over() {
    const auto ran = test::run({"movement", "30=55.21", "60=32.38", "96=0", "150=-31.09", "--json"});
    const std::string file = saved("sound.json", ran.out);
    QCOMPARE(onDemo({"pair", "--gauge", "P", "--sender", "A", "--movement", file}).exit, 2);
    QCOMPARE(onDemo({"pair", "--gauge", "GA-1", "--sender", "A", "--movement", "nowhere.json"}).exit, 2);
  }
};

QTEST_APPLESS_MAIN(TestMovementCommand)
#include "tst_movement_command.moc"
