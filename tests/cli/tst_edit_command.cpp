#include "own_copy.h"

#include <fstream>

using nlohmann::json;
using ohmkin::test::Ran;

/// `ohmkin edit` and `ohmkin log`, each test at its own copy of the demo catalogue.
class TestEditCommand : public QObject {
  Q_OBJECT
  ohmkin::test::OwnCopy own_;
  std::string gauge_;

  Ran ran(const std::vector<std::string>& words) const { return own_.ran(words); }
  json read(const std::vector<std::string>& thing) const {
    std::vector<std::string> words{"edit"};
    words.insert(words.end(), thing.begin(), thing.end());
    return own_.told(words);
  }
  std::string written(const json& document) const {
    const auto file = own_.beside("thing.json");
    std::ofstream(file) << document.dump();
    return file.string();
  }

 private slots:
  void init() {
    own_.renew();
    gauge_ = own_.told({"search", "--kind", "gauge", "--limit", "1", "gauge"})["found"][0]["id"].get<std::string>();
  }

  void without_a_change_it_shows_the_thing_and_what_its_fields_take() {
    const auto shown = ran({"edit", "sender", "BR-2201"});
    QCOMPARE(shown.exit, 0);
    for (const char* text : {"sender BR-2201, of pack ", "torque_low=", "N·m", "names a thread", "[Part number]"})
      QVERIFY2(shown.out.find(text) != std::string::npos, shown.out.c_str());
    const auto document = read({"sender", "BR-2201"});
    QCOMPARE(document["schema"].get<std::string>(), std::string("ohmkin.thing"));
    QCOMPARE(document["key"], json::array({"BR-2201"}));
    QCOMPARE(document["fields"]["id"].get<std::string>(), std::string("BR-2201"));
    const auto kinds = ran({"edit"});
    QVERIFY(kinds.out.find("vehicle_line") != std::string::npos);
  }

  void a_field_is_changed_logged_and_taken_back() {
    const std::string was = read({"sender", "BR-2201"})["fields"]["name"];
    const auto done = ran({"edit", "sender", "BR-2201", "name=ours", "--who", "Jo", "--json"});
    QVERIFY2(done.exit == 0, done.err.c_str());
    const auto change = json::parse(done.out)["change"].get<int>();
    const auto now = read({"sender", "BR-2201"});
    QCOMPARE(now["fields"]["name"].get<std::string>(), std::string("ours"));
    QCOMPARE(now["pack"].get<std::string>(), std::string("shop"));
    const auto log = json::parse(ran({"log", "--json", "--of", "BR-2201", "--by", "jo"}).out);
    QCOMPARE(log["changes"].size(), std::size_t{1});
    QCOMPARE(log["changes"][0]["change"].get<int>(), change);
    QCOMPARE(log["changes"][0]["fields"][0]["before"].get<std::string>(), was);
    QCOMPARE(log["changes"][0]["fields"][0]["after"].get<std::string>(), std::string("ours"));
    QCOMPARE(ran({"log", "--revert", std::to_string(change), "--who", "Kim"}).exit, 0);
    QCOMPARE(read({"sender", "BR-2201"})["fields"]["name"].get<std::string>(), was);
    QCOMPARE(ran({"log", "--revert", std::to_string(change)}).exit, 2);
    QCOMPARE(ran({"log", "--of", "BR-2201", "--until", "2001-01-01"}).exit, 1);
  }

  void rows_of_parts_are_set_added_and_taken_out() {
    const auto before = read({"gauge", gauge_})["parts"]["movement_point"];
    const std::string next = "movement_point[" + std::to_string(before.size() + 1) + "]";
    const auto added = ran({"edit", "gauge", gauge_, next + ".ohms=33", next + ".angle=12"});
    QVERIFY2(added.exit == 0, added.err.c_str());
    auto now = read({"gauge", gauge_})["parts"]["movement_point"];
    QCOMPARE(now.size(), before.size() + 1);
    QCOMPARE(now.back()["ohms"].get<std::string>(), std::string("33 Ω"));
    QCOMPARE(ran({"edit", "gauge", gauge_, next + ".angle=13"}).exit, 0);
    QCOMPARE(read({"gauge", gauge_})["parts"]["movement_point"].back()["angle"].get<std::string>(), std::string("13°"));
    QCOMPARE(ran({"edit", "gauge", gauge_, next + "="}).exit, 0);
    QCOMPARE(read({"gauge", gauge_})["parts"]["movement_point"], before);
  }

  void a_document_is_read_changed_and_saved_and_nobody_is_saved_over() {
    auto document = read({"gauge", gauge_});
    document["fields"]["name"] = "from a file";
    const std::string file = written(document);
    QCOMPARE(ran({"edit", "--from", file, "--dry-run"}).exit, 0);
    QVERIFY(read({"gauge", gauge_})["fields"]["name"] != "from a file");
    const auto done = ran({"edit", "--from", file});
    QVERIFY2(done.exit == 0, done.err.c_str());
    auto now = read({"gauge", gauge_});
    QCOMPARE(now["fields"], document["fields"]);
    QCOMPARE(now["parts"], document["parts"]);
    document["fields"]["name"] = "late";
    const auto late = ran({"edit", "--from", written(document)});
    QCOMPARE(late.exit, 2);
    QVERIFY2(late.err.find("now it is from a file") != std::string::npos, late.err.c_str());
  }

