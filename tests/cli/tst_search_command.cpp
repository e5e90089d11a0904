#include "command_runner.h"
#include "demo_catalogue.h"

#include <QtTest/QtTest>
#include <nlohmann/json.hpp>

using ohmkin::test::run;

class TestSearchCommand : public QObject {
  Q_OBJECT
  ohmkin::test::DemoCatalogue demo_;

  ohmkin::test::Ran search(std::vector<std::string> words) {
    words.insert(words.begin(), {"search", "--catalog", demo_.file().string()});
    return run(words);
  }

 private slots:
  void saysWhatItFoundAndWhy() {
    const auto ran = search({"br", "2201"});
    QCOMPARE(ran.exit, 0);
    QVERIFY2(ran.out.starts_with("sender        BR-2201"), ran.out.c_str());
    QVERIFY(ran.out.find("[number]") != std::string::npos);
  }

  void asJson() {
    const auto ran = search({"--json", "--limit", "2", "ridgeway"});
    QCOMPARE(ran.exit, 0);
    const auto document = nlohmann::json::parse(ran.out);
    QCOMPARE(document["schema"].get<std::string>(), std::string("ohmkin.search"));
    QCOMPARE(document["found"].size(), std::size_t{2});
    QVERIFY(document["total"].get<int>() > 2);
    for (const char* key :
         {"rank", "kind", "id", "title", "about", "how", "field", "matched", "why", "in_stock", "uses", "leads_to"})
      QVERIFY2(document["found"][0].contains(key), key);
    const auto further = search({"--json", "--limit", "1", "--after", document["next"].get<std::string>(), "ridgeway"});
    QCOMPARE(nlohmann::json::parse(further.out)["found"][0]["rank"].get<int>(), 3);
  }

  void oneKindAlone() {
    const auto ran = search({"--json", "--kind", "casting", "3"});
    const auto document = nlohmann::json::parse(ran.out);
    QVERIFY(!document["found"].empty());
    for (const auto& found : document["found"]) QCOMPARE(found["kind"].get<std::string>(), std::string("casting"));
  }

  void nothingIsNoAnswer() {
    const auto ran = search({"qqqqxxxx"});
    QCOMPARE(ran.exit, 1);
    QVERIFY(ran.out.starts_with("Nothing of that name"));
  }

  void showsAllOfASender() {
    const auto ran = run({"show", "--catalog", demo_.file().string(), "br", "2207"});
    QCOMPARE(ran.exit, 0);
    for (const char* text :
         {"sender BR-2207", "superseded by BR-2215", "temperature sender", "A, Family A", "318 Ω cold, 34.6 Ω hot",
          "3/8-18 NPT", "15 N·m to 20 N·m", "1966–1973", "stands in for", "BR-2201 (since 1966-09-01)", "source"})
      QVERIFY2(ran.out.find(text) != std::string::npos, text);
  }

  void showsWhatIsInStockAndThePortsOfACasting() {
    const auto stock = run({"show", "--catalog", demo_.file().string(), "BR-2215"});
    QVERIFY2(stock.out.find("6 in bin 4C") != std::string::npos, stock.out.c_str());
    const auto ports = run({"show", "--catalog", demo_.file().string(), "--json", "30112"});
    const auto document = nlohmann::json::parse(ports.out);
    QCOMPARE(document["kind"].get<std::string>(), std::string("casting"));
    QCOMPARE(document["lists"][0]["rows"][0].get<std::string>(),
             std::string("front of the head: 3/8-18 NPT, gauge sender"));
  }

  void showsEveryThingThereIs() {
    for (const char* kind : {"sender", "gauge", "family", "line", "cluster", "casting", "engine", "make", "thread",
                             "connector", "adapter", "pigtail", "date-layout"}) {
      std::string id;
      for (const char* text : {"a", "b", "p", "r", "m", "1", "g", "s", "3"}) {
        const auto found = search({"--json", "--kind", kind, "--limit", "1", text});
        if (found.exit == 0) id = nlohmann::json::parse(found.out)["found"][0]["id"].get<std::string>();
      }
      QVERIFY2(!id.empty(), kind);
      const auto ran = run({"show", "--catalog", demo_.file().string(), "--json", "--kind", kind, id});
      QVERIFY2(ran.exit == 0, ran.err.c_str());
      const auto document = nlohmann::json::parse(ran.out);
      QCOMPARE(document["id"].get<std::string>(), id);
      QVERIFY2(!document["facts"].empty(), id.c_str());
    }
  }

  void whatCannotBeShownNamesTheChoices() {
    const auto several = run({"show", "--catalog", demo_.file().string(), "temperature", "sender"});
    QCOMPARE(several.exit, 2);
    QVERIFY2(several.err.find("sender BR-2215; ") != std::string::npos, several.err.c_str());
    const auto none = run({"show", "--catalog", demo_.file().string(), "BR-2209"});
    QCOMPARE(none.exit, 2);
    QVERIFY2(none.err.find("perhaps sender BR-22") != std::string::npos, none.err.c_str());
  }

  void refusals_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QString>("option");
    QTest::newRow("a kind there is not") << QStringList{"--kind", "turnip", "r"} << "--kind";
    QTest::newRow("no limit") << QStringList{"--limit", "many", "r"} << "--limit";
    QTest::newRow("limit of none") << QStringList{"--limit", "0", "r"} << "--limit";
    QTest::newRow("a place of nowhere") << QStringList{"--after", "here", "r"} << "--after";
  }
  void refusals() {
    QFETCH(QStringList, words);
    QFETCH(QString, option);
    std::vector<std::string> given;
    for (const QString& word : words) given.push_back(word.toStdString());
    const auto ran = search(given);
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find(option.toStdString()) != std::string::npos, ran.err.c_str());
    QVERIFY(ran.out.empty());
  }
};

QTEST_APPLESS_MAIN(TestSearchCommand)
#include "tst_search_command.moc"
