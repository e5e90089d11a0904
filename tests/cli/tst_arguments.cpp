#include "command_runner.h"

#include <QTest>

using namespace ohmkin;

class TestArguments : public QObject {
  Q_OBJECT
 private slots:
  void no_arguments_show_help_as_a_message() {
    const auto ran = test::run({});
    QCOMPARE(ran.exit, 2);
    QVERIFY(ran.out.empty());
    QVERIFY(ran.err.find("Commands:") != std::string::npos);
  }
  void every_command_has_help_with_an_example_that_names_it() {
    for (const auto& command : cli::allCommands()) {
      const auto ran = test::run({command->spec().name, "--help"});
      QCOMPARE(ran.exit, 0);
      QVERIFY(ran.out.find("Example:\n  ohmkin " + command->spec().name) != std::string::npos);
      for (const auto& option : command->spec().options)
        QVERIFY2(ran.out.find(option.name) != std::string::npos, option.name.c_str());
    }
  }
  void every_command_that_asks_a_catalogue_takes_catalog_json_and_units() {
    for (const auto& command : cli::allCommands()) {
      if (command->spec().name == "demo") continue;
      const std::string help = cli::helpText(command->spec());
      for (const char* option : {"--catalog", "--json", "--units"})
        QVERIFY2(help.find(option) != std::string::npos, command->spec().name.c_str());
    }
  }
  void a_mistyped_command_or_option_names_the_nearest() {
    QVERIFY(test::run({"mach"}).err.find("perhaps match") != std::string::npos);
    const auto ran = test::run({"match", "--vehicel", "x"});
    QCOMPARE(ran.exit, 2);
    QVERIFY2(ran.err.find("--vehicle") != std::string::npos, ran.err.c_str());
  }
  void an_option_without_its_value_or_given_twice_is_refused() {
    QVERIFY2(test::run({"match", "--year"}).err.find("--year") != std::string::npos,
             test::run({"match", "--year"}).err.c_str());
    const auto twice = test::run({"match", "--year", "1968", "--year", "1969"});
    QCOMPARE(twice.exit, 2);
    QVERIFY(twice.err.find("--year") != std::string::npos);
  }
  void repeatable_options_are_kept_in_order() {
    for (const auto& command : cli::allCommands()) {
      if (command->spec().name != "match") continue;
      const auto parsed = cli::parseArguments(
          command->spec(), {"--reading", "20=480", "words", "--reading", "90C=40", "--json", "more"});
      QVERIFY(parsed);
      QCOMPARE(parsed->all("--reading"), (std::vector<std::string>{"20=480", "90C=40"}));
      QCOMPARE(parsed->words, (std::vector<std::string>{"words", "more"}));
      QVERIFY(parsed->has("--json"));
    }
  }
};

QTEST_APPLESS_MAIN(TestArguments)
#include "tst_arguments.moc"
