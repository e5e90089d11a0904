#pragma once
#include <catalog/search_documents.h>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

/// Inside this room only: the index as one block of bytes, which is read from the file in one go and searched where it
/// lies. Measured at 1,000,000 where-used rows: reading it costs less than one statement over a tenth of the things.
///
/// Numbers of 32 bits, in this machine's order (another one's is not recognised and made anew): a head, for each thing
/// its weight, then where its id begins; for each word where it begins; for each word where its places begin; the
/// places; then bytes: the kinds, the ids, the words. Things stand by kind and id, words by bytes, each followed by a
/// line break.
namespace ohmkin::catalog {

inline constexpr std::uint32_t kSearchBlockVersion = 1;

/// A word's place: thing, field, and whether it is the field's whole text, a word of it, or both.
struct SearchPosting {
  std::uint32_t bits = 0;
  static constexpr std::uint32_t kWhole = 1;
  static constexpr std::uint32_t kWord = 2;
  static constexpr std::uint32_t kMostThings = 1U << 26U;
  [[nodiscard]] std::uint32_t thing() const { return bits >> 6U; }
  [[nodiscard]] SearchField field() const { return static_cast<SearchField>((bits >> 2U) & 15U); }
  [[nodiscard]] bool whole() const { return (bits & kWhole) != 0; }
  [[nodiscard]] bool word() const { return (bits & kWord) != 0; }
};

class SearchBlockBuilder {
 public:
  /// By rising kind and id.
  void add(const SearchDocument& document);
  [[nodiscard]] std::vector<std::uint32_t> block() &&;

 private:
  std::uint32_t numberOf(const std::string& word);
  std::unordered_map<std::string, std::uint32_t> words_;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> places_;  // word, posting's bits
  std::vector<std::uint32_t> weights_;
  std::vector<std::uint32_t> idsAt_{0};
  std::string kinds_;
  std::string ids_;
};

/// A block that was looked over: nothing in it leads outside of it.
class SearchBlock {
 public:
  /// None where it is not one of this version and machine, or damaged.
  static std::optional<SearchBlock> read(std::vector<std::uint32_t> numbers);

  [[nodiscard]] std::size_t things() const { return weights_.size(); }
  [[nodiscard]] std::size_t words() const { return wordsAt_.size() - 1; }
  [[nodiscard]] ThingKind kind(std::size_t thing) const { return static_cast<ThingKind>(kinds_[thing]); }
  [[nodiscard]] std::string_view id(std::size_t thing) const {
    return ids_.substr(idsAt_[thing], idsAt_[thing + 1] - idsAt_[thing]);
  }
  [[nodiscard]] std::uint32_t weight(std::size_t thing) const { return weights_[thing]; }
  [[nodiscard]] std::string_view word(std::size_t word) const {
    return text_.substr(wordsAt_[word], wordsAt_[word + 1] - wordsAt_[word] - 1);
  }
  [[nodiscard]] std::string_view text() const { return text_; }  ///< all words, a line break after each
  [[nodiscard]] std::size_t wordAt(std::size_t byteOfText) const;
  [[nodiscard]] std::size_t firstNotBefore(std::string_view word) const;  ///< by bytes
  /// Bits of SearchPosting.
  [[nodiscard]] std::span<const std::uint32_t> places(std::size_t word) const {
    return places_.subspan(placesAt_[word], placesAt_[word + 1] - placesAt_[word]);
  }
  [[nodiscard]] std::optional<std::size_t> thing(ThingKind kind, std::string_view id) const;

 private:
  SearchBlock() = default;
  [[nodiscard]] bool sound() const;
  std::vector<std::uint32_t> numbers_;
  std::span<const std::uint32_t> weights_, idsAt_, wordsAt_, placesAt_, places_;
  std::string_view kinds_, ids_, text_;
};

}  // namespace ohmkin::catalog