  void a_new_thing_with_its_source_is_added_renamed_and_deleted() {
    const auto made = ran({"edit", "--new", "thread", "X-1", "standard=ours", "form=M", "flank_angle=60", "pitch=1.25",
                           "diameter=9", "tapered=no", "--source-kind", "bench", "--citation", "measured here"});
    QVERIFY2(made.exit == 0, made.err.c_str());
    const std::string source = read({"thread", "X-1"})["fields"]["source"];
    QCOMPARE(read({"source", source})["fields"]["citation"].get<std::string>(), std::string("measured here"));
    QCOMPARE(ran({"edit", "thread", "X-1", "id=X-2"}).exit, 0);
    QCOMPARE(ran({"edit", "thread", "X-1"}).exit, 2);
    QCOMPARE(ran({"edit", "thread", "X-2", "--delete"}).exit, 0);
    QCOMPARE(ran({"edit", "thread", "X-2"}).exit, 2);
  }

  void deleting_what_is_used_says_by_what() {
    const std::string family = read({"gauge", gauge_})["fields"]["family"];
    for (const bool dry : {true, false}) {
      std::vector<std::string> words{"edit", "family", family, "--delete"};
      if (dry) words.emplace_back("--dry-run");
      const auto refused = ran(words);
      QCOMPARE(refused.exit, 2);
      QVERIFY2(refused.err.find("gauge") != std::string::npos, refused.err.c_str());
    }
  }

  void refusals_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QString>("said");
    QTest::newRow("a kind there is not") << QStringList{"gague", "x"} << "perhaps gauge";
    QTest::newRow("a field there is not") << QStringList{"sender", "BR-2201", "torqe_low=1"} << "perhaps torque_low";
    QTest::newRow("a thing there is not") << QStringList{"sender", "BR-22"} << "perhaps BR-22";
    QTest::newRow("half a key") << QStringList{"original_engine", "x"} << "engine";
    QTest::newRow("no equals sign") << QStringList{"sender", "BR-2201", "name"} << "FIELD=VALUE";
    QTest::newRow("a part there is not") << QStringList{"sender", "BR-2201", "mark[1].angle=1"} << "has none";
    QTest::newRow("a choice there is not") << QStringList{"sender", "BR-2201", "grounding=perhaps"} << "grounding";
    QTest::newRow("another unit") << QStringList{"sender", "BR-2201", "torque_low=12 V"} << "torque_low";
    QTest::newRow("a reference to nothing") << QStringList{"sender", "BR-2201", "thread=none"} << "thread";
    QTest::newRow("no source") << QStringList{"sender", "BR-2201", "source="} << "source";
    QTest::newRow("row 0") << QStringList{"gauge", "x", "dial_mark[0].angle=1"} << "";
    QTest::newRow("both") << QStringList{"sender", "BR-2201", "--new", "--delete"} << "--delete";
  }
  void refusals() {
    QFETCH(QStringList, words);
    QFETCH(QString, said);
    const auto before = read({"sender", "BR-2201"});
    const auto log = ran({"log", "--json"}).out;
    std::vector<std::string> given{"edit"};
    for (const QString& word : words) given.push_back(word.toStdString());
    const auto refused = ran(given);
    QCOMPARE(refused.exit, 2);
    QVERIFY2(refused.err.find(said.toStdString()) != std::string::npos, refused.err.c_str());
    QVERIFY(refused.out.empty());
    QCOMPARE(read({"sender", "BR-2201"}), before);
    QCOMPARE(ran({"log", "--json"}).out, log);
  }

  void hostile_documents_change_nothing() {
    const auto good = read({"sender", "BR-2201"});
    std::vector<json> all{json(), json::array(), json("x"), json::object()};
    for (const char* key : {"schema", "version", "kind", "fields"}) {
      for (const json& value : {json(), json(7), json::array({1}), json("turnip")}) {
        auto bad = good;
        bad[key] = value;
        all.push_back(bad);
      }
    }
    const auto with = [&](const char* key, const json& value) {
      auto bad = good;
      bad[key] = value;
      all.push_back(bad);
    };
    with("as_read", "{}");
    with("as_read", "");
    with("as_read", R"({"table":"sender","pack":"shop","row":{},"parts":{}})");
    with("as_read", R"({"table":"sender","pack":"shop","row":{"id":7},"parts":{}})");
    with("as_read", read({"gauge", gauge_})["as_read"]);
    with("as_read", read({"sender", "BR-2207"})["as_read"]);
    with("parts", json{{"sample", json::array()}});
    with("parts", json::array());
    auto bad = good;
    bad["fields"]["name"] = 7;
    all.push_back(bad);
    bad["fields"]["name"] = "x";
    bad["fields"]["pack"] = "shop";
    all.push_back(bad);
    for (const json& document : all) {
      const auto refused = ran({"edit", "--from", written(document)});
      QVERIFY2(refused.exit == 2, (document.dump() + refused.out).c_str());
    }
    const auto deep = own_.beside("deep.json");
    std::ofstream(deep) << std::string(200'000, '[');
    QCOMPARE(ran({"edit", "--from", deep.string()}).exit, 2);
    QCOMPARE(read({"sender", "BR-2201"}), good);
    QCOMPARE(read({"sender", "BR-2207"})["fields"]["id"].get<std::string>(), std::string("BR-2207"));
  }
};

QTEST_APPLESS_MAIN(TestEditCommand)
#include "tst_edit_command.moc"
