#pragma once
#include <finding/refusal.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The room's own data files: lines beginning with # are comments, then a header row, then rows. Not for other rooms.
namespace ohmkin::circuit {

class DataTable {
 public:
  /// Of those compiled in. Refuses one that is not there, and rows that are longer or shorter than the header.
  static Expected<DataTable> embedded(std::string_view name);

  [[nodiscard]] std::size_t size() const { return rows_.size(); }
  [[nodiscard]] const std::string& text(std::size_t row, std::string_view column) const;  ///< empty: no such column
  /// Refuse what does not read; an empty cell is no number.
  [[nodiscard]] Expected<double> number(std::size_t row, std::string_view column) const;
  [[nodiscard]] Expected<std::vector<double>> numbers(std::size_t row, std::string_view column) const;  ///< 1|2|open
  [[nodiscard]] std::vector<std::string> words(std::size_t row, std::string_view column) const;         ///< a|b|c
  [[nodiscard]] tl::unexpected<Refusal> wrong(std::size_t row, std::string_view column, std::string expected) const;

 private:
  std::string name_;
  std::vector<std::string> columns_;
  std::vector<std::vector<std::string>> rows_;
};

std::vector<std::string> split(std::string_view text, char at);  ///< none of an empty text
std::optional<double> ohmsFrom(std::string_view text);           ///< a number, "open" or "short"

}  // namespace ohmkin::circuit
