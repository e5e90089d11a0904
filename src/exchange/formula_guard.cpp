#include <exchange/formula_guard.h>

namespace ohmkin::exchange {
namespace {

constexpr std::string_view kFormulaBegins = "=+-@\t\r";

/// Any number of apostrophes, then what a formula begins with.
bool isFormula(std::string_view text) {
  const auto first = text.find_first_not_of('\'');
  return first != std::string_view::npos && kFormulaBegins.find(text[first]) != std::string_view::npos;
}

}  // namespace

bool isGuarded(const FieldDefinition& field) { return field.type == FieldType::text && field.pattern.empty(); }

std::string guarded(std::string_view text) {
  std::string safe(text);
  if (isFormula(text)) safe.insert(safe.begin(), '\'');
  return safe;
}

std::string_view unguarded(std::string_view text) {
  return !text.empty() && text.front() == '\'' && isFormula(text) ? text.substr(1) : text;
}

}  // namespace ohmkin::exchange
