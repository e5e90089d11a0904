#pragma once
// Included before everything else of tests that are compiled together into one program (OHMKIN_UNITY): what would be a
// test's main() is told to that program's, which runs the test it is called by the name of.
#include <QTest>

namespace ohmkin::test {

struct OneOfMany {
  /// `file` is the test's own, as __FILE__ has it.
  OneOfMany(const char* file, int (*run)(int, char**));
};

}  // namespace ohmkin::test

// As Qt's own, but for its name.
#undef QTEST_MAIN_WRAPPER
#define QTEST_MAIN_WRAPPER(Test, ...)            \
  static int run##Test(int argc, char* argv[]) { \
    QTest::Internal::callInitMain<Test>();       \
    __VA_ARGS__                                  \
    Test test;                                   \
    QTEST_SET_MAIN_SOURCE_PATH                   \
    return QTest::qExec(&test, argc, argv);      \
  }                                              \
  static const ohmkin::test::OneOfMany registered##Test(__FILE__, &run##Test);
