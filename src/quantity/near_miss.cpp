#include <quantity/near_miss.h>
#include <algorithm>
#include <utility>

namespace ohmkin {
namespace {

constexpr std::size_t kLettersAnEdit = 3;

/// Damerau's distance restricted to neighbouring swaps.
std::size_t edits(const std::string& a, const std::string& b) {
  std::vector<std::size_t> before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = std::exchange(above, row);
  }
  return above[b.size()];
}

}  // namespace

std::string folded(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') out += static_cast<char>(c - 'A' + 'a');
    else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) > 127) out += c;
  }
  return out;
}

std::vector<std::string> nearMisses(std::string_view word, const std::vector<std::string>& names, std::size_t most) {
  const std::string wanted = folded(word).substr(0, 60);
  if (wanted.empty()) return {};
  std::vector<std::pair<std::size_t, std::string>> close;
  for (const std::string& name : names) {
    const std::string candidate = folded(name).substr(0, 120);
    const std::size_t distance = candidate.starts_with(wanted) ? 0 : edits(wanted, candidate);
    if (distance <= std::max<std::size_t>(1, std::max(wanted.size(), candidate.size()) / kLettersAnEdit))
      close.emplace_back(distance, name);
  }
  std::stable_sort(close.begin(), close.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> out;
  for (auto& [distance, name] : close) {
    if (out.size() < most && std::find(out.begin(), out.end(), name) == out.end()) out.push_back(std::move(name));
  }
  return out;
}

std::string perhaps(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? ", perhaps " : i + 1 == names.size() ? " or " : ", ") + names[i];
  return text;
}

}  // namespace ohmkin
