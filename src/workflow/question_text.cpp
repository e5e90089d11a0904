#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <quantity/parse.h>
#include <workflow/question_text.h>
#include <workflow/vocabulary.h>
#include <algorithm>
#include <array>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kLongestText = 2000;  // bytes; nobody types more at a counter
constexpr std::size_t kLongestPhrase = 6;   // words
constexpr std::size_t kShortestPart = 4;    // letters a single word of a line's name must have to stand for the line

struct Token {
  std::size_t from;
  std::size_t length;
  std::string_view text;
};

std::vector<Token> tokens(std::string_view text) {
  std::vector<Token> out;
  std::size_t at = 0;
  const auto separates = [&](std::size_t i) {
    return text[i] == ' ' || text[i] == '\t' || text[i] == ',' || text[i] == ';';
  };
  while (at < text.size()) {
    while (at < text.size() && separates(at)) ++at;
    const std::size_t from = at;
    while (at < text.size() && !separates(at)) ++at;
    if (at > from && text.substr(from, at - from) != "·")
      out.push_back({from, at - from, text.substr(from, at - from)});
  }
  return out;
}

/// What the words after a cue are. After most cues they are names, which the vocabulary knows without them.
enum class Follows { name, castingNumber, castingDate };
struct Cue {
  std::string_view word;
  Follows follows = Follows::name;
};
constexpr std::array<Cue, 13> kCues{{{"casting", Follows::castingNumber},
                                     {"dated", Follows::castingDate},
                                     {"date", Follows::castingDate},
                                     {"cast", Follows::castingDate},
                                     {"head"},
                                     {"built"},
                                     {"engine"},
                                     {"terminal"},
                                     {"port"},
                                     {"fitted"},
                                     {"gauge"},
                                     {"at"},
                                     {"reads"}}};

const Cue* cueOf(std::string_view word) {
  const std::string key = folded(word);
  const auto found = std::find_if(kCues.begin(), kCues.end(), [&](const Cue& cue) { return cue.word == key; });
  return found == kCues.end() ? nullptr : &*found;
}

class Reader {
 public:
  Reader(const Vocabulary& vocabulary, std::string_view text)
      : vocabulary_(vocabulary), text_(text), tokens_(tokens(text)) {}

  TextReading read() {
    while (at_ < tokens_.size()) {
      if (phrase() || dates() || year() || reading() || cued() || partOfALine()) continue;
      piece(1, "", "");
    }
    settleLine();
    return std::move(result_);
  }

 private:
  Question& question() { return result_.question; }

  void piece(std::size_t count, std::string field, std::string reading) {
    const Token& last = tokens_[at_ + count - 1];
    result_.pieces.push_back(
        {tokens_[at_].from, last.from + last.length - tokens_[at_].from, std::move(field), std::move(reading), {}});
    at_ += count;
  }

  std::string_view words(std::size_t count) const {
    const Token& last = tokens_[at_ + count - 1];
    return text_.substr(tokens_[at_].from, last.from + last.length - tokens_[at_].from);
  }

  void fill(const Word& word) {
    std::string Question::*const field = word.field == "line"       ? &Question::line
                                         : word.field == "cluster"  ? &Question::cluster
                                         : word.field == "engine"   ? &Question::engine
                                         : word.field == "casting"  ? &Question::casting
                                         : word.field == "terminal" ? &Question::terminal
                                         : word.field == "port"     ? &Question::portThread
                                                                    : &Question::fitted;
    question().*field = word.id;
  }

  /// The longest run of words that is a name of the catalogue.
  bool phrase() {
    for (std::size_t count = std::min(kLongestPhrase, tokens_.size() - at_); count > 0; --count) {
      const std::string key = folded(words(count));
      if (key.empty()) continue;
      const Word* word = vocabulary_.exactly(key, words(count));
      if (word == nullptr || (count == 1 && looksLikeYear(tokens_[at_].text))) continue;
      fill(*word);
      piece(count, word->field, word->text);
      return true;
    }
    return false;
  }

  static bool looksLikeYear(std::string_view word) {
    return word.size() == 4 && (word.starts_with("19") || word.starts_with("20")) &&
           std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
  }

  bool year() {
    if (question().year || !looksLikeYear(tokens_[at_].text)) return false;
    question().year = ModelYear{static_cast<int>(*parseNumber(tokens_[at_].text))};
    piece(1, "year", fmt::format("model year {}", question().year->value));
    return true;
  }

  bool dates() {
    const auto day = parseDate(tokens_[at_].text);
    if (!day) return false;
    const bool engine = at_ > 0 && folded(tokens_[at_ - 1].text) == "engine";
    (engine ? question().engineBuilt : question().built) = *day;
    piece(1, engine ? "engine-built" : "built", plainDate(*day));
    return true;
  }

  bool reading() {
    const auto read = parseReading(tokens_[at_].text, TemperatureUnit::celsius);
    if (!read) return false;
    question().readings.push_back(*read);
    piece(1, "reading", std::string(tokens_[at_].text));
    return true;
  }

  bool cued() {
    const Cue* cue = cueOf(tokens_[at_].text);
    if (cue == nullptr) return false;
    if (cue->follows == Follows::castingDate && at_ + 1 < tokens_.size()) return castingDate();
    if (cue->follows == Follows::castingNumber && at_ + 1 < tokens_.size() && cueOf(tokens_[at_ + 1].text) == nullptr) {
      question().casting = tokens_[at_ + 1].text;
      piece(2, "casting", question().casting);
      return true;
    }
    piece(1, "said", "");
    return true;
  }

