#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/search_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/find.h>
#include <charconv>
#include <limits>
#include <ostream>

namespace ohmkin::cli {
namespace {

Expected<workflow::FindQuestion> questionGiven(const Arguments& arguments) {
  workflow::FindQuestion question;
  question.text = fmt::format("{}", fmt::join(arguments.words, " "));
  for (const std::string& word : arguments.all("--kind")) {
    const auto kind = workflow::foundKindNamed(word);
    if (!kind)
      return refuse("kind-unknown", "--kind", "'" + word + "'",
                    "sender, gauge, family, line, cluster, casting, engine, make, thread, connector, adapter, pigtail "
                    "or date-layout");
    question.kinds.push_back(*kind);
  }
  if (arguments.has("--limit")) {
    const std::string given = arguments.one("--limit");
    const auto [end, error] = std::from_chars(given.data(), given.data() + given.size(), question.limit);
    if (error != std::errc{} || end != given.data() + given.size())
      return refuse("limit-out-of-range", "--limit", "'" + given + "'", "1 to 1,000");
  }
  question.after = arguments.one("--after");
  return question;
}

Json json(const workflow::Marked& marked) {
  Json spans = Json::array();
  for (const auto& span : marked.spans) spans.push_back({span.begin, span.length});
  return {{"text", marked.text}, {"spans", std::move(spans)}};
}

Json json(const workflow::Found& found) {
  Json one{{"rank", found.rank},
           {"kind", catalog::text(found.kind)},
           {"id", found.id},
           {"title", found.title.text},
           {"about", found.about},
           {"how", catalog::text(found.how)},
           {"field", catalog::text(found.field)},
           {"matched", json(found.matched)},
           {"why", found.why},
           {"in_stock", found.inStock},
           {"uses", found.uses},
           {"leads_to", nullptr}};
  if (found.leadsTo)
    one["leads_to"] = {{"parts", found.leadsTo->parts},
                       {"through", found.leadsTo->through},
                       {"circle", found.leadsTo->circle},
                       {"sentence", found.leadsTo->sentence}};
  return one;
}

void printText(const workflow::FindAnswer& answer, std::ostream& out) {
  for (const workflow::Found& found : answer.found) {
    std::string head = fmt::format("{:<14}{:<20}{}", catalog::text(found.kind), found.id, found.title.text);
    out << wrapped(head + "  [" + found.why + "]", 34, 0);
    if (!found.about.empty()) out << wrapped(found.about, 34, 34);
    if (found.leadsTo) out << wrapped(found.leadsTo->sentence, 34, 34);
  }
  if (!answer.next.empty())
    out << fmt::format("{} of {}; --limit shows more, --kind fewer.\n", answer.found.size(), answer.total);
  for (const Finding& finding : answer.findings) out << wrapped(finding.sentence, 0, 0);
}

/// The use case names what it is asked; at the terminal they are options.
Refusal asOption(Refusal refusal) {
  for (const char* field : {"limit", "after"})
    if (refusal.where == field) refusal.where = std::string("--") + field;
  return refusal;
}

}  // namespace

const CommandSpec& SearchCommand::spec() const {
  static const CommandSpec spec{
      "search",
      "Finds anything in the catalogue: numbers in any punctuation, old numbers, lines, castings, connectors.",
      "TEXT…",
      "what to look for; beginnings, parts of numbers and a wrong letter will do",
      1,
      std::numeric_limits<std::size_t>::max(),
      withCommonOptions({{"--kind", "KIND", "only these: sender, gauge, line, casting, connector, …", true},
                         {"--limit", "N", "so many at most; otherwise 20"},
                         {"--after", "PLACE", "goes on where a list before ended: its \"next\" of --json"}}),
      "ohmkin search --catalog demo.ohmkin BR 2201"};
  return spec;
}

Expected<Exit> SearchCommand::run(const Arguments& arguments, Streams streams) const {
  const auto question = questionGiven(arguments);
  if (!question) return tl::make_unexpected(question.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  workflow::Finder finder(*catalogue);
  const auto answer = finder.find(*question);
  if (!answer) return tl::make_unexpected(asOption(answer.error()));
  if (arguments.has("--json")) {
    Json document = cli::document("ohmkin.search", 1);
    document["text"] = question->text;
    document["total"] = answer->total;
    document["found"] = Json::array();
    for (const auto& found : answer->found) document["found"].push_back(json(found));
    document["next"] = answer->next.empty() ? Json(nullptr) : Json(answer->next);
    document["findings"] = cli::json(answer->findings);
    streams.out << text(document);
  } else {
    printText(*answer, streams.out);
  }
  return answer->found.empty() ? Exit::noAnswer : Exit::answer;
}

}  // namespace ohmkin::cli
