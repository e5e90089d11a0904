#pragma once
#include <quantity/date.h>

namespace ohmkin::dating {

struct YearMonthDay {
  int year = 0;
  int month = 0;  ///< 1 to 12
  int day = 0;    ///< 1 to 31
};
YearMonthDay parts(Date day);

/// ISO 8601: weeks begin on Monday, week 1 holds the year's first Thursday. The week's year may differ from the day's.
struct IsoWeekDay {
  int year = 0;
  int week = 0;     ///< 1 to 53
  int weekday = 0;  ///< 1 Monday to 7 Sunday
};
IsoWeekDay isoWeekDay(Date day);
Date mondayOf(int isoYear, int week);  ///< of a week that exists: see weeksIn
int weeksIn(int isoYear);              ///< 52 or 53

int dayOfYear(Date day);  ///< 1 to 366
int daysInMonth(int year, int month);
int daysInYear(int year);

}  // namespace ohmkin::dating
