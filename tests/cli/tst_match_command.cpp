#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

class TestMatchCommand : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  test::Ran match(std::vector<std::string> more) {
    std::vector<std::string> all{"match", "--catalog", demo_.file().string()};
    all.insert(all.end(), more.begin(), more.end());
    return test::run(all);
  }

 private slots:
  void options_and_plain_words_ask_the_same() {
    const auto words = match({"1968", "ridgeway", "utility", "gauge", "package", "casting", "30418"});
    const auto options =
        match({"--vehicle", "Ridgeway utility", "--year", "1968", "--cluster", "gauge package", "--casting", "30418"});
    QCOMPARE(words.exit, 0);
    QCOMPARE(words.out, options.out);
    QVERIFY(words.err.empty());
  }
  void the_answer_always_carries_its_cautions() {
    const auto ran = match({"1968", "ridgeway", "utility"});
    QVERIFY(ran.out.find("coolant under pressure scalds") != std::string::npos);
    QVERIFY(ran.out.find("Local codes and licensed practice come first") != std::string::npos);
  }
  void json_has_a_schema_at_the_top_and_stable_keys() {
    const auto ran = match({"1968 ridgeway utility gauge package casting 30418", "--json"});
    QVERIFY(ran.out.starts_with("{\n  \"schema\": \"ohmkin.match\",\n  \"version\": 1,"));
    const Json json = Json::parse(ran.out);
    for (const char* key : {"answered", "understood", "branches", "look", "findings", "cautions"})
      QVERIFY2(json.contains(key), key);
    const Json& branch = json["branches"][0];
    for (const char* key :
         {"assumes", "weight", "gauge", "family", "chain", "era", "considered", "findings", "band_c", "senders"})
      QVERIFY2(branch.contains(key), key);
    const Json& sender = branch["senders"][0];
    for (const char* key : {"part", "kind", "family", "thread", "terminal", "rank", "recommended", "sentence",
                            "parts_needed", "joints", "findings", "errors", "trim", "shelf"})
      QVERIFY2(sender.contains(key), key);
    QVERIFY(sender["errors"]["rows"].size() > 10);
  }
  void fahrenheit_reaches_every_sentence() {
    const auto ran = match({"1968 ridgeway utility gauge package casting 30418", "--units", "F,lbf-ft"});
    QVERIFY(ran.out.find("°F") != std::string::npos);
    QVERIFY2(ran.out.find("°C") == std::string::npos,
             ran.out.substr(ran.out.find("°C") == std::string::npos ? 0 : ran.out.find("°C") - 60, 120).c_str());
  }
  void words_not_understood_are_said_on_the_message_stream() {
    const auto ran = match({"1968 ridgeway utility xylophone"});
    QVERIFY(ran.err.find("'xylophone' was not understood") != std::string::npos);
    QVERIFY(ran.out.find("xylophone") == std::string::npos);
  }
  void no_line_is_wider_than_the_terminal() {
    const auto ran = match({"1968", "ridgeway", "utility"});
    std::istringstream lines(ran.out);
    for (std::string line; std::getline(lines, line);)
      QVERIFY2(QString::fromStdString(line).size() <= 110, line.c_str());
  }
};

QTEST_APPLESS_MAIN(TestMatchCommand)
#include "tst_match_command.moc"
