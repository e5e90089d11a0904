#pragma once
#include <string>
#include <string_view>

/// A descriptor's licence has a name of letters, digits and - . _ (Data Package, "licenses"); a catalogue's is any
/// text.
namespace ohmkin::exchange {

/// "CC BY 4.0" → "CC-BY-4.0"; of a text with nothing in it that may stand in a name, "other".
inline std::string licenceName(std::string_view text) {
  std::string name;
  for (const char c : text) {
    const bool plain =
        ('a' <= c && c <= 'z') || ('A' <= c && c <= 'Z') || ('0' <= c && c <= '9') || c == '-' || c == '.' || c == '_';
    name += plain ? c : '-';
  }
  return name.find_first_not_of('-') == std::string::npos ? "other" : name;
}

}  // namespace ohmkin::exchange
