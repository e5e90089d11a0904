#include <exchange/row_rules.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::exchange {
namespace {

struct RowView {
  const Table& table;
  std::span<const Cell> cells;

  [[nodiscard]] const Cell* cell(const std::string& field) const {
    const auto at = std::find(table.columns.begin(), table.columns.end(), field);
    return at == table.columns.end() ? nullptr : &cells[static_cast<std::size_t>(at - table.columns.begin())];
  }
  [[nodiscard]] const Cell* filled(const std::string& field) const {
    const Cell* c = cell(field);
    return c == nullptr || std::holds_alternative<std::monostate>(*c) ? nullptr : c;
  }
  [[nodiscard]] bool has(const std::string& field) const { return filled(field) != nullptr; }
};

/// −1, 0 or 1. Both cells are of one field type: texts here are ISO dates or keys.
int compared(const Cell& a, const Cell& b) {
  const auto* left = std::get_if<std::string>(&a);
  const auto* right = std::get_if<std::string>(&b);
  if (left != nullptr && right != nullptr) return left->compare(*right) < 0 ? -1 : *left == *right ? 0 : 1;
  const auto number = [](const Cell& c) {
    if (const auto* w = std::get_if<std::int64_t>(&c)) return static_cast<double>(*w);
    const auto* n = std::get_if<double>(&c);
    return n == nullptr ? 0.0 : *n;
  };
  return number(a) < number(b) ? -1 : number(a) == number(b) ? 0 : 1;
}

void checkOrder(const RowView& row, const RowRule& rule,
                const std::function<void(const std::string&, std::string, std::string)>& complain) {
  for (std::size_t i = 1; i < rule.fields.size(); ++i) {
    const std::string& below = rule.fields[i - 1];
    const std::string& above = rule.fields[i];
    const Cell* low = row.filled(below);
    const Cell* high = row.filled(above);
    if (low == nullptr || high == nullptr) continue;
    const int order = compared(*low, *high);
    const bool holds = rule.kind == RowRule::Kind::rising       ? order < 0
                       : rule.kind == RowRule::Kind::notFalling ? order <= 0
                                                                : order != 0;
    if (holds) continue;
    const char* words = rule.kind == RowRule::Kind::rising       ? "above"
                        : rule.kind == RowRule::Kind::notFalling ? "not below"
                                                                 : "other than";
    complain(above, shown(textOf(*high)), fmt::format("a value {} {} ({})", words, below, textOf(*low)));
  }
}

}  // namespace

void checkRowRules(const Table& table, Complaints& complaints) {
  const RowView row{table, table.row(table.size() - 1)};
  const auto complain = [&](const std::string& field, std::string found, std::string expected) {
    complaints.add("row-rule", fmt::format("{}:{}:{}", table.file, table.lines.back(), field), std::move(found),
                   std::move(expected));
  };
  for (const RowRule& rule : table.definition->rules) {
    const auto filled =
        std::count_if(rule.fields.begin(), rule.fields.end(), [&](const auto& f) { return row.has(f); });
    const auto all = static_cast<std::ptrdiff_t>(rule.fields.size());
    const std::string names = fmt::format("{}", fmt::join(rule.fields, ", "));
    switch (rule.kind) {
      case RowRule::Kind::together:
        if (filled != 0 && filled != all) {
          const auto empty =
              std::find_if(rule.fields.begin(), rule.fields.end(), [&](const auto& f) { return !row.has(f); });
          complain(*empty, "nothing", "all of " + names + " or none of them");
        }
        break;
      case RowRule::Kind::exactlyOne:
        if (filled != 1) complain(rule.fields.front(), fmt::format("{} of {}", filled, names), "exactly one of them");
        break;
      default:
        checkOrder(row, rule, complain);
    }
  }
}

}  // namespace ohmkin::exchange
