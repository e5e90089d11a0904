#pragma once
#include <catalog/catalogue.h>
#include <workflow/question.h>
#include <workflow/vocabulary.h>
#include <string>
#include <string_view>
#include <vector>

/// One line of text as a person types it, in any order: "1968 ridgeway utility gauge package casting 30418 dated H 22
/// 1".
namespace ohmkin::workflow {

/// A piece of the text and what it was taken for; pieces not understood have an empty field.
struct TextPiece {
  std::size_t from = 0;  ///< bytes into the text
  std::size_t length = 0;
  std::string field;                 ///< "line", "year", "cluster", "casting", "casting-date", …
  std::string reading;               ///< what it was taken for: "Ridgeway utility"
  std::vector<std::string> couldBe;  ///< vehicle lines it could all mean, where it is left out for that
};

struct TextReading {
  Question question;
  std::vector<TextPiece> pieces;
};

/// Why a piece is left out, as a sentence; empty where it was understood.
std::string complaint(const TextPiece& piece, std::string_view text);

/// Part of a line's name is enough where, with the model year, only one line has it: "1971 brackwell".
/// Never refuses: what cannot be understood is returned as a piece without a field.
TextReading readQuestion(const catalog::Catalogue& catalogue, std::string_view text);

/// A way to go on typing at the end of `text`.
struct Completion {
  std::string insert;    ///< replaces the last word
  std::size_t from = 0;  ///< where the last word begins
  std::string kind;      ///< "vehicle line", "cluster option", "casting", …
  std::string note;      ///< "model years 1967–78"
};
std::vector<Completion> completions(const catalog::Catalogue& catalogue, std::string_view text, std::size_t most = 8);

// The same with a vocabulary kept by the caller, for every key typed.
TextReading readQuestion(const Vocabulary& vocabulary, std::string_view text);
std::vector<Completion> completions(const Vocabulary& vocabulary, std::string_view text, std::size_t most = 8);

}  // namespace ohmkin::workflow
