#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/senders.h>
#include <catalog/shop.h>
#include <catalog/vehicles.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/find.h>
#include <algorithm>
#include <charconv>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kMostAsked = 1000;

/// A place in a list as text: rank, score, weight, kind, id.
struct Place {
  catalog::SearchPlace at;
  std::size_t shown = 0;
};

std::string written(const Place& place) {
  return fmt::format("{}.{}.{}.{}.{}", place.shown, place.at.score, place.at.weight, static_cast<int>(place.at.kind),
                     place.at.id);
}

std::optional<Place> readPlace(std::string_view text) {
  std::array<std::uint32_t, 4> numbers{};
  for (std::uint32_t& number : numbers) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{} || end == text.data() + text.size() || *end != '.') return {};
    text.remove_prefix(static_cast<std::size_t>(end - text.data()) + 1);
  }
  if (numbers[3] >= catalog::kThingKinds) return {};
  return Place{{numbers[1], numbers[2], static_cast<FoundKind>(numbers[3]), std::string(text)}, numbers[0]};
}

std::vector<std::string> textsOf(const catalog::SearchHit& hit, SearchField field) {
  std::vector<std::string> all;
  for (const auto& one : hit.fields)
    if (one.field == field) all.push_back(one.text);
  return all;
}

/// Its name in words. Where a make belongs to it, with the make.
std::string titleOf(const catalog::SearchHit& hit) {
  const auto names = textsOf(hit, SearchField::name);
  const auto parts = textsOf(hit, SearchField::part);
  switch (hit.kind) {
    case FoundKind::line:
    case FoundKind::engine:
      return names.empty() ? std::string() : names.back();  // make and name together
    case FoundKind::cluster:
      return fmt::format("{} {}, {}", fmt::join(textsOf(hit, SearchField::make), ""),
                         fmt::join(textsOf(hit, SearchField::line), ""), fmt::join(names, ""));
    case FoundKind::adapter:
      return fmt::format("bushing, port {} to sender {}", parts.front(), parts.back());
    case FoundKind::pigtail:
      return fmt::format("from wire end {} to sender {}", parts.front(), parts.back());
    case FoundKind::dateLayout:
      return fmt::format("{} ({})", fmt::join(names, ""), fmt::join(parts, ""));
    default:
      return names.empty() ? std::string() : names.front();
  }
}

void append(std::string& line, const std::string& more) {
  if (!more.empty()) line += (line.empty() ? "" : " · ") + more;
}

std::string counted(std::int64_t n, const char* one, const char* many) {
  return n == 0 ? std::string() : fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string aboutOf(const catalog::Catalogue& catalogue, const catalog::SearchHit& hit, std::int64_t pieces) {
  std::string about;
  switch (hit.kind) {
    case FoundKind::sender:
      if (const auto sender = catalog::sender(catalogue, catalog::SenderKey(hit.id))) {
        append(about, std::string(catalog::text(sender->kind)));
        if (sender->family) append(about, "family " + sender->family->text);
        append(about, sender->thread.text);
      }
      append(about, counted(hit.uses, "use", "uses"));
      append(about, pieces > 0 ? fmt::format("{} in stock", pieces) : std::string());
      break;
    case FoundKind::gauge:
      if (const auto gauge = catalog::gauge(catalogue, catalog::GaugeKey(hit.id)))
        append(about, "for senders of family " + gauge->family.text);
      break;
    case FoundKind::family:
      if (const auto ohms = textsOf(hit, SearchField::coldAndHot); !ohms.empty())
        append(about, ohms.front() + " ohms cold and hot");
      append(about, counted(hit.uses, "sender", "senders"));
      break;
    case FoundKind::line:
      if (const auto line = catalog::line(catalogue, catalog::LineKey(hit.id)))
        append(about, "model years " + plainSpan(line->years));
      append(about, counted(hit.uses, "sender fitted new", "senders fitted new"));
      break;
    case FoundKind::engine:
      append(about, counted(hit.uses, "casting", "castings"));
      break;
    default:
      break;
  }
  return about;
}

std::string whyOf(const catalog::SearchHit& hit) {
  const std::string field(catalog::text(hit.field));
  switch (hit.how) {
    case MatchedHow::exactly:
      return hit.field == SearchField::number ? field : fmt::format("{} {}", field, hit.matched);
    case MatchedHow::beginning:
      return hit.field == SearchField::number ? "number begins so" : fmt::format("{} {}", field, hit.matched);
    case MatchedHow::words:
    case MatchedHow::wordBeginnings:
      return fmt::format("{} {}", field, hit.matched);
    case MatchedHow::inside:
      return fmt::format("inside the {} {}", field, hit.matched);
    case MatchedHow::oneLetterOff:
      return fmt::format("one letter off: {} {}", field, hit.matched);
    case MatchedHow::twoLettersOff:
      return fmt::format("two letters off: {} {}", field, hit.matched);
  }
  return field;
}

}  // namespace

