#include "command_runner.h"
#include "demo_catalogue.h"

#include <QStringList>
#include <QTest>
#include <fstream>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

/// ohmkin import and ohmkin bench, as they are typed. The readings are invented, near the demo's Family A.
class TestBenchCommands : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  std::string catalogue_;
  int copies_ = 0;

  test::Ran run(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin() + 1, {"--catalog", catalogue_});
    return test::run(arguments);
  }
  std::string saved(const char* name, const std::string& text) {
    const auto path = demo_.beside(name);
    std::ofstream(path, std::ios::binary) << text;
    return path.string();
  }
  std::string bath() {
    return saved(
        "bath.csv",
        "Temp. [°C];R [Ω]\r\n45;265,1\r\n55;190,2\r\n65;139,5\r\n75;104,3\r\n85;79,3\r\n95;61,3\r\n105;48,1\r\n"
        "115;abc\r\n");
  }

 private slots:
  void init() {
    const auto copy = demo_.beside(("cli-" + std::to_string(++copies_) + ".ohmkin").c_str());
    std::filesystem::copy_file(demo_.file(), copy, std::filesystem::copy_options::overwrite_existing);
    catalogue_ = copy.string();
  }

  void aDryRunShowsEverythingAndWritesNothing() {
    const auto before = test::bytesOf(catalogue_);
    const auto ran = run({"import", "--dry-run", "--part", "BR-2215", bath()});
    QCOMPARE(ran.exit, 0);
    QVERIFY(ran.out.find("temperature=1:C, resistance=2:ohm") != std::string::npos);
    QVERIFY(ran.out.find("Family A") != std::string::npos);
    QVERIFY(ran.out.find("Nothing was written") != std::string::npos);
    QVERIFY2(ran.err.find("bath.csv:9:2: found 'abc', expected ohms above 0") != std::string::npos, ran.err.c_str());
    QCOMPARE(test::bytesOf(catalogue_), before);
  }

  void importListUndoAndImportAgain() {
    const auto in = run({"import", "--part", "BR-2215", "--lot", "R7", "--who", "Ann", "--json", bath()});
    QCOMPARE(in.exit, 0);
    const Json document = Json::parse(in.out);
    QCOMPARE(document["schema"].get<std::string>(), std::string("ohmkin.import"));
    const Json& file = document["files"][0];
    QCOMPARE(file["rows"].get<int>(), 7);
    QCOMPARE(file["rejected"][0]["line"].get<int>(), 9);
    QCOMPARE(file["runs"][0]["whose"]["suspects"][0]["family"].get<std::string>(), std::string("A"));
    QVERIFY(file["runs"][0]["curve"].is_string());

    const auto again = run({"import", "--who", "Bert", bath()});
    QCOMPARE(again.exit, 1);
    QVERIFY(again.err.find("Ann") != std::string::npos && again.err.find("nothing was changed") != std::string::npos);

    const auto list = run({"import", "--list", "--json"});
    QCOMPARE(Json::parse(list.out)["imports"].size(), std::size_t{1});
    QCOMPARE(run({"import", "--undo", "1"}).exit, 0);
    QCOMPARE(run({"import", "--undo", "1"}).exit, 2);
    QCOMPARE(run({"import", "--undo", "one"}).exit, 2);
    QCOMPARE(run({"import", "--part", "BR-2215", bath()}).exit, 0);
  }

  void aMatchSaysThatTheLotIsJudgedByItsOwnBenchCurve() {
    QCOMPARE(run({"import", "--part", "BR-2215", "--lot", "R7", "--who", "Ann", bath()}).exit, 0);
    const auto match = run({"match", "--vehicle", "ridgeway utility", "--year", "1968", "--cluster", "gauge package",
                            "--casting", "30418", "--json"});
    QVERIFY2(match.exit == 0, match.err.c_str());
    bool said = false;
    const Json answer = Json::parse(match.out);
    for (const auto& sender : answer["branches"][0]["senders"]) {
      if (sender["part"] != "BR-2215" || sender["lot"] != "R7") continue;
      said = sender["sentence"].get<std::string>().find("Judged by its own bench curve of 20") != std::string::npos &&
             sender["sentence"].get<std::string>().find("lot R7, by Ann") != std::string::npos;
    }
    QVERIFY(said);
  }

  void eachFileIsItsOwn() {
    const auto bad = saved("bad.csv", "nothing at all\n");
    const auto ran = run({"import", "--part", "BR-2215", bad, bath()});
    QCOMPARE(ran.exit, 2);
    QVERIFY(!ran.err.empty());
    QVERIFY(ran.out.find("are in, as import 1") != std::string::npos);
  }

  void aMapIsRememberedAndAWrongOneRefused() {
    const auto text = [](int start) {
      std::string lines = "a,b\n";
      for (int i = 0; i < 9; ++i) lines += std::to_string(start + 18 * i) + "," + std::to_string(900 - 90 * i) + "\n";
      return lines;
    };
    const auto wrong = run({"import", "--dry-run", "--map", "temperature=1:X", saved("f.csv", text(70))});
    QCOMPARE(wrong.exit, 2);
    QVERIFY(wrong.err.find("--map") != std::string::npos);
    QCOMPARE(run({"import", "--map", "temperature=1:F, resistance=2:ohm", saved("f.csv", text(70))}).exit, 0);
    const auto next = run({"import", "--dry-run", "--json", saved("g.csv", text(68))});
    const Json file = Json::parse(next.out)["files"][0];
    QVERIFY(file["remembered"].get<bool>());
    QVERIFY(std::abs(file["runs"][0]["span_c"][0].get<double>() - 20) < 1e-9);  // 68 °F
  }

  void whatAFileLeavesOpenIsAskedFirst() {
    // Neither kΩ nor the mark in 1,234 can be told from the file.
    const auto file = saved("open.csv", "t;R\n20;9,234\n40;5,712\n60;3,401\n80;2,233\n95;1,155\n");
    const auto asked = run({"import", file});
    QCOMPARE(asked.exit, 2);
    QVERIFY2(asked.err.find("resistance=2:kohm") != std::string::npos, asked.err.c_str());
    QVERIFY(asked.err.find("--map") != std::string::npos);
    QCOMPARE(run({"import", "--list"}).exit, 1);
    QCOMPARE(run({"import", "--map", "resistance=2:kohm, decimal=comma", file}).exit, 0);
  }

  void theBenchIdentifiesJudgesAndSaysWhatToReadNext() {
    const auto ran = run({"bench", "--part", "BR-2215", "--meter", "0.8 %", "--bath", "0.5 K", "--stirred",
                          "--immersed", "--json", "40C=318", "60C=165"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json document = Json::parse(ran.out);
    QCOMPARE(document["schema"].get<std::string>(), std::string("ohmkin.bench"));
    QCOMPARE(document["whose"]["suspects"][0]["family"].get<std::string>(), std::string("A"));
    QCOMPARE(document["good"]["verdict"].get<std::string>(), std::string("pass"));
    QVERIFY(document["next"]["at_c"].is_number());
    QVERIFY(document["cautions"].size() >= 4);
    const auto text = run({"bench", "--meter", "0.8 %", "--bath", "0.5 K", "60C=165"});
    QVERIFY(text.out.find("Local codes") < text.out.find("60.0 °C"));  // cautions first
  }

  void iceAndBoilingWaterAreBaths() {
    // 93.315 °C at 2000 m: tests/data/iso2533-atmosphere.csv.
    const auto ran = run({"bench", "--altitude", "2000 m", "--json", "ice=1500", "boil=62", "20C=OL"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    const Json readings = Json::parse(ran.out)["readings"];
    QCOMPARE(readings.size(), std::size_t{2});
    QCOMPARE(readings[0]["true_c"].get<double>(), 0.0);
    QVERIFY(std::abs(readings[1]["true_c"].get<double>() - 93.315) < 0.05);
    // The same altitude in feet.
    const auto feet = run({"bench", "--altitude", "6561.68 ft", "--json", "boil=62"});
    QVERIFY(std::abs(Json::parse(feet.out)["readings"][0]["true_c"].get<double>() - 93.315) < 0.05);
  }

  void theBarometersQuestionIsAsked() {
    const auto ran = run({"bench", "--barometer", "1013 hPa", "boil=60"});
    QCOMPARE(ran.exit, 2);
    QVERIFY(ran.err.find("--reduced") != std::string::npos);
    QCOMPARE(run({"bench", "--barometer", "1013 hPa", "--reduced", "no", "boil=60"}).exit, 0);
  }

  void keptReadingsAreHeldAgainstTheNext() {
    const auto kept = run({"bench", "--part", "BR-2216", "--lot", "3", "--who", "Ann", "--meter", "0.3 %", "--bath",
                           "0.2 K", "--keep", "45C=265.1", "55C=190.2", "65C=139.5", "75C=104.3", "85C=79.3"});
    QVERIFY2(kept.exit == 0, kept.err.c_str());
    QVERIFY(kept.out.find("kept as run") != std::string::npos);
    const auto next = run({"bench", "--part", "BR-2216", "--meter", "0.3 %", "--bath", "0.2 K", "--json", "60C=170"});
    const Json drift = Json::parse(next.out)["drift"];
    QCOMPARE(drift.size(), std::size_t{1});
    QVERIFY(drift[0]["provenance"].get<std::string>().find("Ann") != std::string::npos);
  }

  /// A part of the wrong family in the right box: five baths, kept, and from then on matching knows better than its
  /// number.
  void aPartThatReadsAsAnotherFamilyIsFoundOut() {
    // The demo's Family B through its two stated points, 940 Ω at 40 °C and 42.5 Ω at 120 °C (R = R0·exp(B(1/T −
    // 1/T0)), IEC 60539-1), worked by hand: 469 Ω at 55, 249 Ω at 70, 139 Ω at 85, 81.4 Ω at 100 °C, rounded.
    const std::vector<std::string> readings{"40C=940", "55C=469", "70C=249", "85C=139", "100C=81.4"};
    std::vector<std::string> words{"bench",  "--part", "BR-2219",   "--lot", "spring", "--meter", "0.8 %",
                                   "--bath", "0.5 K",  "--stirred", "--who", "Ann",    "--keep"};
    words.insert(words.end(), readings.begin(), readings.end());
    const auto kept = run(words);
    QVERIFY2(kept.exit == 0, kept.err.c_str());
    QVERIFY2(kept.out.find("Fail") != std::string::npos, kept.out.c_str());
    QVERIFY(kept.out.find("is judged by their curve from now on") != std::string::npos);

    const auto match = run({"match", "--vehicle", "ridgeway utility", "--year", "1968", "--cluster", "gauge package",
                            "--casting", "30418", "--json"});
    const Json answer = Json::parse(match.out);
    bool lot = false, part = false;
    for (const auto& sender : answer["branches"][0]["senders"]) {
      if (sender["part"] != "BR-2219") continue;
      const auto sentence = sender["sentence"].get<std::string>();
      if (sender["lot"] == "spring") {
        lot = sender["rank"] == "refused" && sentence.find("Judged by its own bench curve") != std::string::npos;
        bool warned = false;
        for (const auto& finding : sender["findings"]) warned = warned || finding["code"] == "bench-curve-off-family";
        lot = lot && warned;
      } else {
        part = sentence.find("Lot spring was measured and misreads") != std::string::npos;
      }
    }
    QVERIFY(lot);
    QVERIFY(part);
  }

  void equipmentIsWrittenDownOnceAndNamed() {
    QCOMPARE(run({"equipment"}).exit, 1);  // nothing yet
    QCOMPARE(run({"equipment", "--meter", "blue one", "--range", "200,0.1,0.8,5,1", "--range", "2000,1,0.8,3",
                  "--leads", "0.3,0.05"})
                 .exit,
             0);
    QCOMPARE(run({"equipment", "--thermometer", "lab", "--accuracy", "0.05", "--certificate"}).exit, 0);
    QCOMPARE(run({"equipment", "--bath", "pot", "--with", "lab"}).exit, 0);
    QCOMPARE(run({"equipment", "--bath", "kettle", "--kind", "boiling", "--altitude", "2000 m"}).exit, 0);
    const Json kept = Json::parse(run({"equipment", "--json"}).out);
    QCOMPARE(kept["meters"][0]["ranges"].size(), std::size_t{2});
    QCOMPARE(kept["baths"].size(), std::size_t{2});

    const auto pot =
        run({"bench", "--meter", "Blue One", "--bath", "pot", "--stirred", "--immersed", "--json", "60C=120.3"});
    QVERIFY2(pot.exit == 0, pot.err.c_str());
    const Json reading = Json::parse(pot.out)["readings"][0];
    QVERIFY(std::abs(reading["ohm"].get<double>() - 120) < 1e-9);  // leads off
    const auto kettle = run({"bench", "--meter", "blue one", "--bath", "kettle", "--json", "boil=60"});
    QVERIFY2(kettle.exit == 0, kettle.err.c_str());
    const Json boiled = Json::parse(kettle.out)["readings"][0];
    QVERIFY(std::abs(boiled["true_c"].get<double>() - 93.315) < 0.05);  // tests/data/iso2533-atmosphere.csv

    QCOMPARE(run({"equipment", "--thermometer", "lab", "--remove"}).exit, 2);  // a bath names it
    QCOMPARE(run({"equipment", "--bath", "pot", "--remove"}).exit, 0);
    QCOMPARE(run({"equipment", "--thermometer", "lab", "--remove"}).exit, 0);
    QCOMPARE(run({"equipment", "--meter", "no such", "--remove"}).exit, 2);
  }

  void coldOhmsAtTheCounter() {
    const auto ran = run({"bench", "--cold", "--json", "25C=2500"});
    QVERIFY2(ran.exit == 0 || ran.exit == 1, ran.err.c_str());
    const Json document = Json::parse(ran.out);
    QVERIFY(!document["excluded"].empty());
    QCOMPARE(run({"bench", "--cold", "25C=500", "40C=300"}).exit, 2);
  }

  void badInputIsOneSentence_data() {
    QTest::addColumn<QStringList>("words");
    QTest::newRow("no files") << QStringList{"import"};
    QTest::newRow("a file that is not there") << QStringList{"import", "/nowhere/x.csv"};
    QTest::newRow("curve without part") << QStringList{"import", "--curve", "run 1", "x.csv"};
    QTest::newRow("a word without ohms") << QStringList{"bench", "60C"};
    QTest::newRow("ohms below 0") << QStringList{"bench", "60C=-5"};
    QTest::newRow("altitude without unit") << QStringList{"bench", "--altitude", "1600", "boil=60"};
    QTest::newRow("barometer without unit") << QStringList{"bench", "--barometer", "1013", "boil=60"};
    QTest::newRow("boiling without pressure") << QStringList{"bench", "boil=60"};
    QTest::newRow("unknown meter") << QStringList{"bench", "--meter", "blue", "60C=120"};
    QTest::newRow("unknown family") << QStringList{"bench", "--family", "Z", "60C=120"};
    QTest::newRow("tolerance of nothing") << QStringList{"bench", "--tolerance", "0", "60C=120"};
    QTest::newRow("reduced maybe") << QStringList{"bench", "--reduced", "maybe", "60C=120"};
    QTest::newRow("a meter without ranges") << QStringList{"equipment", "--meter", "x"};
    QTest::newRow("a range of three numbers") << QStringList{"equipment", "--meter", "x", "--range", "200,0.1,0.8"};
    QTest::newRow("a count above full scale") << QStringList{"equipment", "--meter", "x", "--range", "2,20,0.8,1"};
    QTest::newRow("a thermometer without accuracy") << QStringList{"equipment", "--thermometer", "x"};
    QTest::newRow("a bath of no kind") << QStringList{"equipment", "--bath", "x"};
    QTest::newRow("a bath with a thermometer nobody has")
        << QStringList{"equipment", "--bath", "x", "--with", "nobody's"};
    QTest::newRow("leads of nothing") << QStringList{"bench", "--leads", "x", "60C=120"};
  }
  void badInputIsOneSentence() {
    QFETCH(QStringList, words);
    std::vector<std::string> arguments;
    for (const QString& word : words) arguments.push_back(word.toStdString());
    const auto ran = run(arguments);
    QCOMPARE(ran.exit, 2);
    QVERIFY(ran.out.empty());
    QCOMPARE(std::count(ran.err.begin(), ran.err.end(), '\n'), std::ptrdiff_t{1});
  }
};

QTEST_APPLESS_MAIN(TestBenchCommands)
#include "tst_bench_commands.moc"
