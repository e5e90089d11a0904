#pragma once
#include <string>
#include <utility>

namespace ohmkin {

/// Words as they begin a sentence: a first letter from a to z in capitals, all else as it was.
inline std::string capitalised(std::string words) {
  if (!words.empty() && 'a' <= words.front() && words.front() <= 'z')
    words.front() = static_cast<char>(words.front() - 'a' + 'A');
  return words;
}

}  // namespace ohmkin
