#include <catalog/engines.h>
#include <catalog/gauges.h>
#include <catalog/joints.h>
#include <catalog/senders.h>
#include <catalog/vehicles.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/vocabulary.h>
#include <algorithm>
#include <set>

namespace ohmkin::workflow {
namespace {

constexpr char kBreak = '\n';

/// "Ridgeway utility" → ridgeway, utility, with breaks around them; a single part is nothing new beside the whole.
std::string partsOf(std::string_view text) {
  std::string out(1, kBreak);
  std::size_t count = 0;
  while (!text.empty()) {
    const auto blank = text.find(' ');
    if (const std::string part = folded(text.substr(0, blank)); !part.empty()) {
      out += part + kBreak;
      ++count;
    }
    text = blank == std::string_view::npos ? std::string_view{} : text.substr(blank + 1);
  }
  return count > 1 ? out : std::string();
}

constexpr const char* kCasting = "casting number";
constexpr const char* kFitted = "sender in the head now";

}  // namespace

Vocabulary::Vocabulary(const catalog::Catalogue& catalogue, Numbers numbers)
    : askedFor_(numbers == Numbers::askedFor ? &catalogue : nullptr) {
  for (const auto& line : catalog::lines(catalogue)) {
    const std::string note = fmt::format("{} · model years {}", line.makeName, plainSpan(line.years));
    add(line.name, "line", line.id.text, note, line.years);
    add(line.makeName + " " + line.name, "line", line.id.text, note, line.years);
    for (const auto& also : line.also) add(also, "line", line.id.text, note, line.years);
    add(line.id.text, "line", line.id.text, note, line.years);
  }
  for (const auto& option : catalog::clusterOptions(catalogue)) add(option, "cluster", option, "cluster option");
  for (const auto& engine : catalog::engineFamilies(catalogue)) {
    add(engine.name, "engine", engine.id.text, engine.makeName + " engine");
    add(engine.id.text, "engine", engine.id.text, engine.makeName + " engine");
  }
  castingsAt_ = words_.size();
  if (numbers == Numbers::held)
    for (const auto& number : catalog::castingNumbers(catalogue)) add(number, "casting", number, kCasting);
  for (const auto& terminal : catalog::terminals(catalogue)) {
    add(terminal.name, "terminal", terminal.id.text, "terminal at the wire end");
    add(terminal.id.text, "terminal", terminal.id.text, "terminal at the wire end");
  }
  for (const auto& thread : catalog::threads(catalogue))
    add(thread.id.text, "port", thread.id.text, "thread of the port");
  if (numbers == Numbers::held)
    for (const auto& number : catalog::partNumbers(catalogue)) add(number, "fitted", number, kFitted);
}

void Vocabulary::add(std::string text, std::string field, std::string id, std::string note,
                     std::optional<ModelYearSpan> years) {
  std::string key = folded(text);
  if (!key.empty()) {
    std::string parts = partsOf(text);
    words_.push_back(
        {std::move(text), std::move(key), std::move(field), std::move(id), std::move(note), years, std::move(parts)});
  }
}

const Word* Vocabulary::exactly(std::string_view wanted, std::string_view typed) const {
  const auto found =
      std::find_if(words_.begin(), words_.end(), [&](const Word& word) { return word.folded == wanted; });
  const Word* const held = found == words_.end() ? nullptr : &*found;
  if (askedFor_ == nullptr || found - words_.begin() < static_cast<std::ptrdiff_t>(castingsAt_)) return held;
  if (const Word* casting = numbered(wanted, typed, "casting")) return casting;
  return held != nullptr ? held : numbered(wanted, typed, "fitted");
}

const Word* Vocabulary::numbered(std::string_view wanted, std::string_view typed, const char* field) const {
  std::string number;
  const bool casting = field == std::string_view("casting");
  if (casting) {
    for (const auto& one : catalog::castingsNumbered(*askedFor_, typed))
      if (number.empty() && folded(one.id.text) == wanted) number = one.id.text;
  } else {
    for (const auto& one : catalog::sendersNumbered(*askedFor_, typed))
      if (number.empty() && folded(one.id.text) == wanted) number = one.id.text;
  }
  if (number.empty()) return nullptr;
  const auto [place, fresh] = wereAsked_.try_emplace(std::string(field) + ' ' + number);
  if (fresh) place->second = {number, std::string(wanted), field, number, casting ? kCasting : kFitted};
  return &place->second;
}

std::vector<const Word*> Vocabulary::beginning(std::string_view wanted, std::size_t most) const {
  std::vector<const Word*> out;
  std::set<std::pair<std::string, std::string>> seen;
  const std::string asPart = kBreak + std::string(wanted);
  for (const bool whole : {true, false}) {
    for (const Word& word : words_) {
      if (out.size() == most) return out;
      if (whole ? !word.folded.starts_with(wanted)
                : word.folded.starts_with(wanted) || word.parts.find(asPart) == std::string::npos)
        continue;
      if (seen.emplace(word.field, word.id).second) out.push_back(&word);
    }
  }
  return out;
}

std::vector<const Word*> Vocabulary::linesWith(std::string_view wanted) const {
  std::vector<const Word*> out;
  const std::string asPart = kBreak + std::string(wanted) + kBreak;
  for (const Word& word : words_) {
    if (word.field != "line") continue;
    if (word.parts.empty() ? word.folded != wanted : word.parts.find(asPart) == std::string::npos) continue;
    if (std::none_of(out.begin(), out.end(), [&](const Word* known) { return known->id == word.id; }))
      out.push_back(&word);
  }
  return out;
}

}  // namespace ohmkin::workflow
