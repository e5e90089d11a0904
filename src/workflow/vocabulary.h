#pragma once
#include <catalog/catalogue.h>
#include <quantity/date.h>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The names a catalogue knows, for reading a typed line and for going on with it.
namespace ohmkin::workflow {

struct Word {
  std::string text;    ///< as shown: "Ridgeway utility"
  std::string folded;  ///< as compared
  std::string field;   ///< the Question field it fills: "line", "cluster", "engine", "casting", "terminal", "port",
                       ///< "fitted", "gauge"
  std::string id;      ///< what goes into that field
  std::string note;    ///< "model years 1967–78"
  std::optional<ModelYearSpan> years = std::nullopt;  ///< of a vehicle line
  std::string parts = {};  ///< where there are several: each as compared, line breaks before, between and after
};

class Vocabulary {
 public:
  /// Part and casting numbers are most of a large catalogue's words. To read a line or two they are asked for as they
  /// come up, which needs the catalogue as long as this lives; to go on with what is typed they are all held.
  enum class Numbers { held, askedFor };
  explicit Vocabulary(const catalog::Catalogue& catalogue, Numbers numbers = Numbers::held);

  /// The word whose folded text is exactly this; lines before options before the rest. Null where there is none. Where
  /// numbers are asked for, those that have signs other than - . / must be typed with them: hence `typed`.
  [[nodiscard]] const Word* exactly(std::string_view folded, std::string_view typed) const;
  /// Words that begin with this, or hold a part that does, in the same order.
  [[nodiscard]] std::vector<const Word*> beginning(std::string_view folded, std::size_t most) const;
  /// Vehicle lines one of whose parts is this, each once: a make's name has all its lines.
  [[nodiscard]] std::vector<const Word*> linesWith(std::string_view folded) const;
  [[nodiscard]] const std::vector<Word>& words() const { return words_; }

 private:
  void add(std::string text, std::string field, std::string id, std::string note,
           std::optional<ModelYearSpan> years = std::nullopt);
  const Word* numbered(std::string_view folded, std::string_view typed, const char* field) const;
  std::vector<Word> words_;
  std::size_t castingsAt_ = 0;                     ///< before these words come casting numbers
  const catalog::Catalogue* askedFor_ = nullptr;   ///< none: all numbers are held
  mutable std::map<std::string, Word> wereAsked_;  ///< by field and typed text
};

}  // namespace ohmkin::workflow
