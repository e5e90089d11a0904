#pragma once
#include <string>

namespace ohmkin {

/// How much a finding matters to the person who reads it.
enum class Severity {
  note,     ///< good to know, changes nothing
  caution,  ///< works, but look at it
  warning,  ///< someone may be misled or a part spoiled
  refusal   ///< not recommended; the sentence says why
};

// What Finding::source says where there is nothing to cite.
inline constexpr const char* kCommonPractice = "common practice, no source";
inline constexpr const char* kFromMemory = "from memory, no source";

/// A verdict is data: whoever shows it only renders it. The same finding appears at the terminal, on screen and in
/// print.
struct Finding {
  std::string code;  ///< stable, kebab-case, never translated: "thread-needs-bushing"
  Severity severity = Severity::note;
  std::string sentence;  ///< one plain sentence for a person at a counter
  std::string evidence;  ///< what it rests on: "casting 30418, port at the front of the head"
  std::string source;    ///< where that comes from: a citation, "demo", "your reading", "common practice, no source"

  friend bool operator==(const Finding&, const Finding&) = default;
};

}  // namespace ohmkin
