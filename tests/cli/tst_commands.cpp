#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

/// pair, trim, date and plan on the demo catalogue: they answer, in text and in JSON.
class TestCommands : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  test::Ran ask(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin() + 1, {"--catalog", demo_.file().string()});
    return test::run(arguments);
  }

 private slots:
  void pair_shows_the_table_both_ways() {
    const auto text = ask({"pair", "--gauge", "A", "--sender", "B"});
    QCOMPARE(text.exit, 0);
    QVERIFY(text.out.find("indicated") != std::string::npos);
    const Json json = Json::parse(ask({"pair", "--gauge", "A", "--sender", "B", "--json"}).out);
    QCOMPARE(QString::fromStdString(json["schema"]), QString("ohmkin.pair"));
    QVERIFY(json["errors"]["low"]["error_k"].get<double>() < 0);  // a high-ohm sender on a low-ohm gauge reads low
  }
  void pair_swapped_errs_the_other_way() {
    const Json json = Json::parse(ask({"pair", "--gauge", "B", "--sender", "A", "--json"}).out);
    QVERIFY(json["errors"]["high"]["error_k"].get<double>() > 0);
  }
  void monte_carlo_is_the_same_twice() {
    const auto once = ask({"pair", "--gauge", "A", "--sender", "B", "--monte-carlo", "2000", "--json"});
    QCOMPARE(once.exit, 0);
    QCOMPARE(ask({"pair", "--gauge", "A", "--sender", "B", "--monte-carlo", "2000", "--json"}).out, once.out);
  }
  void trim_lists_what_fails_and_how() {
    const auto ran = ask({"trim", "--gauge", "A", "--sender", "B"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    for (const char* words : {"What fails", "lead", "excluded by bounds", "buy"}) QVERIFY2(ran.out.find(words) != std::string::npos, words);
  }
  void trim_from_the_drawer_uses_only_what_is_there() {
    const Json json = Json::parse(ask({"trim", "--gauge", "A", "--sender", "B", "--drawer", "100,220,470", "--json"}).out);
    QVERIFY(!json["proposal"].is_null());
    for (const char* part : {"series_ohm", "parallel_ohm"}) {
      const Json& value = json["proposal"]["network"][part];
      if (!value.is_null()) QVERIFY(value == 100.0 || value == 220.0 || value == 470.0);
    }
  }
  void date_reads_a_head_and_says_whose_engine_it_is() {
    const auto ran = ask({"date", "--head", "30418:H 22 1", "--year", "1968"});
    QCOMPARE(ran.exit, 0);
    QVERIFY2(ran.out.find("22 Aug 1981") != std::string::npos, ran.out.c_str());
    const Json json = Json::parse(ask({"date", "--head", "30418:H 22 1", "--year", "1968", "--json"}).out);
    QVERIFY(json["first_engine"].get<double>() < 0.15);
  }
  void plan_is_saved_opened_and_answers_the_same() {
    const std::string file = demo_.beside("plan.json").string();
    const auto first = ask({"plan", "--dash", "1968 ridgeway utility gauge package", "--donor", "casting 30418", "--donor", "casting 30112", "--save", file});
    QVERIFY2(first.exit == 0, first.err.c_str());
    const auto again = ask({"plan", "--open", file});
    QCOMPARE(again.out, first.out);
  }
  void unknown_families_name_the_nearest() {
    const auto ran = ask({"pair", "--gauge", "Famly A", "--sender", "B"});
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find("perhaps Family A") != std::string::npos, ran.err.c_str());
  }
};

QTEST_APPLESS_MAIN(TestCommands)
#include "tst_commands.moc"
