#pragma once
#include <cstdint>
#include <istream>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ohmkin::exchange {

/// The bytes of a stream as UTF-8, in pieces. UTF-8 is handed through unchecked; everything else goes through iconv.
class TextSource {
 public:
  TextSource(std::istream& in, const std::string& encoding);
  ~TextSource();
  TextSource(const TextSource&) = delete;
  TextSource& operator=(const TextSource&) = delete;

  /// Puts up to about `most` bytes of UTF-8 behind `into`; false at the end, or where `broken` says why no more comes.
  bool more(std::vector<char>& into, std::size_t most);
  [[nodiscard]] std::uint64_t bytes() const { return bytes_; }  ///< of the stream, taken so far
  /// What stands in the way, once more() is false: "bytes that are no windows-1252".
  [[nodiscard]] const std::optional<std::string>& broken() const { return broken_; }

  static bool knows(const std::string& encoding);  ///< whether iconv can read it

 private:
  class Converter;
  std::size_t fill(char* to, std::size_t most);
  std::istream& in_;
  std::string encoding_;
  std::unique_ptr<Converter> converter_;  ///< none: UTF-8
  std::vector<char> raw_;                 ///< what iconv has not taken yet: at most one broken-off character
  std::uint64_t bytes_ = 0;
  std::optional<std::string> broken_;
};

}  // namespace ohmkin::exchange
