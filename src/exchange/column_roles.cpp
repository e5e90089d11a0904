#include <exchange/column_roles.h>
#include <exchange/column_units.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::exchange {
namespace {

class RoleGiver {
 public:
  RoleGiver(std::vector<ColumnFacts>& facts, const ProposalHints& hints, Proposal& into)
      : facts_(facts), hints_(hints), into_(into), marks_{into.plan.decimal, into.plan.thousands} {
    into_.plan.columns.assign(facts.size(), {});
    into_.columns.assign(facts.size(), {});
    for (std::size_t i = 0; i < facts.size(); ++i) into_.columns[i].heading = facts[i].heading;
  }

  void give() {
    byHeading();
    times();
    if (!has(Role::temperature) || !has(Role::resistance)) byContent();
    if (!has(Role::temperature) || !has(Role::resistance))
      into_.questions.push_back({"columns-unknown", "Which columns are temperature and resistance?", {}});
    oneThermometer();
    curveAndDirection();
    giveUnits(facts_, hints_.bare, into_);
    for (std::size_t i = 0; i < facts_.size(); ++i)
      if (role(i) == Role::ignored && into_.columns[i].reason.empty())
        into_.columns[i] = {facts_[i].heading, 0.8, "nothing says that it belongs to a reading"};
  }

 private:
  [[nodiscard]] Role role(std::size_t i) const { return into_.plan.columns[i].role; }
  [[nodiscard]] bool has(Role role) const { return !into_.plan.with(role).empty(); }
  void set(std::size_t i, Role role, double confidence, std::string reason) {
    into_.plan.columns[i].role = role;
    into_.columns[i].confidence = confidence;
    into_.columns[i].reason = std::move(reason);
  }

  void byHeading() {
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      const ColumnFacts& column = facts_[i];
      if (column.filled == 0) continue;
      if (column.mostly(column.withDegrees)) set(i, Role::temperature, 0.99, "its cells carry a unit of temperature");
      else if (column.mostly(column.withOhms) && column.said.role != Role::temperature)
        set(i, Role::resistance, 0.99, "its cells carry a unit of resistance");
      else if (column.said.role == Role::temperature && column.mostly(column.numbers))
        set(i, Role::temperature, 0.95, fmt::format("the heading '{}' says temperature", column.heading));
      else if (column.said.role == Role::resistance && column.mostly(column.numbers))
        set(i, Role::resistance, 0.95, fmt::format("the heading '{}' says resistance", column.heading));
      else if (column.said.role == Role::time && column.mostly(column.numbers))
        set(i, Role::time, 0.9, fmt::format("the heading '{}' says time", column.heading));
    }
    timeAndTemperatureBothT();
  }

