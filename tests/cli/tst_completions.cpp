#include <QFile>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include "command_runner.h"
#include "demo_catalogue.h"

using namespace ohmkin;

/// The scripts in the shells they are for, and the manual page in the formatter it is for; skipped where one is not
/// installed.
class TestCompletions : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  QTemporaryDir folder_;

  QString script(const QString& shell) {
    const QString file = folder_.filePath("_ohmkin");
    const auto ran = test::run({"--completion", shell.toStdString()});
    QFile out(file);
    if (out.open(QIODevice::WriteOnly | QIODevice::Truncate)) out.write(ran.out.c_str());
    return ran.exit == 0 ? file : QString();
  }
  /// What it wrote, complaints too.
  QString in(const QString& program, const QStringList& arguments) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("PATH", QString(OHMKIN_BIN) + ":" + environment.value("PATH"));
    environment.insert("OHMKIN_CATALOG", QString::fromStdString(demo_.file().string()));
    environment.insert("TERM", "dumb");
    environment.insert("HOME", folder_.path());
    environment.insert("XDG_CONFIG_HOME", folder_.path());
    environment.insert("XDG_DATA_HOME", folder_.path());
    process.setProcessEnvironment(environment);
    process.setWorkingDirectory(folder_.path());
    process.start(program, arguments);
    if (!process.waitForFinished(60000)) {
      process.kill();
      process.waitForFinished();
      return QStringLiteral("did not end");
    }
    return QString::fromUtf8(process.readAllStandardOutput() + process.readAllStandardError());
  }
  static bool has(const QString& program) { return !QStandardPaths::findExecutable(program).isEmpty(); }

  static void lines() {
    QTest::addColumn<QStringList>("words");  // the last one is being typed
    QTest::addColumn<QStringList>("offered");
    QTest::newRow("commands") << QStringList{"fau"} << QStringList{"fault"};
    QTest::newRow("options") << QStringList{"fault", "--symp"} << QStringList{"--symptom"};
    QTest::newRow("choices") << QStringList{"fault", "--symptom", "l"} << QStringList{"low", "lamps"};
    QTest::newRow("gauges") << QStringList{"fault", "--gauge", "GA-"} << QStringList{"GA-1", "GA-2"};
    QTest::newRow("parts") << QStringList{"pair", "--sender", "BR-220"} << QStringList{"BR-2207"};
    QTest::newRow("a few words") << QStringList{"pack", "ex"} << QStringList{"export"};
    QTest::newRow("files") << QStringList{"fault", "--movement", "_oh"} << QStringList{"_ohmkin"};
  }

 private slots:
  void bash_completes_data() { lines(); }
  void bash_completes() {
    if (!has("bash")) QSKIP("no bash");
    QFETCH(QStringList, words);
    QFETCH(QStringList, offered);
    const QString file = script("bash");
    const QString task = QStringLiteral(
        "source \"$1\"; shift; COMP_WORDS=(ohmkin \"$@\"); COMP_CWORD=$#; _ohmkin; "
        "printf '%s\\n' \"${COMPREPLY[@]}\"");
    const QString out = in("bash", QStringList{"--norc", "-c", task, "test", file} + words);
    for (const QString& word : offered) QVERIFY2(out.split('\n').contains(word), qPrintable(out));
  }

  void bash_takes_a_value_after_an_equals_sign_and_a_catalogue_named_on_the_line() {
    if (!has("bash")) QSKIP("no bash");
    const QString file = script("bash");
    const QString task = QStringLiteral(
        "unset OHMKIN_CATALOG; source \"$1\"; shift; COMP_WORDS=(ohmkin \"$@\"); "
        "COMP_CWORD=$#; _ohmkin; printf '%s ' \"${COMPREPLY[@]}\"");
    const auto offered = [&](const QStringList& words) {
      return in("bash", QStringList{"--norc", "-c", task, "test", file} + words).trimmed();
    };
    QCOMPARE(offered({"fault", "--symptom", "=", "peg"}), QStringLiteral("pegged"));
    QCOMPARE(offered({"fault", "--gauge", "GA-1"}), QString());
    const QString catalogue = QString::fromStdString(demo_.file().string());
    QCOMPARE(offered({"fault", "--catalog", catalogue, "--gauge", "GA-1"}), QStringLiteral("GA-1"));
    QCOMPARE(offered({"fault", "--catalog", "=", catalogue, "--gauge", "GA-1"}), QStringLiteral("GA-1"));
    QCOMPARE(offered({"pair", "--gauge", "Family A"}), QString());
    QCOMPARE(offered({"pair", "--catalog", catalogue, "--gauge", "Family A"}), QStringLiteral("Family\\ A"));
  }

  void fish_completes_data() { lines(); }
  void fish_completes() {
    if (!has("fish")) QSKIP("no fish");
    QFETCH(QStringList, words);
    QFETCH(QStringList, offered);
    const QString file = script("fish");
    const QString out =
        in("fish", {"--no-config", "-c", "source " + file + "; complete -C 'ohmkin " + words.join(' ') + "'"});
    for (const QString& word : offered)
      QVERIFY2(("\n" + out).contains("\n" + word + "\t") || ("\n" + out + "\n").contains("\n" + word + "\n"),
               qPrintable(out));
  }

  void zsh_completes_data() { lines(); }
  void zsh_completes() {
    if (!has("zsh")) QSKIP("no zsh");
    QFETCH(QStringList, words);
    QFETCH(QStringList, offered);
    script("zsh");
    QFile typed(folder_.filePath("typed.zsh"));
    QVERIFY(typed.open(QIODevice::WriteOnly | QIODevice::Truncate));
    // A shell in a terminal of its own; what compadd is given is printed between << and >>,
    // written so that the echo of what is typed does not hold them.
    typed.write(
        "zmodload zsh/zpty\nzpty z zsh -f -i\n"
        "zpty -w z 'fpath=($PWD $fpath); autoload -U compinit; compinit -u -D; bindkey \"^I\" complete-word'\n"
        "zpty -w z 'compadd () { local -a m; builtin compadd -A m \"$@\" 2>/dev/null; print -r -- "
        "\"<\"\"<${m[*]}>\"\">\"; "
        "builtin compadd \"$@\" }'\n"
        "zpty -w z 'print rea''dy'\nzpty -r z seen '*ready*'\n"
        "zpty -n -w z \"$1\"$'\\t'\nzpty -r z seen '*\\<\\<*\\>\\>*'\nprint -r -- \"$seen\"\nzpty -d z\n");
    typed.close();
    const QString out = in("zsh", {"-f", typed.fileName(), "ohmkin " + words.join(' ')});
    const QString given = out.section("<<", 1).section(">>", 0, 0);
    for (const QString& word : offered) QVERIFY2(given.split(' ').contains(word), qPrintable(out));
  }

  void another_shell_and_other_names_are_refused() {
    QCOMPARE(test::run({"--completion", "tcsh"}).exit, 2);
    const auto ran = test::run({"--names", "moons"});
    QCOMPARE(ran.exit, 2);
    QVERIFY(ran.err.find("families") != std::string::npos);
  }

  void the_manual_page_has_every_command_and_option_and_no_warning() {
    const auto page = test::run({"--man"});
    QCOMPARE(page.exit, 0);
    if (!has("groff")) QSKIP("no groff");
    QFile file(folder_.filePath("ohmkin.1"));
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write(page.out.c_str());
    file.close();
    QProcess groff;
    groff.start("groff", {"-ww", "-K", "utf8", "-man", "-Tutf8", "-P-c", "-P-b", "-P-u", file.fileName()});
    QVERIFY(groff.waitForFinished(30000));
    const QString text = QString::fromUtf8(groff.readAllStandardOutput());
    QCOMPARE(QString::fromUtf8(groff.readAllStandardError()), QString());
    for (const auto& command : cli::allCommands()) {
      QVERIFY(text.contains("ohmkin " + QString::fromStdString(command->spec().name)));
      for (const cli::OptionSpec& option : command->spec().options)
        QVERIFY2(text.contains(QString::fromStdString(option.name)), option.name.c_str());
    }
  }

  void the_version_names_the_libraries() {
    const auto ran = test::run({"--version"});
    const QString text = QString::fromStdString(ran.out);
    QVERIFY2(text.startsWith("ohmkin " OHMKIN_VERSION "\n"), ran.out.c_str());
    for (const char* library : {"SQLite 3.", "fmt ", "Boost 1.", "Eigen 3."})
      QVERIFY2(text.contains(library), ran.out.c_str());
  }
};

QTEST_GUILESS_MAIN(TestCompletions)
#include "tst_completions.moc"
