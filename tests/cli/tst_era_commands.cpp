#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

/// date with what is usual set by hand; plan with a pair that cannot be asked.
class TestEraCommands : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  test::Ran ask(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin() + 1, {"--catalog", demo_.file().string()});
    return test::run(arguments);
  }

 private slots:
  void lags_are_said_and_may_be_set() {
    const Json usual = Json::parse(ask({"date", "--head", "H 22 1", "--json"}).out);
    QCOMPARE(QString::fromStdString(usual["lags"]["casting_to_assembly"]["source"]), QString("from memory, no source"));
    const auto set = ask({"date", "--head", "H 22 1", "--casting-to-engine", "20,90", "--engine-to-vehicle", "30",
                          "--still-first", "50", "--json"});
    QVERIFY2(set.exit == 0, set.err.c_str());
    const Json json = Json::parse(set.out);
    const Json& lag = json["lags"]["casting_to_assembly"];
    QVERIFY(std::abs(lag["half_within_days"].get<double>() - 20) < 1e-9);
    QVERIFY(std::abs(lag["nine_in_ten_within_days"].get<double>() - 90) < 1e-6);
    QCOMPARE(QString::fromStdString(lag["source"]), QString("as you set it"));
    QVERIFY(std::abs(json["still_first_engine"]["share"].get<double>() - 0.5) < 1e-12);
    const auto text = ask({"date", "--head", "H 22 1", "--casting-to-engine", "20,90"}).out;
    QVERIFY2(text.find("within 20 days, nine in ten within 90") != std::string::npos, text.c_str());
  }
  void a_longer_lag_moves_the_assembly() {
    const auto median = [&](const char* days) {
      const auto ran = ask({"date", "--head", "30418:H 22 1", "--casting-to-engine", days, "--json"});
      return Json::parse(ran.out)["assembly"]["to_95_percent"].get<std::string>();
    };
    QVERIFY(median("12") < median("60"));
  }
  void only_dates_between_are_considered() {
    const Json json = Json::parse(ask({"date", "--head", "H 22 1", "--between", "1975..1985", "--json"}).out);
    QCOMPARE(QString::fromStdString(json["considered"]["from"]), QString("1975-01-01"));
    QCOMPARE(QString::fromStdString(json["considered"]["until"]), QString("1986-01-01"));
    for (const Json& meaning : json["codes"][0]["meanings"]) {
      const auto from = meaning["from"].get<std::string>();
      QVERIFY(from >= "1975-01-01" && from < "1986-01-01");
    }
    const auto days = ask({"date", "--head", "H 22 1", "--between", "1981-08-22..1981-08-22", "--json"});
    QCOMPARE(QString::fromStdString(Json::parse(days.out)["assembly"]["most_probable"]), QString("1981-08-22"));
  }
  void bad_lags_and_dates_are_refused_in_one_sentence_data() {
    QTest::addColumn<QString>("option");
    QTest::addColumn<QString>("value");
    QTest::newRow("no days") << "--casting-to-engine"
                             << "0";
    QTest::newRow("below nothing") << "--casting-to-engine"
                                   << "-3";
    QTest::newRow("no number") << "--casting-to-engine"
                               << "soon";
    QTest::newRow("nine in ten sooner than half") << "--engine-to-vehicle"
                                                  << "12,10";
    QTest::newRow("for ever") << "--engine-to-vehicle"
                              << "1e9";
    QTest::newRow("not a number") << "--engine-to-vehicle"
                                  << "nan,nan";
    QTest::newRow("more than all") << "--still-first"
                                   << "101";
    QTest::newRow("one year only") << "--between"
                                   << "1975";
    QTest::newRow("backwards") << "--between"
                               << "1985..1975";
    QTest::newRow("no such day") << "--between"
                                 << "1975-02-29..1980";
    QTest::newRow("before the calendar") << "--between"
                                         << "1200..1300";
  }
  void bad_lags_and_dates_are_refused_in_one_sentence() {
    QFETCH(QString, option);
    QFETCH(QString, value);
    const auto ran = ask({"date", "--head", "H 22 1", option.toStdString() + "=" + value.toStdString()});
    QCOMPARE(ran.exit, 2);
    QVERIFY(ran.out.empty());
    QVERIFY2(ran.err.starts_with("ohmkin: ") && std::count(ran.err.begin(), ran.err.end(), '\n') == 1, ran.err.c_str());
  }
  void several_heads_are_called_by_letters_and_one_is_the_head() {
    const auto two = ask({"date", "--head", "30418:H 22 1", "--head", "30418:C 4 1", "--year", "1968"}).out;
    QVERIFY2(two.find("head A") != std::string::npos && two.find("the head B") == std::string::npos, two.c_str());
    // Left and right where the casting numbers say so, and a bad code is said to be that head's; June has 30 days.
    const auto sides = ask({"date", "--head", "41204:F 31 1", "--head", "41205:A 5 1"}).out;
    QVERIFY2(sides.find("left head, F 31 1: ") != std::string::npos, sides.c_str());
    QVERIFY2(sides.find("Right head: ") != std::string::npos, sides.c_str());
    const auto one = ask({"date", "--head", "30418:H 22 1", "--year", "1968"}).out;
    QVERIFY2(one.find("The head was cast") != std::string::npos, one.c_str());
  }
  void a_pair_that_cannot_be_asked_is_refused_alone() {
    const std::vector<std::string> asked{"plan",         "--dash",        "1968 ridgeway utility gauge package",
                                         "--donor",      "casting 30418", "--donor",
                                         "casting 99999"};
    const auto text = ask(asked);
    QVERIFY2(text.exit == 0, text.err.c_str());
    QVERIFY2(text.out.find("not looked at") != std::string::npos, text.out.c_str());
    auto machine = asked;
    machine.emplace_back("--json");
    const Json json = Json::parse(ask(machine).out);
    QVERIFY(json["cells"][0]["refused"].is_null() && json["cells"][0]["answered"].get<bool>());
    QVERIFY(json["cells"][1]["refused"].is_object() && !json["cells"][1]["answered"].get<bool>());
    QVERIFY(!json["shopping"].empty());
    QCOMPARE(json["shopping"].size(), json["parts_to_buy"].size());
    QCOMPARE(json["shopping"][0]["part"].get<std::string>(), json["parts_to_buy"][0].get<std::string>());
  }
  void a_plan_of_nothing_but_refusals_exits_with_no_answer() {
    const auto ran = ask({"plan", "--dash", "1968 ridgeway utility gauge package", "--donor", "casting 99999"});
    QCOMPARE(ran.exit, 1);
    QVERIFY2(ran.out.find("not looked at") != std::string::npos, ran.out.c_str());
  }
};

QTEST_APPLESS_MAIN(TestEraCommands)
#include "tst_era_commands.moc"
