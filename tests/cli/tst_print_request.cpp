#include <cli/print_request.h>
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>

#include "command_runner.h"
#include "demo_catalogue.h"

using namespace ohmkin;

namespace {

QByteArray contents(const QString& file) {
  QFile in(file);
  return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

}  // namespace

class TestPrintRequest : public QObject {
  Q_OBJECT
 private slots:
  void further_pages_are_numbered_before_the_ending() {
    QCOMPARE(cli::pageFile("a/dial.svg", 1).string(), std::string("a/dial.svg"));
    QCOMPARE(cli::pageFile("a/dial.svg", 2).string(), std::string("a/dial-2.svg"));
    QCOMPARE(cli::pageFile("dial", 10).string(), std::string("dial-10"));
  }

  void every_command_writes_its_sheet_data() {
    QTest::addColumn<QStringList>("command");
    QTest::addColumn<QString>("says");
    QTest::newRow("dial") << QStringList{"dial", "--gauge", "A", "--sender", "B"} << "OFFSET CARD";
    QTest::newRow("trim") << QStringList{"trim", "--gauge", "A", "--sender", "B"} << "WHAT FAILS";
    QTest::newRow("plan") << QStringList{"plan", "--dash", "1968 ridgeway utility", "--donor", "casting 30418"}
                          << "SWAP PLAN";
    QTest::newRow("date") << QStringList{"date", "--head", "30418:H 22 1", "--year", "1968"} << "TIME LINE";
    QTest::newRow("fault") << QStringList{"fault", "--gauge", "GC-1", "--wiring"} << "regulator";
    QTest::newRow("match") << QStringList{"match", "1968 ridgeway utility casting 30418"} << "OFFSET CARD";
  }
  void every_command_writes_its_sheet() {
    QFETCH(QStringList, command);
    QFETCH(QString, says);
    const QString file = folder_.filePath(command.front() + ".svg");
    const auto ran = run(command, {"--svg", file, "--paper", "letter"});
    QVERIFY2(ran.exit == 0, ran.err.c_str());
    QVERIFY2(QString::fromStdString(ran.err).contains(file), ran.err.c_str());
    QByteArray all = contents(file);
    for (int page = 2; page < 5; ++page)
      all += contents(folder_.filePath(command.front() + QStringLiteral("-%1.svg").arg(page)));
    QVERIFY(all.contains("215.9mm\""));
    QVERIFY(QString::fromUtf8(all).contains(says));
  }

  void the_dial_comes_after_its_card() {
    const QString file = folder_.filePath("two.svg");
    QCOMPARE(run({"dial", "--gauge", "A", "--sender", "B"}, {"--svg", file}).exit, 0);
    QVERIFY(contents(folder_.filePath("two-2.svg")).contains("RE-MARKED DIAL"));
  }

  void where_the_dial_cannot_be_remarked_the_card_comes_alone_and_why() {
    const QString file = folder_.filePath("alone.svg");
    const auto ran = run({"dial", "--gauge", "B", "--sender", "C"}, {"--svg", file});
    QCOMPARE(ran.exit, 0);
    QVERIFY(QString::fromStdString(ran.err).contains("cannot be re-marked"));
    QVERIFY(!QFile::exists(folder_.filePath("alone-2.svg")));
  }

  void bad_requests_are_one_sentence_data() {
    QTest::addColumn<QStringList>("options");
    QTest::addColumn<QString>("names");
    QTest::newRow("paper") << QStringList{"--svg", "x.svg", "--paper", "A3"} << "--paper";
    QTest::newRow("place") << QStringList{"--svg", "/not/there/x.svg"} << "--svg";
    QTest::newRow("radius") << QStringList{"--svg", folder_.filePath("r.svg"), "--radius", "190"} << "radius";
  }
  void bad_requests_are_one_sentence() {
    QFETCH(QStringList, options);
    QFETCH(QString, names);
    const auto ran = run({"dial", "--gauge", "A", "--sender", "B"}, options);
    QCOMPARE(ran.exit, 2);
    QCOMPARE(std::count(ran.err.begin(), ran.err.end(), '\n'), 1);
    QVERIFY2(QString::fromStdString(ran.err).contains(names), ran.err.c_str());
  }

  void without_the_window_program_a_pdf_is_refused_in_one_sentence() {
    const auto [exit, err] = alone("", "none.pdf");
    QCOMPARE(exit, 2);
    QCOMPARE(err.count('\n'), 1);
    QVERIFY(err.contains("ohmkin-window"));
    QVERIFY(!QFile::exists(folder_.filePath("none.pdf")));
  }

  void the_window_program_beside_it_is_asked_without_a_window_and_nothing_is_left_behind() {
    const auto [exit, err] = alone(
        "#!/bin/sh\n"
        "printf '%s\\n' \"$QT_QPA_PLATFORM\" \"$@\" > \"$(dirname \"$0\")/asked\"\n"
        "for a in \"$@\"; do case $a in *.svg) cat \"$a\";; esac; done > \"$(dirname \"$0\")/seen\"\n",
        "made.pdf");
    QVERIFY2(exit == 0, err.constData());
    const QList<QByteArray> asked = contents(folder_.filePath("bin/asked")).trimmed().split('\n');
    QCOMPARE(asked.value(0), QByteArray("offscreen"));
    QCOMPARE(asked.value(1), QByteArray("--print"));
    QVERIFY(asked.value(2).startsWith("--pdf=") && asked.value(2).endsWith("made.pdf"));
    QCOMPARE(asked.size(), 5);  // and two pages, card and dial
    QCOMPARE(contents(folder_.filePath("bin/seen")).count("<svg"), 2);
    QVERIFY(!QFile::exists(QString::fromUtf8(asked.value(3))));
  }

  void a_window_program_that_fails_is_said() {
    const auto [exit, err] = alone("#!/bin/sh\nexit 3\n", "failed.pdf");
    QCOMPARE(exit, 2);
    QVERIFY(err.contains("failed.pdf"));
  }

 private:
  test::Ran run(const QStringList& command, const QStringList& options) {
    std::vector<std::string> arguments;
    for (const QString& word : command + options) arguments.push_back(word.toStdString());
    arguments.insert(arguments.begin() + 1, {"--catalog", demo_.file().string()});
    return test::run(arguments);
  }

  /// The real program in a folder of its own, with this script in the window program's place; with none where it is
  /// empty.
  std::pair<int, QByteArray> alone(const QByteArray& window, const QString& pdf) {
    QDir(folder_.path()).mkpath("bin");
    const QString program = folder_.filePath("bin/ohmkin");
    QFile::copy(OHMKIN_PROGRAM, program);
    const QString script = folder_.filePath("bin/ohmkin-window");
    QFile::remove(script);
    if (!window.isEmpty()) {
      QFile file(script);
      if (!file.open(QIODevice::WriteOnly)) return {-1, "no script"};
      file.write(window);
      file.setPermissions(QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    }
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("PATH", window.isEmpty() ? folder_.filePath("nowhere") : "/usr/bin:/bin");
    process.setProcessEnvironment(environment);
    process.start(program, {"dial", "--catalog", QString::fromStdString(demo_.file().string()), "--gauge", "A",
                            "--sender", "B", "--pdf", folder_.filePath(pdf)});
    if (!process.waitForFinished(30000)) return {-1, "did not end"};
    return {process.exitCode(), process.readAllStandardError()};
  }

  test::DemoCatalogue demo_;
  QTemporaryDir folder_;
};

QTEST_GUILESS_MAIN(TestPrintRequest)
#include "tst_print_request.moc"
