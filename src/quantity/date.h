#pragma once
#include <finding/refusal.h>
#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace ohmkin {

/// A calendar day, proleptic Gregorian. Arithmetic in whole days.
using Date = std::chrono::sys_days;

/// Days from `from` up to, but not including, `until`; either end may be open. Half-open, so that spans meet without
/// overlap.
struct DateSpan {
  std::optional<Date> from;
  std::optional<Date> until;
  [[nodiscard]] bool holds(Date d) const { return (!from || *from <= d) && (!until || d < *until); }
  friend bool operator==(const DateSpan&, const DateSpan&) = default;
};

/// A model year, which is not a calendar year: production of a model year usually begins in the summer before it.
struct ModelYear {
  int value = 0;
  friend auto operator<=>(const ModelYear&, const ModelYear&) = default;
};

/// Model years from `from` up to, but not including, `until`.
struct ModelYearSpan {
  ModelYear from;
  ModelYear until;
  [[nodiscard]] bool holds(ModelYear y) const { return from <= y && y < until; }
  friend bool operator==(const ModelYearSpan&, const ModelYearSpan&) = default;
};

Date date(int year, unsigned month, unsigned day);

/// Reads an ISO 8601 calendar date, "1971-08-22". Refuses days that do not exist (1971-02-29).
Expected<Date> parseDate(std::string_view text, std::string_view where = {});

std::string isoDate(Date d);                       ///< "1971-08-22"
std::string plainDate(Date d);                     ///< "22 Aug 1971", for a person
std::string plainSpan(const ModelYearSpan& span);  ///< "1967–70": the last year is the last that is included

}  // namespace ohmkin
