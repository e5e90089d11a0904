#pragma once
// Included before everything else of a test built with a sanitizer, which makes a page five to twenty times slower than
// the five seconds Qt Test waits for it.
#include <QTest>

#define OHMKIN_TIMES_SLOWER 20

#undef QTRY_VERIFY
#undef QTRY_COMPARE
#define QTRY_VERIFY(expression) QTRY_VERIFY_WITH_TIMEOUT((expression), 60000)
#define QTRY_COMPARE(actual, expected) QTRY_COMPARE_WITH_TIMEOUT((actual), expected, 60000)
