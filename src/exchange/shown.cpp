#include <exchange/shown.h>
#include <fmt/format.h>

namespace ohmkin::exchange {
namespace {

constexpr std::size_t kLongest = 60;

/// Bytes of the character that begins at `at`; 0 where none does.
std::size_t characterLength(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U; };
  const auto follows = [&](std::size_t i, unsigned low = 0x80U, unsigned high = 0xBFU) {
    return byte(i) >= low && byte(i) <= high;
  };
  const unsigned lead = byte(0);
  if (lead < 0x80U) return 1;
  if (lead >= 0xC2U && lead <= 0xDFU) return follows(1) ? 2 : 0;
  if (lead >= 0xE0U && lead <= 0xEFU) {
    const bool second = follows(1, lead == 0xE0U ? 0xA0U : 0x80U, lead == 0xEDU ? 0x9FU : 0xBFU);
    return second && follows(2) ? 3 : 0;
  }
  if (lead >= 0xF0U && lead <= 0xF4U) {
    const bool second = follows(1, lead == 0xF0U ? 0x90U : 0x80U, lead == 0xF4U ? 0x8FU : 0xBFU);
    return second && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

}  // namespace

std::size_t brokenUtf8At(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = characterLength(text, at);
    if (length == 0) return at;
    at += length;
  }
  return std::string_view::npos;
}

std::string shown(std::string_view text) {
  std::string out = "'";
  std::size_t at = 0;
  while (at < text.size() && at < kLongest) {
    const std::size_t length = characterLength(text, at);
    const auto byte = static_cast<unsigned char>(text[at]);
    const bool c1Control = length == 2 && byte == 0xC2U && static_cast<unsigned char>(text[at + 1]) < 0xA0U;
    if (length == 0 || byte < 0x20U || byte == 0x7FU || c1Control) {
      out += fmt::format("\\x{:02X}", byte);
      ++at;
    } else {
      out += text.substr(at, length);
      at += length;
    }
  }
  if (at < text.size()) out += "…";
  return out + "'";
}

}  // namespace ohmkin::exchange
