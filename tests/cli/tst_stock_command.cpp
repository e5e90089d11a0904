#include "own_copy.h"

using nlohmann::json;
using ohmkin::test::Ran;

/// `ohmkin stock`, each test at its own copy of the demo catalogue.
class TestStockCommand : public QObject {
  Q_OBJECT
  ohmkin::test::OwnCopy own_;

  int there(const std::string& part) const { return own_.told({"stock", "show", part})["parts"][0]["quantity"]; }
  std::size_t movements() const { return own_.told({"stock", "history"})["movements"].size(); }

 private slots:
  void init() { own_.renew(); }

  void what_comes_and_goes_is_counted_and_written_down() {
    const int before = there("BR-2215");
    const json received = own_.told({"stock", "receive", "br2215", "3", "--bin", "Z9", "--who", "Jo", "--note", "box"});
    QCOMPARE(received["schema"].get<std::string>(), std::string("ohmkin.stock-movement"));
    QCOMPARE(received["movement"]["part"].get<std::string>(), std::string("BR-2215"));
    QCOMPARE(received["movement"]["change"].get<int>(), 3);
    QCOMPARE(received["after"]["quantity"].get<int>(), before + 3);
    const json sold = own_.told({"stock", "sell", "BR-2215", "2", "--bin", "Z9"});
    QCOMPARE(sold["movement"]["left_in_bin"].get<int>(), 1);
    QCOMPARE(there("BR-2215"), before + 1);
    const json counted = own_.told({"stock", "count", "BR-2215", "5", "--bin", "Z9"});
    QCOMPARE(counted["movement"]["change"].get<int>(), 4);
    QCOMPARE(there("BR-2215"), before + 5);
    const json all = own_.told({"stock", "history", "BR-2215"})["movements"];
    QCOMPARE(all[0]["id"], counted["movement"]["id"]);  // newest first
    QCOMPARE(all[2]["who"].get<std::string>(), std::string("Jo"));
    QCOMPARE(all[2]["note"].get<std::string>(), std::string("box"));
  }

  void moved_pieces_stay_as_many() {
    (void)own_.told({"stock", "receive", "BR-2215", "4", "--bin", "Z8"});
    const int before = there("BR-2215");
    const json moved = own_.told({"stock", "move", "BR-2215", "3", "--bin", "Z8", "--to", "Z9"});
    QCOMPARE(moved["after"]["quantity"].get<int>(), before);
    int inNew = -1;
    for (const json& bin : moved["after"]["bins"])
      if (bin["bin"] == "Z9") inNew = bin["quantity"];
    QCOMPARE(inNew, 3);
  }

  void an_undone_movement_is_taken_back_once() {
    const int before = there("BR-2215");
    const json received = own_.told({"stock", "receive", "BR-2215", "2", "--bin", "Z9"});
    const std::string number = std::to_string(received["movement"]["id"].get<int>());
    const json undone = own_.told({"stock", "undo", number});
    QCOMPARE(undone["movement"]["undoes"], received["movement"]["id"]);
    QCOMPARE(there("BR-2215"), before);
    QCOMPARE(own_.ran({"stock", "undo", number}).exit, 2);
    QCOMPARE(there("BR-2215"), before);
  }

  void what_runs_low_is_told_and_nothing_is_no_answer() {
    (void)own_.told({"stock", "receive", "BR-2215", "1", "--bin", "Z9"});
    const int many = there("BR-2215") + 10;
    (void)own_.told({"stock", "minimum", "BR-2215", std::to_string(many), "--bin", "Z9"});
    const json low = own_.told({"stock", "low"})["parts"];
    const bool named = std::any_of(low.begin(), low.end(), [](const json& part) { return part["part"] == "BR-2215"; });
    QVERIFY(named);
    for (const json& part : low) {
      QVERIFY(part["low"].get<bool>());
      for (const json& bin : part["bins"])
        (void)own_.told(
            {"stock", "minimum", part["part"].get<std::string>(), "0", "--bin", bin["bin"].get<std::string>()});
    }
    const Ran nothing = own_.ran({"stock", "low"});
    QCOMPARE(nothing.exit, 1);
    QCOMPARE(nothing.out, std::string("Nothing.\n"));
  }

  void a_piece_sold_for_a_job_is_found_with_the_job() {
    const json job = own_.told({"job", "new", "blue", "pickup"})["job"];
    const std::string id = std::to_string(job["id"].get<int>());
    (void)own_.told({"stock", "receive", "BR-2215", "1", "--bin", "Z9"});
    const json sold = own_.told({"stock", "sell", "BR-2215", "--bin", "Z9", "--job", id});
    QCOMPARE(sold["movement"]["job"], job["id"]);
    QCOMPARE(own_.ran({"stock", "sell", "BR-2215", "--job", "99999"}).exit, 2);
  }

  void a_label_is_written() {
    const auto file = own_.beside("label.svg");
    QCOMPARE(own_.ran({"stock", "label", "BR-2215", "BR-2201", "--svg", file.string()}).exit, 0);
    QVERIFY(std::filesystem::file_size(file) > 500);
    QCOMPARE(own_.ran({"stock", "label", "BR-2215"}).exit, 2);  // to nowhere
  }

  void refusals_data() {
    QTest::addColumn<QStringList>("words");
    QTest::addColumn<QString>("said");
    QTest::newRow("no such word") << QStringList{"steal", "BR-2215"} << "show, sell";
    QTest::newRow("no such part") << QStringList{"sell", "BR-22155"} << "BR-2215";
    QTest::newRow("more than there is") << QStringList{"sell", "BR-2215", "99999"} << "BR-2215";
    QTest::newRow("no number") << QStringList{"receive", "BR-2215", "many"} << "whole number";
    QTest::newRow("half a piece") << QStringList{"receive", "BR-2215", "1.5"} << "whole number";
    QTest::newRow("less than none") << QStringList{"count", "BR-2215", "-1", "--bin", "4C"} << "-1";
    QTest::newRow("number beyond all") << QStringList{"receive", "BR-2215", "1e12"} << "whole number";
    QTest::newRow("received without a number") << QStringList{"receive", "BR-2215"} << "PART and a number";
    QTest::newRow("moved to nowhere") << QStringList{"move", "BR-2215", "1"} << "--to";
    QTest::newRow("undo of nothing") << QStringList{"undo"} << "history";
    QTest::newRow("undo of what never was") << QStringList{"undo", "123456"} << "123456";
  }
  void refusals() {
    QFETCH(QStringList, words);
    QFETCH(QString, said);
    const std::size_t before = movements();
    std::vector<std::string> given{"stock"};
    for (const QString& word : words) given.push_back(word.toStdString());
    const Ran refused = own_.ran(given);
    QCOMPARE(refused.exit, 2);
    QVERIFY2(refused.err.find(said.toStdString()) != std::string::npos, refused.err.c_str());
    QVERIFY(refused.out.empty());
    QCOMPARE(movements(), before);
  }
};

QTEST_APPLESS_MAIN(TestStockCommand)
#include "tst_stock_command.moc"
