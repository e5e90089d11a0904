#include <exchange/column_units.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::exchange {
namespace {

class UnitGiver {
 public:
  UnitGiver(const std::vector<ColumnFacts>& facts, TemperatureUnit bare, Proposal& into)
      : facts_(facts), bare_(bare), into_(into), marks_{into.plan.decimal, into.plan.thousands} {}

  void give(std::size_t i) {
    ColumnPlan& plan = into_.plan.columns[i];
    std::string& reason = into_.columns[i].reason;
    double& confidence = into_.columns[i].confidence;
    if (plan.role == Role::temperature) {
      const auto [is, stated] = unitAs(facts_[i], plan.role, bare_);
      plan.unit = is;
      reason +=
          stated ? fmt::format(", in {}", unitName(is)) : fmt::format("; no unit is stated, {} is taken", unitName(is));
      if (!stated) confidence = std::min(confidence, 0.6), bareTemperature(i);
    } else if (plan.role == Role::resistance) {
      const auto [is, stated] = unitAs(facts_[i], plan.role, bare_);
      plan.unit = is;
      reason += stated ? fmt::format(", in {}", unitName(is)) : "; no unit is stated, Ω is taken";
      if (!stated) confidence = std::min(confidence, 0.7), bareOhms(i);
    } else if (plan.role == Role::time) {
      timeUnitOf(i);
    }
  }

 private:
  void bareTemperature(std::size_t i) {
    const std::vector<double> values = valuesOf(facts_[i], marks_);
    into_.findings.push_back(
        {"temperature-unit-unstated", Severity::caution,
         fmt::format("Column {} states no unit; it is read as {}.", i + 1, unitName(into_.plan.columns[i].unit)),
         fmt::format("heading '{}'", facts_[i].heading), "the units chosen here"});
    // No coolant, oil or cylinder head is that hot, and a bench bath never.
    if (values.empty() || *std::min_element(values.begin(), values.end()) < 230) return;
    into_.questions.push_back({"temperature-unit",
                               fmt::format("Are the temperatures of column {} kelvins? All are above 230.", i + 1),
                               {fmt::format("temperature={}:K", i + 1), fmt::format("temperature={}:F", i + 1),
                                fmt::format("temperature={}:C", i + 1)}});
    into_.plan.columns[i].unit = ColumnUnit::kelvin;
  }

  void bareOhms(std::size_t i) {
    const std::vector<double> values = valuesOf(facts_[i], marks_);
    // A sender below 10 Ω at its coldest would be new; one of a few kΩ is not.
    if (values.empty() || *std::max_element(values.begin(), values.end()) >= 10 ||
        into_.plan.with(Role::resistance).size() > 1)
      return;
    into_.questions.push_back({"resistance-unit",
                               fmt::format("Is column {} in ohms or kilohms? No value is above 10.", i + 1),
                               {fmt::format("resistance={}:ohm", i + 1), fmt::format("resistance={}:kohm", i + 1)}});
  }

  void timeUnitOf(std::size_t i) {
    const ColumnFacts& column = facts_[i];
    ColumnUnit& unit = into_.plan.columns[i].unit;
    if (column.mostly(column.clocks)) {
      unit = ColumnUnit::clock;
      askWhatClockShows(i);
      return;
    }
    const auto most =
        static_cast<std::size_t>(std::max_element(column.dates.begin(), column.dates.end()) - column.dates.begin());
    constexpr std::array<ColumnUnit, 3> orders{ColumnUnit::yearMonthDay, ColumnUnit::dayMonthYear,
                                               ColumnUnit::monthDayYear};
    if (column.mostly(column.dates[most])) {
      unit = orders[most];
      // 5/6/2024 all through the file: either way the hours between rows are the same.
      const bool oneDay = std::all_of(column.cells.begin(), column.cells.end(), [&](std::string_view cell) {
        return cell.substr(0, cell.find_first_of(" T")) ==
               column.cells.front().substr(0, column.cells.front().find_first_of(" T"));
      });
      if (column.dates[1] == column.dates[2] && most == 1 && !oneDay)
        into_.questions.push_back({"day-or-month",
                                   fmt::format("Does the day or the month come first in column {}?", i + 1),
                                   {fmt::format("time={}:dmy", i + 1), fmt::format("time={}:mdy", i + 1)}});
      return;
    }
    const auto [is, stated] = unitAs(facts_[i], Role::time, bare_);
    unit = is;
    into_.columns[i].reason +=
        stated ? fmt::format(", in {}", unitName(unit)) : "; no unit is stated, seconds are taken";
    if (!stated) into_.columns[i].confidence = 0.6;
  }

  /// 5:30 is a time of day or five and a half minutes: by a factor of sixty the one dwells longer than the other.
  void askWhatClockShows(std::size_t i) {
    const ColumnFacts& column = facts_[i];
    const bool three = std::any_of(column.cells.begin(), column.cells.end(), [](std::string_view cell) {
      return std::count(cell.begin(), cell.end(), ':') > 1 || cell.find_first_of("Mm") != std::string_view::npos;
    });
    if (three) return;
    into_.questions.push_back(
        {"hours-or-minutes",
         fmt::format("Are the times of column {} hours and minutes, or minutes and seconds?", i + 1),
         {fmt::format("time={}:clock", i + 1), fmt::format("time={}:mmss", i + 1)}});
  }

  const std::vector<ColumnFacts>& facts_;
  TemperatureUnit bare_;
  Proposal& into_;
  Marks marks_;
};

}  // namespace

UnitTold unitAs(const ColumnFacts& column, Role role, TemperatureUnit bare) {
  const auto stated = column.said.unit ? column.said.unit : column.unitBelow;
  const auto within = [&](ColumnUnit low, ColumnUnit high) { return stated && *stated >= low && *stated <= high; };
  switch (role) {
    case Role::temperature:
      if (within(ColumnUnit::celsius, ColumnUnit::kelvin)) return {*stated, true};
      if (column.mostly(column.withDegrees) && column.cellDegrees) return {*column.cellDegrees, true};
      return {bare == TemperatureUnit::celsius ? ColumnUnit::celsius : ColumnUnit::fahrenheit, false};
    case Role::resistance:
      if (within(ColumnUnit::ohm, ColumnUnit::megohm)) return {*stated, true};
      return {ColumnUnit::ohm, column.mostly(column.withOhms)};
    case Role::time:
      if (within(ColumnUnit::millisecond, ColumnUnit::hour)) return {*stated, true};
      return {ColumnUnit::second, false};
    default:
      return {ColumnUnit::none, true};
  }
}

void giveUnits(const std::vector<ColumnFacts>& facts, TemperatureUnit bare, Proposal& into) {
  UnitGiver giver(facts, bare, into);
  for (std::size_t i = 0; i < facts.size(); ++i) giver.give(i);
}

}  // namespace ohmkin::exchange