  /// A date code goes on to the next cue, comma, year or name: "H 22 1".
  bool castingDate() {
    piece(1, "said", "");
    std::size_t count = 0;
    while (at_ + count < tokens_.size() && count < 4) {
      const Token& token = tokens_[at_ + count];
      const bool commaBefore = count > 0 && text_.substr(token.from - 2, 2).find(',') != std::string_view::npos;
      if (commaBefore || cueOf(token.text) != nullptr || token.text.size() > 8 ||
          (count > 0 && looksLikeYear(token.text)))
        break;
      if (count > 0 && vocabulary_.exactly(folded(token.text), token.text) != nullptr) break;
      ++count;
    }
    if (count == 0) return true;
    question().castingDate = words(count);
    piece(count, "casting-date", question().castingDate);
    return true;
  }

  bool partOfALine() {
    const std::string key = folded(tokens_[at_].text);
    if (key.size() < kShortestPart) return false;
    std::vector<const Word*> lines = vocabulary_.linesWith(key);
    if (lines.empty()) return false;
    partial_.push_back({result_.pieces.size(), std::move(lines)});
    piece(1, "", "");
    return true;
  }

  /// With the whole text read: the one line that all the parts mean, in that model year where it is known.
  void settleLine() {
    if (partial_.empty()) return;
    const auto means = [&](const Word& line) {
      const auto& year = question().year;
      if (year && line.years && !line.years->holds(*year)) return false;
      return std::all_of(partial_.begin(), partial_.end(), [&](const Part& part) {
        return std::any_of(part.lines.begin(), part.lines.end(), [&](const Word* word) { return word->id == line.id; });
      });
    };
    std::vector<const Word*> all = partial_.front().lines;
    std::vector<const Word*> left;
    std::copy_if(all.begin(), all.end(), std::back_inserter(left), [&](const Word* line) { return means(*line); });
    if (!question().line.empty()) {
      // A line named in full: its make's name beside it says nothing new, another's is left out.
      const auto same = [&](const Word* word) { return word->id == question().line; };
      for (const Part& part : partial_)
        if (std::any_of(part.lines.begin(), part.lines.end(), same)) result_.pieces[part.piece].field = "said";
      return;
    }
    if (left.size() == 1) fill(*left.front());
    for (const Part& part : partial_) {
      TextPiece& piece = result_.pieces[part.piece];
      if (left.size() == 1) {
        piece.field = "line";
        piece.reading = left.front()->text;
      }
      // Several of that year, or none: then all of them with their years, which show what does not fit.
      if (left.size() > 1)
        for (const Word* word : left) piece.couldBe.push_back(word->text);
      if (left.empty())
        for (const Word* word : part.lines)
          piece.couldBe.push_back(word->years ? fmt::format("{} ({})", word->text, plainSpan(*word->years))
                                              : word->text);
    }
  }

  /// A word that is part of one or several lines' names.
  struct Part {
    std::size_t piece;
    std::vector<const Word*> lines;
  };

  const Vocabulary& vocabulary_;
  std::string_view text_;
  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  std::vector<Part> partial_;
  TextReading result_;
};

}  // namespace

std::string complaint(const TextPiece& piece, std::string_view text) {
  if (!piece.field.empty()) return {};
  const std::string_view word = text.substr(piece.from, piece.length);
  if (piece.couldBe.empty()) return fmt::format("'{}' was not understood and is left out", word);
  if (piece.couldBe.size() == 1) return fmt::format("'{}' does not go with the rest: {}", word, piece.couldBe.front());
  return fmt::format("'{}' could be any of {}: {}; say which", word, piece.couldBe.size(),
                     fmt::join(piece.couldBe, ", "));
}

TextReading readQuestion(const catalog::Catalogue& catalogue, std::string_view text) {
  return readQuestion(Vocabulary(catalogue, Vocabulary::Numbers::askedFor), text);
}

TextReading readQuestion(const Vocabulary& vocabulary, std::string_view text) {
  return Reader(vocabulary, text.substr(0, kLongestText)).read();
}

std::vector<Completion> completions(const Vocabulary& vocabulary, std::string_view text, std::size_t most) {
  text = text.substr(0, kLongestText);
  const std::vector<Token> all = tokens(text);
  if (all.empty() || text.back() == ' ') return {};
  std::vector<Completion> out;
  // The last few words may together be the beginning of a name: "ridgeway ut".
  for (std::size_t count = std::min<std::size_t>(3, all.size()); count > 0; --count) {
    const std::size_t from = all[all.size() - count].from;
    for (const Word* word : vocabulary.beginning(folded(text.substr(from)), most)) {
      if (out.size() == most) return out;
      const bool there =
          std::any_of(out.begin(), out.end(), [&](const Completion& c) { return c.insert == word->text; });
      if (!there) out.push_back({word->text, from, word->field, word->note});
    }
    if (!out.empty()) return out;
  }
  return out;
}

std::vector<Completion> completions(const catalog::Catalogue& catalogue, std::string_view text, std::size_t most) {
  return completions(Vocabulary(catalogue), text, most);
}

}  // namespace ohmkin::workflow
