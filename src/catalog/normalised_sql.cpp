#include <catalog/trust.h>

namespace ohmkin::catalog {
namespace {

bool isBlank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f'; }

bool isWord(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
         static_cast<unsigned char>(c) >= 0x80;
}

/// Where the string or name that begins here ends; the end of the text where it does not.
std::size_t endOfQuoted(std::string_view sql, std::size_t at) {
  const char closing = sql[at] == '[' ? ']' : sql[at];
  const std::size_t end = sql.find(closing, at + 1);
  return end == std::string_view::npos ? sql.size() : end + 1;
}

/// Behind blanks and comments.
std::size_t skipped(std::string_view sql, std::size_t at) {
  while (at < sql.size()) {
    if (isBlank(sql[at])) {
      ++at;
    } else if (sql.substr(at, 2) == "--") {
      at = std::min(sql.find('\n', at), sql.size());
    } else if (sql.substr(at, 2) == "/*") {
      const std::size_t end = sql.find("*/", at + 2);
      at = end == std::string_view::npos ? sql.size() : end + 2;
    } else {
      break;
    }
  }
  return at;
}

}  // namespace

std::string normalisedSql(std::string_view sql) {
  std::string plain;
  plain.reserve(sql.size());
  for (std::size_t at = 0; at < sql.size();) {
    const std::size_t next = skipped(sql, at);
    if (next >= sql.size()) break;
    // Any sign but a part of a word stands for itself; a blank is kept where it parts two words.
    if (next > at && !plain.empty() && isWord(plain.back()) && isWord(sql[next])) plain += ' ';
    at = next;
    if (sql[at] == '\'' || sql[at] == '"' || sql[at] == '`' || sql[at] == '[') {
      const std::size_t end = endOfQuoted(sql, at);
      plain += sql.substr(at, end - at);
      at = end;
    } else {
      plain += sql[at++];
    }
  }
  return plain;
}

}  // namespace ohmkin::catalog