struct Finder::Work {
  explicit Work(const catalog::Catalogue& c) : catalogue(c), search(c) {}
  const catalog::Catalogue& catalogue;
  catalog::Search search;

  Found found(const catalog::SearchHit& hit, const std::string& typed) const {
    Found one;
    one.kind = hit.kind;
    one.id = hit.id;
    const bool off = hit.how >= MatchedHow::oneLetterOff;
    const auto marked = [&](std::string text) {
      auto spans = off ? std::vector<catalog::MatchedSpan>() : catalog::spansIn(typed, text);
      return Marked{std::move(text), std::move(spans)};
    };
    one.number = marked(hit.id);
    one.title = marked(titleOf(hit));
    one.how = hit.how;
    one.field = hit.field;
    one.matched = {hit.matched, hit.spans};
    one.why = whyOf(hit);
    one.uses = hit.uses;
    if (hit.kind == FoundKind::sender) {
      for (const auto& bin : catalog::stock(catalogue, catalog::SenderKey(hit.id))) one.inStock += bin.quantity;
      one.leadsTo = leadsTo(catalogue, hit.id);
    }
    one.about = aboutOf(catalogue, hit, one.inStock);
    return one;
  }
};

Finder::Finder(const catalog::Catalogue& catalogue) : work_(std::make_unique<Work>(catalogue)) {}
Finder::~Finder() = default;
Finder::Finder(Finder&&) noexcept = default;
Finder& Finder::operator=(Finder&&) noexcept = default;

Expected<FindAnswer> Finder::find(const FindQuestion& question, const std::stop_token& stop) {
  if (question.limit < 1 || question.limit > kMostAsked)
    return refuse("limit-out-of-range", "limit", fmt::format("{}", question.limit), "1 to 1,000");
  Place from;
  catalog::SearchWish wish{question.text, question.kinds, question.limit, {}};
  if (!question.after.empty()) {
    auto place = readPlace(question.after);
    if (!place) return refuse("place-unreadable", "after", question.after, "what a list before it gave as its next");
    from = *std::move(place);
    wish.after = from.at;
  }
  const catalog::SearchAnswer searched = work_->search.find(wish, stop);
  FindAnswer answer;
  answer.total = searched.total;
  for (const catalog::SearchHit& hit : searched.hits) {
    if (stop.stop_requested()) break;
    answer.found.push_back(work_->found(hit, question.text));
    answer.found.back().rank = from.shown + answer.found.size();
  }
  if (searched.stopped || stop.stop_requested())
    return refuse("cancelled", {}, "a search that was stopped", "it to be asked again");
  if (searched.next) answer.next = written({*searched.next, from.shown + answer.found.size()});
  if (work_->search.basis() == catalog::SearchBasis::scan)
    answer.findings.push_back({"search-scans", Severity::note,
                               "This catalogue has no index for searching and cannot be written here, so every row is "
                               "looked at: slower, and just as complete.",
                               work_->catalogue.file().filename().string(), "the catalogue"});
  if (answer.total == 0 && question.text.find_first_not_of(" \t\r\n") != std::string::npos)
    answer.findings.push_back({"search-nothing", Severity::note,
                               "Nothing of that name or number, nor anything a letter or two away from it.",
                               "the catalogue's numbers, names and words", "the catalogue"});
  return answer;
}

std::optional<FoundKind> foundKindNamed(std::string_view word) {
  std::string plain(word);
  std::replace(plain.begin(), plain.end(), '-', ' ');
  if (plain == "line") return FoundKind::line;
  if (plain == "terminal") return FoundKind::terminal;
  for (std::size_t k = 0; k < catalog::kThingKinds; ++k)
    if (plain == catalog::text(static_cast<FoundKind>(k))) return static_cast<FoundKind>(k);
  return std::nullopt;
}

}  // namespace ohmkin::workflow
