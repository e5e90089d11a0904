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
    for (const char* words : {"What fails", "lead", "excluded by bounds", "buy"})
      QVERIFY2(ran.out.find(words) != std::string::npos, words);
  }
  void trim_from_the_drawer_uses_only_what_is_there() {
    const Json json =
        Json::parse(ask({"trim", "--gauge", "A", "--sender", "B", "--drawer", "100,220,470", "--json"}).out);
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
    const auto first = ask({"plan", "--dash", "1968 ridgeway utility gauge package", "--donor", "casting 30418",
                            "--donor", "casting 30112", "--save", file});
    QVERIFY2(first.exit == 0, first.err.c_str());
    const auto again = ask({"plan", "--open", file});
    QCOMPARE(again.out, first.out);
  }
  void fit_finds_the_curve_the_readings_lie_on() {
    // NTC table of tests/data: 10 kΩ at 25 °C; the B-parameter between 25 and 85 °C is 3435 K as published with it
    const auto ran = test::run(
        {"fit", "25C=10000", "35C=6940", "45C=4911", "55C=3536", "65C=2588", "75C=1924", "85C=1451", "--json"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json json = Json::parse(ran.out);
    QVERIFY(json["scatter_ln"].get<double>() < 0.002);
    QCOMPARE(json["readings"].size(), std::size_t{7});
    QCOMPARE(test::run({"fit", "25C=10000", "35C=6940"}).exit, 2);
    QCOMPARE(test::run({"fit", "25C=10000", "warm=3"}).exit, 2);
  }
  void dial_writes_a_drawing_at_true_size() {
    const auto svg = demo_.beside("dial.svg");
    const auto ran = ask({"dial", "--gauge", "GA-1", "--sender", "B", "--svg", svg.string()});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    QVERIFY(ran.out.find("Warmed up with the") != std::string::npos);
    QVERIFY(test::bytesOf(svg).find("mm\"") != std::string::npos);
  }
  void movement_finds_the_three_numbers_of_an_invented_gauge() {
    // angle = 64 + atan2(x sin δ, 1 + x cos δ), δ = −130°, x = R/90, worked by hand to a tenth of a degree
    const auto ran =
        test::run({"movement", "30=46.0", "60=22.2", "90=-1", "150=-29.2", "300=-50.1", "open=<-66", "--json"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json numbers = Json::parse(ran.out)["numbers"];
    QVERIFY(std::abs(numbers[0]["value"].get<double>() - 64) < 1);
    QVERIFY(std::abs(numbers[1]["value"].get<double>() + 130) < 2);
    QVERIFY(std::abs(numbers[2]["value"].get<double>() - 90) < 2);
  }
  void conditions_act_on_what_they_should() {
    // Copper: a warm cluster reads lower (0.39 %/K of coil ohms); supply does nothing to a crossed coil
    const auto worst = [&](std::vector<std::string> more) {
      std::vector<std::string> all{"pair", "--gauge", "GA-1", "--sender", "A", "--json"};
      all.insert(all.end(), more.begin(), more.end());
      return Json::parse(ask(all).out)["errors"]["rows"][12]["error_k"].get<double>();
    };
    QVERIFY(std::abs(worst({"--cluster-at", "50"}) - worst({})) > 2);
    QCOMPARE(worst({"--supply", "10"}), worst({"--supply", "15"}));
    QCOMPARE(ask({"pair", "--gauge", "GA-1", "--sender", "A", "--supply", "-3"}).exit, 2);
  }
  void a_network_chosen_by_hand_is_judged() {
    const Json json = Json::parse(
        ask({"trim", "--gauge", "GA-1", "--sender", "B", "--network", "parallel 220 series 10", "--json"}).out);
    QCOMPARE(json["proposal"]["network"]["parallel_ohm"].get<double>(), 220.0);
    QCOMPARE(json["proposal"]["network"]["series_ohm"].get<double>(), 10.0);
    QVERIFY(!json["proposal"]["failures"].empty());
    QCOMPARE(ask({"trim", "--gauge", "GA-1", "--sender", "B", "--network", "sideways 3"}).exit, 2);
  }
  void unknown_families_name_the_nearest() {
    const auto ran = ask({"pair", "--gauge", "Famly A", "--sender", "B"});
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find("perhaps Family A") != std::string::npos, ran.err.c_str());
  }
};

QTEST_APPLESS_MAIN(TestCommands)
#include "tst_commands.moc"
