#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <algorithm>
#include <fstream>

using namespace ohmkin;

/// Each bad input: exit 2, nothing on the result stream, one sentence naming the argument, the file as it was.
class TestBadInput : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

 private slots:
  void bad_values_are_named_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("named");
    QTest::newRow("year in words") << QStringList{"--year", "sixty-eight"} << "--year";
    QTest::newRow("year with a fraction") << QStringList{"--year", "1968.5"} << "--year";
    QTest::newRow("year outside the line") << QStringList{"--year", "1999"} << "--year";
    QTest::newRow("a day that does not exist") << QStringList{"--built", "1968-02-30"} << "--built";
    QTest::newRow("a date the wrong way round") << QStringList{"--engine-built", "21.03.1968"} << "--engine-built";
    QTest::newRow("zero ohms") << QStringList{"--reading", "20C=0"} << "--reading";
    QTest::newRow("negative ohms") << QStringList{"--reading", "20C=-5"} << "--reading";
    QTest::newRow("ohms not a number") << QStringList{"--reading", "20C=nan"} << "--reading";
    QTest::newRow("infinite ohms") << QStringList{"--reading", "20C=inf"} << "--reading";
    QTest::newRow("below absolute zero") << QStringList{"--reading", "-300C=51"} << "--reading";
    QTest::newRow("band reversed") << QStringList{"--band", "120:80"} << "--band";
    QTest::newRow("band of one number") << QStringList{"--band", "120"} << "--band";
    QTest::newRow("band off every curve") << QStringList{"--band", "-150:-140"} << "";
    QTest::newRow("unknown unit") << QStringList{"--units", "R"} << "--units";
    QTest::newRow("unknown terminal") << QStringList{"--terminal", "bayonet"} << "--terminal";
  }
  void bad_values_are_named() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, named);
    const std::string before = test::bytesOf(demo_.file());
    std::vector<std::string> all{"match",     "--catalog",     demo_.file().string(), "--vehicle", "ridgeway utility",
                                 "--cluster", "gauge package", "--casting",           "30418"};
    for (const QString& argument : arguments) all.push_back(argument.toStdString());
    const auto ran = test::run(all);
    if (named.isEmpty()) {  // not bad in itself: an honest no
      QCOMPARE(ran.exit, 1);
    } else {
      QCOMPARE(ran.exit, 2);
      QVERIFY2(ran.out.empty(), ran.out.c_str());
      QVERIFY2(ran.err.starts_with("ohmkin: " + named.toStdString()), ran.err.c_str());
      QCOMPARE(std::count(ran.err.begin(), ran.err.end(), '\n'), 1);
    }
    QCOMPARE(test::bytesOf(demo_.file()), before);
  }

  void a_catalogue_that_cannot_be_used_is_named() {
    const auto notOurs = demo_.beside("letter.ohmkin");
    std::ofstream(notOurs) << "Dear parts counter, this is not a database, however long it may go on about it. "
                           << std::string(2000, 'x');
    const auto empty = demo_.beside("empty.ohmkin");
    std::ofstream(empty).flush();
    for (const auto& [path, word] : {std::pair{demo_.beside("missing.ohmkin"), "missing"}, std::pair{notOurs, "letter"},
                                     std::pair{empty, "empty"}, std::pair{demo_.file().parent_path(), ""}}) {
      const auto ran = test::run({"match", "--catalog", path.string(), "--year", "1968"});
      QCOMPARE(ran.exit, 2);
      QVERIFY(ran.out.empty());
      QVERIFY2(ran.err.find(path.filename().string()) != std::string::npos, ran.err.c_str());
      QVERIFY2(ran.err.find(word) != std::string::npos, ran.err.c_str());
    }
    QVERIFY(!std::filesystem::exists(demo_.beside("missing.ohmkin")));
  }

  void no_catalogue_named_says_how_to_get_one() {
    qunsetenv("OHMKIN_CATALOG");
    const auto ran = test::run({"match", "--year", "1968"});
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find("--catalog") != std::string::npos && ran.err.find("ohmkin demo") != std::string::npos,
             ran.err.c_str());
  }

  void the_environment_may_name_the_catalogue() {
    qputenv("OHMKIN_CATALOG", QByteArray::fromStdString(demo_.file().string()));
    QCOMPARE(test::run({"match", "1968 ridgeway utility gauge package casting 30418"}).exit, 0);
    qunsetenv("OHMKIN_CATALOG");
  }

  void demo_never_replaces_a_file() {
    const std::string before = test::bytesOf(demo_.file());
    const auto ran = test::run({"demo", demo_.file().string()});
    QCOMPARE(ran.exit, 2);
    QCOMPARE(test::bytesOf(demo_.file()), before);
  }
};

QTEST_APPLESS_MAIN(TestBadInput)
#include "tst_bad_input.moc"
