#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace ohmkin {

/// Names a mistyped word may have meant, nearest first, at most `most`: those within one edit for every three letters
/// (transposition counts once; case and punctuation do not count), and those the word is the beginning of.
std::vector<std::string> nearMisses(std::string_view word, const std::vector<std::string>& names, std::size_t most = 3);

/// ", perhaps A, B or C" — or nothing.
std::string perhaps(const std::vector<std::string>& names);

/// Lower case ASCII letters and digits only, other bytes above 127 kept: what two spellings of one name share.
std::string folded(std::string_view text);

}  // namespace ohmkin
