#include "own_copy.h"

#include <fstream>

using nlohmann::json;
using ohmkin::test::Ran;

/// `ohmkin job`, each test at its own copy of the demo catalogue.
class TestJobCommand : public QObject {
  Q_OBJECT
  ohmkin::test::OwnCopy own_;

  std::string opened(const std::string& reference) const {
    return std::to_string(own_.told({"job", "new", reference, "--who", "Jo"})["job"]["id"].get<int>());
  }
  json job(const std::string& id) const { return own_.told({"job", "show", id})["job"]; }
  std::size_t documents(const std::string& id) const { return own_.told({"job", "show", id})["documents"].size(); }
  std::string written(const char* name, const std::string& text) const {
    const auto file = own_.beside(name);
    std::ofstream(file) << text;
    return file.string();
  }

 private slots:
  void init() { own_.renew(); }

  void a_job_is_opened_changed_closed_and_taken_back() {
    const std::string id = opened("blue pickup");
    QCOMPARE(job(id)["reference"].get<std::string>(), std::string("blue pickup"));
    QCOMPARE(job(id)["opened_by"].get<std::string>(), std::string("Jo"));
    QCOMPARE(own_.ran({"job", "change", id, "--vehicle", "Ridgeway utility"}).exit, 0);
    QCOMPARE(own_.ran({"job", "note", id, "needle", "pegs", "when", "warm"}).exit, 0);
    QCOMPARE(job(id)["vehicle"].get<std::string>(), std::string("Ridgeway utility"));
    QCOMPARE(job(id)["note"].get<std::string>(), std::string("needle pegs when warm"));
    QCOMPARE(own_.ran({"job", "close", id, "--part", "BR-2215"}).exit, 0);
    QVERIFY(job(id)["state"] != "open");
    QCOMPARE(own_.ran({"job", "undo", id}).exit, 0);
    QCOMPARE(job(id)["state"].get<std::string>(), std::string("open"));
    QCOMPARE(own_.ran({"job", "redo", id}).exit, 0);
    QVERIFY(job(id)["state"] != "open");
    QCOMPARE(own_.ran({"job", "reopen", id}).exit, 0);
    QCOMPARE(job(id)["state"].get<std::string>(), std::string("open"));
  }

  void jobs_are_found_by_their_words() {
    const std::string blue = opened("blue pickup");
    const std::string green = opened("green wagon");
    (void)own_.ran({"job", "close", green});
    const json found = own_.told({"job", "list", "pickup", "blue"})["jobs"];
    QCOMPARE(found.size(), std::size_t{1});
    QCOMPARE(std::to_string(found[0]["id"].get<int>()), blue);
    QCOMPARE(own_.told({"job", "list", "--open"})["jobs"].size(), std::size_t{1});
    QCOMPARE(own_.ran({"job", "list", "zeppelin"}).exit, 1);
    QVERIFY(own_.ran({"job", "list"}).out.find("blue pickup") != std::string::npos);
  }

  void an_answer_is_kept_as_it_was_and_asked_again() {
    const std::string id = opened("answers");
    QCOMPARE(
        own_.ran({"match", "1968", "ridgeway", "utility", "gauge", "package", "casting", "30418", "--job", id}).exit,
        0);
    const auto kept = [&] { return own_.told({"job", "show", id, "--whole"})["documents"][0]; };
    const json before = kept();
    QCOMPARE(before["kind"].get<std::string>(), std::string("match"));
    QVERIFY(before["as_written"].get<bool>());
    const Ran same = own_.ran({"job", "answer-again", id});
    QVERIFY2(same.exit == 0, same.err.c_str());
    std::string recommended;  // the first of the likeliest branch
    for (const json& branch : before["document"]["branches"])
      for (const json& sender : branch["senders"])
        if (recommended.empty() && sender["recommended"].get<bool>()) recommended = sender["part"];
    QVERIFY(!recommended.empty());
    QCOMPARE(own_.ran({"edit", "sender", recommended, "thread=M10x1"}).exit, 0);  // it fits no head of those
    const json other = own_.told({"job", "answer-again", id});
    QVERIFY(other["differs"].get<bool>());
    QVERIFY(!other["differences"].empty() && !other["because"].empty());
    QCOMPARE(own_.ran({"job", "answer-again", id}).exit, 1);
    QCOMPARE(kept(), before);
  }

  void a_document_of_another_question_is_kept_from_a_file() {
    const std::string id = opened("a pair");
    const std::string pair = own_.ran({"pair", "--gauge", "A", "--sender", "B", "--json"}).out;
    const json kept = own_.told({"job", "keep", id, written("pair.json", pair), "--title", "early and late"});
    QCOMPARE(kept["document"]["ordinal"].get<int>(), 1);
    const json whole = own_.told({"job", "show", id, "--whole"})["documents"][0];
    QCOMPARE(whole["title"].get<std::string>(), std::string("early and late"));
    QCOMPARE(whole["document"], json::parse(pair));
    QCOMPARE(own_.ran({"job", "answer-again", id, "--document", "1"}).exit, 2);
  }

