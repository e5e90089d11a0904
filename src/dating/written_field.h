#pragma once
#include <dating/layout.h>

/// How one field's value is written; shared by encoding, checking and decoding. Inner header of the room.
namespace ohmkin::dating {

/// What a field says about the date.
enum class Part { nothing, month, day, year, dayOfYear, week, weekday };
Part partOf(FieldKind kind);

/// The number the field would show on that day: month 12, last year digit 5. 0 for fields that say nothing.
int valueOn(FieldKind kind, Date day);

/// The same in a layout: where it counts weeks, the year is the week's year.
int valueIn(const Layout& layout, FieldKind kind, Date day);

struct WrittenForm {
  std::string text;
  int value = 0;
};

/// The usual form of a value.
std::string written(const Field& field, int value);

/// Every form of one value, the usual one first: "7", "07". Not for separators and shifts, which have sets of
/// characters.
std::vector<std::string> formsOfValue(const Field& field, int value);

/// Every value with every form. Four-digit years only from `firstYear` to `lastYear`. With `beyond`, values that can be
/// written but that no date has follow the real ones: month letter N, day 32, week 54.
std::vector<WrittenForm> formsOf(const Field& field, int firstYear, int lastYear, bool beyond);

/// True for a value that dates have: day 31, not day 32.
bool inRange(FieldKind kind, int value);

/// Characters a separator or shift may be; spaces included.
std::string characterSet(const Field& field);

std::size_t widest(const Field& field);  ///< characters

}  // namespace ohmkin::dating
