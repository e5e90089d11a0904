#include <dating/calendar.h>

namespace ohmkin::dating {

using std::chrono::days;
using std::chrono::year;
using std::chrono::year_month_day;

YearMonthDay parts(Date day) {
  const year_month_day ymd{day};
  return {static_cast<int>(ymd.year()), static_cast<int>(static_cast<unsigned>(ymd.month())),
          static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

IsoWeekDay isoWeekDay(Date day) {
  const int weekday = static_cast<int>(std::chrono::weekday{day}.iso_encoding());
  // The week belongs to the year its Thursday lies in.
  const Date thursday = day + days{4 - weekday};
  const int isoYear = parts(thursday).year;
  return {isoYear, static_cast<int>((thursday - date(isoYear, 1, 1)).count()) / 7 + 1, weekday};
}

Date mondayOf(int isoYear, int week) {
  const Date fourth = date(isoYear, 1, 4);  // always in week 1
  return fourth - days{isoWeekDay(fourth).weekday - 1} + days{7 * (week - 1)};
}

int weeksIn(int isoYear) { return isoWeekDay(date(isoYear, 12, 28)).week; }  // 28 December is always in the last week

int dayOfYear(Date day) { return static_cast<int>((day - date(parts(day).year, 1, 1)).count()) + 1; }

int daysInMonth(int y, int month) {
  const std::chrono::year_month_day_last last{
      year{y}, std::chrono::month_day_last{std::chrono::month{static_cast<unsigned>(month)}}};
  return static_cast<int>(static_cast<unsigned>(last.day()));
}

int daysInYear(int y) { return year{y}.is_leap() ? 366 : 365; }

}  // namespace ohmkin::dating
