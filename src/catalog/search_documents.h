#pragma once
#include <catalog/connection.h>
#include <catalog/search_text.h>
#include <functional>
#include <optional>
#include <string>
#include <vector>

/// Inside this room only: what each thing is found by, read from its rows.
namespace ohmkin::catalog {

struct SearchDocument {
  ThingKind kind = ThingKind::sender;
  std::string id;
  std::uint32_t weight = 0;          ///< see weightOf
  std::vector<SearchedText> fields;  ///< none empty
};

inline constexpr std::uint32_t kInStock = 1U << 31U;
constexpr std::uint32_t weightOf(bool inStock, std::int64_t uses) {
  const auto most = static_cast<std::int64_t>(kInStock - 1);
  return (inStock ? kInStock : 0) + static_cast<std::uint32_t>(uses < 0 ? 0 : uses > most ? most : uses);
}

/// Older numbers a part is found by: the nearest of its chain, so many.
inline constexpr int kMostOldNumbers = 200;

std::string_view tableOf(ThingKind kind);  ///< whose key is `id`
std::optional<ThingKind> thingOfTable(std::string_view table);

/// All of one kind by id.
void eachDocument(Connection& connection, ThingKind kind, const std::function<void(SearchDocument&&)>& take);
std::optional<SearchDocument> documentOf(Connection& connection, ThingKind kind, const std::string& id);

/// What a field is compared by: as a whole, and by its words and pieces, each once.
struct FieldTerms {
  std::string whole;
  std::vector<std::string> words;
};
FieldTerms termsOf(std::string_view text);

/// How a thing is matched, by its own fields alone.
struct DocumentMatch {
  std::uint32_t score = kNoScore;
  std::size_t field = 0;  ///< which of its fields
};
DocumentMatch matchDocument(const Typed& typed, const SearchDocument& document);

}  // namespace ohmkin::catalog
