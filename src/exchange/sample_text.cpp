#include <exchange/sample_text.h>
#include <exchange/shown.h>
#include <exchange/text_source.h>
#include <fmt/format.h>
#include <algorithm>
#include <sstream>

namespace ohmkin::exchange {
namespace {

struct Guess {
  std::string encoding;
  std::string reason;
};

std::size_t lineAt(std::string_view text, std::size_t at) {
  return 1 + static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

bool control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte < 0x20 && c != '\t' && c != '\r' && c != '\n' && c != '\f' && c != '\x1A') || byte == 0x7F;
}

/// Half of ASCII text in UTF-16 is zeros, all on one side.
std::optional<Guess> utf16WithoutMark(std::string_view sample) {
  const std::string_view look = sample.substr(0, 4096);
  std::size_t even = 0;
  std::size_t odd = 0;
  for (std::size_t i = 0; i < look.size(); ++i)
    if (look[i] == '\0') ++(i % 2 == 0 ? even : odd);
  if (odd * 5 > look.size() * 2 && even * 20 < look.size())
    return Guess{"utf-16le", "every second byte is zero, as in UTF-16"};
  if (even * 5 > look.size() * 2 && odd * 20 < look.size())
    return Guess{"utf-16be", "every first byte of two is zero, as in UTF-16"};
  return {};
}

Expected<Guess> guess(std::string_view sample, bool whole, std::string_view file) {
  if (sample.starts_with("\xEF\xBB\xBF")) return Guess{"utf-8", "the byte-order mark says UTF-8"};
  if (sample.starts_with(std::string_view("\xFF\xFE\0\0", 4)))
    return Guess{"utf-32le", "the byte-order mark says UTF-32"};
  if (sample.starts_with("\xFF\xFE")) return Guess{"utf-16le", "the byte-order mark says UTF-16, low byte first"};
  if (sample.starts_with("\xFE\xFF")) return Guess{"utf-16be", "the byte-order mark says UTF-16, high byte first"};
  if (const std::size_t nul = sample.find('\0'); nul != std::string_view::npos) {
    if (const auto utf16 = utf16WithoutMark(sample)) return *utf16;
    return refuse("readings-binary", fmt::format("{}:{}", file, lineAt(sample, nul)), "a NUL byte",
                  "a text file of readings, not a binary one");
  }
  const auto controls = static_cast<std::size_t>(std::count_if(sample.begin(), sample.end(), control));
  if (controls * 100 > sample.size()) {
    const auto first = static_cast<std::size_t>(std::find_if(sample.begin(), sample.end(), control) - sample.begin());
    return refuse("readings-binary", fmt::format("{}:{}", file, lineAt(sample, first)),
                  fmt::format("{} control characters", controls), "a text file of readings, not a binary one");
  }
  const std::size_t broken = brokenUtf8At(sample);
  if (broken == std::string_view::npos || (!whole && broken + 4 > sample.size())) {
    const bool ascii =
        std::all_of(sample.begin(), sample.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
    return Guess{"utf-8", ascii ? "plain characters only" : "all of it is sound UTF-8"};
  }
  return Guess{"windows-1252", fmt::format("the byte {:02X} on line {} is not UTF-8",
                                           static_cast<unsigned char>(sample[broken]), lineAt(sample, broken))};
}

}  // namespace

Expected<SampleText> sampleText(std::string_view sample, bool whole, std::string_view encoding, std::string_view file) {
  if (sample.empty())
    return refuse("readings-empty", std::string(file), "no line", "rows of temperature and resistance");
  const auto told = encoding.empty() ? guess(sample, whole, file) : Guess{std::string(encoding), "you named it"};
  if (!told) return tl::make_unexpected(told.error());
  SampleText out{told->encoding, told->reason, {}, false};
  std::istringstream in{std::string(sample)};
  TextSource source(in, told->encoding);
  std::vector<char> text;
  while (source.more(text, sample.size())) {
  }
  std::string_view read(text.data(), text.size());
  if (read.starts_with("\xEF\xBB\xBF")) read.remove_prefix(3);
  if (source.broken() && (whole || source.broken()->find("broken off") == std::string::npos))
    return refuse("csv-unreadable", fmt::format("{}:{}", file, lineAt(read, read.size())), *source.broken(),
                  "text in one encoding from end to end");
  out.carriageReturns = read.find('\n') == std::string_view::npos && read.find('\r') != std::string_view::npos;
  if (!whole) {  // the last line may be broken off; a single endless one is left to the row reader to refuse
    const std::size_t last = read.find_last_of(out.carriageReturns ? '\r' : '\n');
    if (last != std::string_view::npos) read = read.substr(0, last + 1);
  }
  out.text = read;
  return out;
}

}  // namespace ohmkin::exchange
