#include <catalog/search_block.h>
#include <algorithm>
#include <cstring>
#include <numeric>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

constexpr std::uint32_t kMark = 0x4F484D53U;  // "OHMS", in this machine's order of bytes
enum Head { kAtMark, kAtVersion, kAtThings, kAtWords, kAtPlaces, kAtIdBytes, kAtWordBytes, kHeadSize };

bool rises(std::span<const std::uint32_t> starts, std::size_t end, std::uint32_t step) {
  if (starts.empty() || starts.front() != 0 || starts.back() != end) return false;
  for (std::size_t i = 1; i < starts.size(); ++i)
    if (starts[i] < starts[i - 1] || starts[i] - starts[i - 1] < step) return false;
  return true;
}

}  // namespace

std::uint32_t SearchBlockBuilder::numberOf(const std::string& word) {
  return words_.try_emplace(word, static_cast<std::uint32_t>(words_.size())).first->second;
}

void SearchBlockBuilder::add(const SearchDocument& document) {
  const auto thing = static_cast<std::uint32_t>(weights_.size());
  if (thing >= SearchPosting::kMostThings) throw std::length_error("more things than the index has room for");
  weights_.push_back(document.weight);
  kinds_ += static_cast<char>(document.kind);
  ids_ += document.id;
  idsAt_.push_back(static_cast<std::uint32_t>(ids_.size()));
  for (const SearchedText& field : document.fields) {
    const std::uint32_t base = (thing << 6U) | (static_cast<std::uint32_t>(field.field) << 2U);
    const FieldTerms terms = termsOf(field.text);
    if (!terms.whole.empty()) places_.emplace_back(numberOf(terms.whole), base | SearchPosting::kWhole);
    for (const std::string& word : terms.words) places_.emplace_back(numberOf(word), base | SearchPosting::kWord);
  }
}

std::vector<std::uint32_t> SearchBlockBuilder::block() && {
  std::vector<std::pair<std::string_view, std::uint32_t>> sorted(words_.begin(), words_.end());
  std::sort(sorted.begin(), sorted.end());
  std::vector<std::uint32_t> rank(sorted.size());
  std::string text;
  std::vector<std::uint32_t> wordsAt{0};
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    rank[sorted[i].second] = static_cast<std::uint32_t>(i);
    text += sorted[i].first;
    text += '\n';
    wordsAt.push_back(static_cast<std::uint32_t>(text.size()));
  }
  for (auto& [word, bits] : places_) word = rank[word];
  std::sort(places_.begin(), places_.end());

  std::vector<std::uint32_t> placesAt(sorted.size() + 1, 0);
  std::vector<std::uint32_t> postings;
  for (const auto& [word, bits] : places_) {
    const bool same = placesAt[word + 1] > 0 && (postings.back() | 3U) == (bits | 3U);
    if (same) {
      postings.back() |= bits;  // the whole field is one word
    } else {
      postings.push_back(bits);
      ++placesAt[word + 1];
    }
  }
  std::partial_sum(placesAt.begin(), placesAt.end(), placesAt.begin());
  if (text.size() > UINT32_MAX || ids_.size() > UINT32_MAX)
    throw std::length_error("more words than the index has room for");

  std::vector<std::uint32_t> out(kHeadSize);
  out[kAtMark] = kMark;
  out[kAtVersion] = kSearchBlockVersion;
  out[kAtThings] = static_cast<std::uint32_t>(weights_.size());
  out[kAtWords] = static_cast<std::uint32_t>(sorted.size());
  out[kAtPlaces] = static_cast<std::uint32_t>(postings.size());
  out[kAtIdBytes] = static_cast<std::uint32_t>(ids_.size());
  out[kAtWordBytes] = static_cast<std::uint32_t>(text.size());
  for (const auto* numbers : {&weights_, &idsAt_, &wordsAt, &placesAt, &postings})
    out.insert(out.end(), numbers->begin(), numbers->end());
  const std::string bytes = kinds_ + ids_ + text;
  const std::size_t at = out.size();
  out.resize(at + (bytes.size() + 3) / 4, 0);
  std::memcpy(out.data() + at, bytes.data(), bytes.size());
  return out;
}

std::optional<SearchBlock> SearchBlock::read(std::vector<std::uint32_t> numbers) {
  if (numbers.size() < kHeadSize || numbers[kAtMark] != kMark || numbers[kAtVersion] != kSearchBlockVersion) return {};
  SearchBlock block;
  block.numbers_ = std::move(numbers);
  const std::span<const std::uint32_t> all = block.numbers_;
  const std::size_t n = all[kAtThings], m = all[kAtWords], p = all[kAtPlaces];
  const std::size_t counted = kHeadSize + n + (n + 1) + (m + 1) + (m + 1) + p;
  const std::size_t bytes = n + all[kAtIdBytes] + all[kAtWordBytes];
  if (n > SearchPosting::kMostThings || all.size() != counted + (bytes + 3) / 4) return {};
  std::size_t at = kHeadSize;
  const auto next = [&](std::size_t count) {
    at += count;
    return all.subspan(at - count, count);
  };
  block.weights_ = next(n);
  block.idsAt_ = next(n + 1);
  block.wordsAt_ = next(m + 1);
  block.placesAt_ = next(m + 1);
  block.places_ = next(p);
  const std::string_view text(reinterpret_cast<const char*>(all.data() + at), bytes);
  block.kinds_ = text.substr(0, n);
  block.ids_ = text.substr(n, all[kAtIdBytes]);
  block.text_ = text.substr(n + all[kAtIdBytes]);
  if (!block.sound()) return {};
  return block;
}

bool SearchBlock::sound() const {
  return rises(idsAt_, ids_.size(), 0) && rises(wordsAt_, text_.size(), 1) && rises(placesAt_, places_.size(), 0) &&
         std::all_of(kinds_.begin(), kinds_.end(),
                     [](char kind) { return static_cast<unsigned char>(kind) < kThingKinds; }) &&
         std::all_of(places_.begin(), places_.end(), [&](std::uint32_t bits) {
           const SearchPosting place{bits};
           return place.thing() < things() && static_cast<std::size_t>(place.field()) < kSearchFields;
         });
}

std::size_t SearchBlock::wordAt(std::size_t byteOfText) const {
  const auto after = std::upper_bound(wordsAt_.begin(), wordsAt_.end(), static_cast<std::uint32_t>(byteOfText));
  return static_cast<std::size_t>(after - wordsAt_.begin()) - 1;
}

std::size_t SearchBlock::firstNotBefore(std::string_view wanted) const {
  std::size_t low = 0, high = words();
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    if (word(middle) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

std::optional<std::size_t> SearchBlock::thing(ThingKind wantedKind, std::string_view wantedId) const {
  const std::pair wanted(wantedKind, wantedId);
  std::size_t low = 0, high = things();
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    if (std::pair(kind(middle), id(middle)) < wanted) low = middle + 1;
    else high = middle;
  }
  if (low == things() || kind(low) != wantedKind || id(low) != wantedId) return {};
  return low;
}

}  // namespace ohmkin::catalog
