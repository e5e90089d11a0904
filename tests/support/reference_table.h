#pragma once
#include <map>
#include <string>
#include <vector>

/// The reference files in tests/data: lines beginning with # are comments and name the source, then a header row, then
/// rows.
namespace ohmkin::test {

class ReferenceTable {
 public:
  /// `name` is the file's name in tests/data. Throws std::runtime_error where it cannot be read.
  explicit ReferenceTable(const std::string& name);

  [[nodiscard]] std::size_t size() const { return rows_.size(); }
  [[nodiscard]] const std::string& text(std::size_t row,
                                        const std::string& column) const;  ///< throws on an unknown column
  [[nodiscard]] double number(std::size_t row, const std::string& column) const;
  [[nodiscard]] bool blank(std::size_t row, const std::string& column) const { return text(row, column).empty(); }

 private:
  std::map<std::string, std::size_t> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace ohmkin::test