  void a_file_is_attached_and_looked_at_again() {
    const std::string id = opened("attached");
    const std::string file = written("photo.png", "not really a picture");
    (void)own_.told({"job", "attach", id, file, "--title", "the head"});
    QCOMPARE(own_.told({"job", "show", id})["documents"][0]["file"].get<std::string>(), std::string("as it was"));
    (void)written("photo.png", "another picture");
    QVERIFY(own_.told({"job", "show", id})["documents"][0]["file"] != "as it was");
    std::filesystem::remove(file);
    QVERIFY(own_.told({"job", "show", id})["documents"][0]["file"] != "as it was");
    QCOMPARE(own_.ran({"job", "attach", id, file}).exit, 2);
  }

  void a_job_is_duplicated_put_away_brought_back_and_erased() {
    const std::string id = opened("twice");
    const json copy = own_.told({"job", "duplicate", id})["job"];
    QVERIFY(copy["id"].get<int>() != std::stoi(id));
    QCOMPARE(own_.ran({"job", "delete", id}).exit, 0);
    QCOMPARE(own_.told({"job", "list"})["jobs"].size(), std::size_t{1});
    QCOMPARE(own_.told({"job", "list", "--put-away"})["jobs"].size(), std::size_t{1});
    QCOMPARE(own_.ran({"job", "restore", id}).exit, 0);
    QCOMPARE(own_.told({"job", "list"})["jobs"].size(), std::size_t{2});
    QCOMPARE(own_.ran({"job", "erase", id}).exit, 2);  // not said for good
    QCOMPARE(own_.told({"job", "list"})["jobs"].size(), std::size_t{2});
    QCOMPARE(own_.told({"job", "erase", id, "--for-good"})["job"].get<int>(), std::stoi(id));
    QCOMPARE(own_.ran({"job", "show", id}).exit, 2);
  }

  void a_sheet_is_printed() {
    const std::string id = opened("printed");
    const auto file = own_.beside("sheet.svg");
    QCOMPARE(own_.ran({"job", "print", id, "--svg", file.string()}).exit, 0);
    QVERIFY(std::filesystem::file_size(file) > 500);
  }

  void refusals_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QString>("said");
    QTest::newRow("no such word") << QStringList{"open", "1"} << "new, list";
    QTest::newRow("no reference") << QStringList{"new"} << "reference";
    QTest::newRow("no number") << QStringList{"show"} << "number of a job";
    QTest::newRow("no number but a word") << QStringList{"show", "blue"} << "blue";
    QTest::newRow("none of that number") << QStringList{"note", "4711", "x"} << "4711";
    QTest::newRow("a cause there is not") << QStringList{"close", "1", "--cause", "sender-opne"} << "sender-open";
    QTest::newRow("a symptom there is not") << QStringList{"close", "1", "--symptom", "lo"} << "low";
    QTest::newRow("nothing to keep") << QStringList{"keep", "1"} << "FILE";
    QTest::newRow("a file there is not") << QStringList{"keep", "1", "/nowhere/x.json"} << "/nowhere/x.json";
    QTest::newRow("a run there is not") << QStringList{"keep", "1", "--run", "77"} << "77";
    QTest::newRow("no match to ask again") << QStringList{"answer-again", "1"} << "match";
    QTest::newRow("nothing to take back") << QStringList{"redo", "1"} << "1";
  }
  void refusals() {
    QFETCH(QStringList, words);
    QFETCH(QString, said);
    const std::string id = opened("as it is");
    const json before = own_.told({"job", "show", id});
    std::vector<std::string> given{"job"};
    for (const QString& word : words) given.push_back(word == "1" ? id : word.toStdString());
    const Ran refused = own_.ran(given);
    QCOMPARE(refused.exit, 2);
    QVERIFY2(refused.err.find(said.toStdString()) != std::string::npos, refused.err.c_str());
    QVERIFY(refused.out.empty());
    QCOMPARE(own_.told({"job", "show", id}), before);
  }

  void hostile_documents_are_not_kept() {
    const std::string id = opened("hostile");
    for (const std::string& text :
         {std::string(), std::string("[]"), std::string("{}"), std::string(R"({"schema": 7})"),
          std::string(R"({"schema": "someone.else"})"), std::string(200'000, '['),
          std::string("{\"schema\": \"ohmkin.match\", \"x\": \"\xff\"}")}) {
      const Ran refused = own_.ran({"job", "keep", id, written("bad.json", text)});
      QVERIFY2(refused.exit == 2, text.substr(0, 60).c_str());
    }
    QCOMPARE(documents(id), std::size_t{0});
  }
};

QTEST_APPLESS_MAIN(TestJobCommand)
#include "tst_job_command.moc"