  /// t and T: by convention the small one is time.
  void timeAndTemperatureBothT() {
    std::size_t small = facts_.size();
    std::size_t capital = facts_.size();
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      if (facts_[i].heading == "t") small = i;
      if (facts_[i].heading == "T") capital = i;
    }
    if (small < facts_.size() && capital < facts_.size())
      set(small, Role::time, 0.7, "beside T for temperature, t is time");
  }

  void times() {
    std::optional<std::size_t> date;
    std::optional<std::size_t> clock;
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      const ColumnFacts& column = facts_[i];
      if (column.mostly(*std::max_element(column.dates.begin(), column.dates.end()))) date = date.value_or(i);
      else if (column.mostly(column.clocks)) clock = clock.value_or(i);
      else if (role(i) == Role::time && !clock && !column.clocks) clock = i;
    }
    for (const std::size_t i : into_.plan.with(Role::time)) into_.plan.columns[i] = {};
    if (clock && facts_[*clock].clocks > 0) {
      set(*clock, Role::time, 0.95, "its cells are times of day");
      if (date) set(*date, Role::ignored, 0.8, "the time of day tells as much within a file");
    } else if (date) {
      set(*date, Role::time, 0.95, "its cells are dates");
      if (clock) set(*clock, Role::ignored, 0.8, "the dates tell the time");
    } else if (clock) {
      set(*clock, Role::time, 0.9, fmt::format("the heading '{}' says time", facts_[*clock].heading));
    }
  }

  /// Above 0: more like a temperature, below: more like ohms.
  double leaning(std::size_t i, std::string& why) {
    const std::vector<double> values = valuesOf(facts_[i], marks_);
    if (facts_[i].overloads > 0) return why = "it holds overload readings", -5;
    if (values.empty()) return 0;
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    if (*low < 0) return why = "it goes below zero", 5;
    if (*high > 1000) return why = "it goes above 1000", -4;
    double sum = 0;
    const bool round = std::all_of(values.begin(), values.end(), [](double v) { return std::fmod(v, 5) == 0; });
    if (round) sum += 1.5, why = "its values are round ones";
    if (*low > 0 && *high / *low > 15) sum -= 1, why = "its values span a wide ratio";
    if (*low == 0) sum += 2, why = "it has zeros";
    return sum;
  }

  [[nodiscard]] bool counts(std::size_t i) const {
    const std::vector<double> values = valuesOf(facts_[i], marks_);
    for (std::size_t k = 1; k < values.size(); ++k)
      if (values[k] != values[k - 1] + 1) return false;
    return values.size() > 2 && facts_[i].numbers == facts_[i].filled;
  }

  /// Sender numbers repeat; a column headed by a sender whose numbers do not, or have decimals, is its resistance.
  [[nodiscard]] bool namesInNumbers(std::size_t i) const {
    const std::vector<double> values = valuesOf(facts_[i], marks_);
    const bool whole = std::all_of(values.begin(), values.end(), [](double v) { return v == std::floor(v); });
    return facts_[i].overloads == 0 && whole && facts_[i].words.size() < facts_[i].filled;
  }

  /// Columns of numbers that nothing has claimed; those headed like names only where there is no other.
  [[nodiscard]] std::vector<std::size_t> freeNumbers() const {
    std::vector<std::size_t> free;
    std::vector<std::size_t> headedLikeNames;
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      const ColumnFacts& column = facts_[i];
      if (role(i) != Role::ignored || !column.mostly(column.numbers) || column.said.another ||
          column.said.surroundings || counts(i))
        continue;
      if (column.said.role != Role::curve) free.push_back(i);
      else if (!namesInNumbers(i)) headedLikeNames.push_back(i);
    }
    return free.empty() && has(Role::temperature) ? headedLikeNames : free;
  }

  void byContent() {
    const std::vector<std::size_t> free = freeNumbers();
    if (has(Role::temperature) || has(Role::resistance)) {
      if (free.empty()) return;
      const bool lacksOhms = has(Role::temperature);
      if (lacksOhms && free.size() > 1 &&
          std::none_of(free.begin(), free.end(), [&](std::size_t i) { return facts_[i].heading.empty(); }))
        return eachACurve(free);
      const std::size_t chosen = free.front();
      set(chosen, lacksOhms ? Role::resistance : Role::temperature, free.size() == 1 ? 0.8 : 0.5,
          free.size() == 1 ? "it is the only other column of numbers" : "it is the first other column of numbers");
      if (free.size() > 1) askColumn(lacksOhms ? Role::resistance : Role::temperature, free);
      return;
    }
    if (free.size() < 2) return;
    std::string whyFirst;
    std::string whySecond;
    const double first = leaning(free[0], whyFirst);
    const double second = leaning(free[1], whySecond);
    const bool turned = second > first;
    const bool sure = std::abs(first - second) >= 2 && free.size() == 2;
    const std::size_t temperature = free[turned ? 1 : 0];
    const std::size_t resistance = free[turned ? 0 : 1];
    const auto reason = [&](const std::string& own, const std::string& others) {
      return !own.empty()      ? own
             : !others.empty() ? "the other column: " + others
                               : std::string("it comes first or second, nothing else tells");
    };
    set(temperature, Role::temperature, sure ? 0.8 : 0.5,
        reason(turned ? whySecond : whyFirst, turned ? whyFirst : whySecond));
    set(resistance, Role::resistance, sure ? 0.8 : 0.5,
        reason(turned ? whyFirst : whySecond, turned ? whySecond : whyFirst));
    if (sure) return;
    into_.questions.push_back(
        {"which-is-temperature",
         fmt::format("Which column is the temperature, {} or {}?", temperature + 1, resistance + 1),
         {answer(temperature, Role::temperature) + ", " + answer(resistance, Role::resistance),
          answer(resistance, Role::temperature) + ", " + answer(temperature, Role::resistance)}});
  }

  /// Beside a temperature, columns headed by names or numbers are as many senders in one bath.
  void eachACurve(const std::vector<std::size_t>& columns) {
    PlanQuestion question{"which-resistance",
                          "Is each column beside the temperature the resistance of one sender, named by its heading?",
                          {""}};
    for (const std::size_t i : columns) {
      set(i, Role::resistance, 0.6, fmt::format("beside a temperature '{}' may name a sender", facts_[i].heading));
      question.answers.front() += (question.answers.front().empty() ? "" : ", ") + answer(i, Role::resistance);
      question.answers.push_back(answer(i, Role::resistance));
    }
    into_.questions.push_back(std::move(question));
  }

  /// "temperature=2:C", as parsePlan reads it.
  [[nodiscard]] std::string answer(std::size_t i, Role role) const {
    constexpr std::array<std::string_view, 7> names{"", "C", "F", "K", "ohm", "kohm", "Mohm"};
    return fmt::format("{}={}:{}", role == Role::temperature ? "temperature" : "resistance", i + 1,
                       names[static_cast<std::size_t>(unitAs(facts_[i], role, hints_.bare).unit)]);
  }

  void askColumn(Role role, const std::vector<std::size_t>& columns) {
    const std::string_view word = role == Role::temperature ? "temperature" : "resistance";
    PlanQuestion question{fmt::format("which-{}", word), fmt::format("Which column is the {}?", word), {}};
    for (const std::size_t i : columns) question.answers.push_back(answer(i, role));
    into_.questions.push_back(std::move(question));
  }

  /// A thermometer in the room is not one in the bath. T R T R are pairs and stay.
  void oneThermometer() {
    std::vector<std::size_t> all = into_.plan.with(Role::temperature);
    const std::vector<std::size_t> ohms = into_.plan.with(Role::resistance);
    const auto drop = [&](std::size_t i, std::string reason) { set(i, Role::ignored, 0.8, std::move(reason)); };
    if (all.size() > 1 &&
        std::any_of(all.begin(), all.end(), [&](std::size_t i) { return !facts_[i].said.surroundings; })) {
      for (const std::size_t i : all)
        if (facts_[i].said.surroundings && !facts_[i].said.bath) drop(i, "it is not the thermometer in the bath");
      all = into_.plan.with(Role::temperature);
    }
    bool pairs = all.size() == ohms.size();
    for (std::size_t i = 0; pairs && i < all.size(); ++i) pairs = all[i] < ohms[i] && (i == 0 || ohms[i - 1] < all[i]);
    if (all.size() < 2 || pairs) return;
    const auto bath = std::find_if(all.begin(), all.end(), [&](std::size_t i) { return facts_[i].said.bath; });
    const std::size_t chosen = bath == all.end() ? all.front() : *bath;
    for (const std::size_t i : all)
      if (i != chosen) drop(i, fmt::format("column {} is taken for the temperature", chosen + 1));
    if (bath == all.end() ||
        std::count_if(all.begin(), all.end(), [&](std::size_t i) { return facts_[i].said.bath; }) > 1) {
      std::swap(*std::find(all.begin(), all.end(), chosen), all.front());
      askColumn(Role::temperature, all);
    }
  }

  void curveAndDirection() {
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      const ColumnFacts& column = facts_[i];
      if (role(i) != Role::ignored || column.filled == 0 || has(Role::direction)) continue;
      if (column.directions == column.filled && (column.said.role == Role::direction || column.words.size() == 2))
        set(i, Role::direction, 0.95, "its cells say heating or cooling");
    }
    std::optional<std::size_t> curve;
    for (std::size_t i = 0; i < facts_.size() && !curve; ++i)
      if (role(i) == Role::ignored && facts_[i].filled > 0 && facts_[i].said.role == Role::curve &&
          !(counts(i) && facts_[i].words.size() == facts_[i].filled))
        curve = i;
    if (curve)
      return set(*curve, Role::curve, 0.9,
                 fmt::format("the heading '{}' names what was measured", facts_[*curve].heading));
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      const ColumnFacts& column = facts_[i];
      const bool words = column.filled > 0 && column.numbers + column.clocks == 0 &&
                         !folded(*column.words.begin()).empty() && column.dates == std::array<std::size_t, 3>{};
      const bool repeats = column.words.size() * 2 <= column.filled || column.filled * 2 < column.cells.size();
      if (role(i) == Role::ignored && words && repeats && column.said.role != Role::direction && column.heading.empty())
        return set(i, Role::curve, 0.7, "its cells are words that repeat");
    }
  }

  std::vector<ColumnFacts>& facts_;
  const ProposalHints& hints_;
  Proposal& into_;
  Marks marks_;
};

}  // namespace

void giveRoles(std::vector<ColumnFacts>& facts, const ProposalHints& hints, Proposal& into) {
  RoleGiver(facts, hints, into).give();
}

}  // namespace ohmkin::exchange
