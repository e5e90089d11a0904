#pragma once
#include <finding/refusal.h>
#include <string>
#include <string_view>

namespace ohmkin::exchange {

/// The beginning of a file as UTF-8 lines.
struct SampleText {
  std::string encoding;  ///< as in ReadingPlan
  std::string reason;    ///< how it was told
  std::string text;      ///< whole lines only, without a byte-order mark
  bool carriageReturns = false;
};

/// Refuses what is empty or no text. `whole`: the sample ends where the file does; `encoding`: told by the person, or
/// "".
Expected<SampleText> sampleText(std::string_view sample, bool whole, std::string_view encoding, std::string_view file);

}  // namespace ohmkin::exchange
