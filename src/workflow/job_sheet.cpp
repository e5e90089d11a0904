#include <fmt/format.h>
#include <sheet/job_sheet.h>
#include <workflow/document_values.h>
#include <workflow/job_sheet.h>
#include <workflow/job_work.h>
#include <algorithm>
#include <set>

namespace ohmkin::workflow {
namespace {

using documents::Json;
using documents::textOf;

constexpr std::size_t kMostRows = 15;
constexpr std::size_t kMostSources = 8;

const Json* memberOf(const Json& json, const char* key) {
  return json.is_object() && json.contains(key) ? &json[key] : nullptr;
}

std::optional<double> numberOf(const Json& json, const char* key) {
  const Json* value = memberOf(json, key);
  if (value == nullptr || !value->is_number()) return {};
  return value->get<double>();
}

/// The one that was fitted, else the recommended one, of the likeliest branch of a kept answer; null where there is
/// none.
const Json* senderOf(const Json& answer, const std::string& fitted) {
  const Json* branches = memberOf(answer, "branches");
  if (branches == nullptr || !branches->is_array() || branches->empty()) return nullptr;
  const Json* senders = memberOf(branches->front(), "senders");
  if (senders == nullptr || !senders->is_array()) return nullptr;
  for (const Json& sender : *senders) {
    const Json* recommended = memberOf(sender, "recommended");
    const bool chosen =
        fitted.empty() ? recommended != nullptr && *recommended == Json(true) : textOf(sender, "part") == fitted;
    if (chosen) return &sender;
  }
  return nullptr;
}

void takeCard(const Json& sender, const DisplayUnits& units, sheet::JobSheet& made) {
  const Json* table = memberOf(sender, "errors");
  if (const Json* trim = memberOf(sender, "trim");
      trim != nullptr && textOf(sender, "rank").find("trim") != std::string::npos)
    if (const Json* after = memberOf(*trim, "after")) table = after;
  const Json* rows = table == nullptr ? nullptr : memberOf(*table, "rows");
  if (rows == nullptr || !rows->is_array()) return;
  const std::size_t stride = rows->size() / kMostRows + 1;
  for (std::size_t i = 0; i < rows->size(); i += stride) {
    const Json& row = (*rows)[i];
    const Json* indicated = memberOf(row, "indicated");
    const auto truth = numberOf(row, "true_c");
    const auto error = numberOf(row, "error_k");
    const auto shown = indicated == nullptr ? std::nullopt : numberOf(*indicated, "shown_c");
    if (!truth || !error || !shown) continue;
    const std::string where = textOf(*indicated, "where");
    const bool onMarks = where == "on-the-marks";
    made.card.push_back({print(celsius(*truth), units),
                         onMarks                      ? print(celsius(*shown), units)
                         : where == "below-the-marks" ? std::string("below the first mark")
                                                      : std::string("past the last mark"),
                         onMarks ? printDifference(kelvins(*error), units) : std::string("–")});
  }
}

void takeSources(const Json& json, std::set<std::string>& sources) {
  const Json* findings = memberOf(json, "findings");
  if (findings == nullptr || !findings->is_array()) return;
  for (const Json& finding : *findings) {
    const std::string source = textOf(finding, "source");
    if (!source.empty() && sources.size() < kMostSources) sources.insert(source);
  }
}

const KeptDocument* newestMatch(const JobView& view) {
  const KeptDocument* newest = nullptr;
  for (const KeptDocument& document : view.documents)
    if (document.kept.kind == catalog::DocumentKind::match) newest = &document;
  return newest;
}

void takeAnswer(const KeptDocument& kept, const DisplayUnits& units, sheet::JobSheet& made) {
  const Json answer = Json::parse(kept.kept.document, nullptr, false);
  std::set<std::string> sources;
  if (const Json* cautions = memberOf(answer, "cautions"); cautions != nullptr && cautions->is_array())
    for (const Json& caution : *cautions)
      if (caution.is_string()) made.cautions.push_back(caution.get<std::string>());
  if (const Json* sender = senderOf(answer, made.fitted)) {
    made.needle = textOf(*sender, "sentence");
    takeCard(*sender, units, made);
    takeSources(*sender, sources);
  }
  made.sources.assign(sources.begin(), sources.end());
  made.notes.push_back(fmt::format("Answered on {}{}.", kept.kept.made.substr(0, 10),
                                   kept.asWritten ? "" : "; what was kept of it was altered since"));
}

/// The offset card of the part, where today's answer still says the same.
void addCard(const catalog::Catalogue& catalogue, catalog::JobNumber id, const KeptDocument& kept,
             const std::string& part, const SheetOptions& options, sheet::JobSheet& made, sheet::Pages& card) {
  const auto again = answerAgain(catalogue, id, kept.kept.ordinal, {{}, options.units});
  if (!again) return;
  if (again->differs) {
    made.notes.emplace_back("The catalogue says something else today; this sheet says what was answered then.");
    return;
  }
  for (const Branch& branch : again->now->branches) {
    for (const Candidate& candidate : branch.ranked) {
      if (candidate.part != part || candidate.rank == pairing::Rank::trimmedWithinLimits) continue;
      if (const auto dial = dialOfCandidate(*again->now, branch, candidate, options.units))
        card = offsetCardSheet(*dial, options);
      return;
    }
  }
}

}  // namespace

Expected<sheet::Pages> jobSheet(const catalog::Catalogue& catalogue, catalog::JobNumber id,
                                const SheetOptions& options) {
  const auto view = jobView(catalogue, id);
  if (!view) return tl::make_unexpected(view.error());
  const catalog::JobFields& said = view->job.said;
  sheet::JobSheet made;
  made.number = fmt::format("Job {}", id.value);
  made.reference = said.reference;
  made.date = plainDate(options.day);
  const std::pair<const char*, const std::string*> asked[] = {
      {"Vehicle", &said.vehicle}, {"Engine", &said.engine}, {"What was seen", &said.seen}};
  for (const auto& [name, value] : asked)
    if (!value->empty()) made.asked.emplace_back(name, *value);
  made.fitted = said.part;
  sheet::Pages card;
  if (const KeptDocument* kept = newestMatch(*view)) {
    takeAnswer(*kept, options.units, made);
    if (made.fitted.empty() && !kept->kept.part.empty()) made.notes.push_back("Recommended: " + kept->kept.part + ".");
    addCard(catalogue, id, *kept, made.fitted.empty() ? kept->kept.part : made.fitted, options, made, card);
  }
  if (!view->causeWords.empty()) made.notes.push_back("What was the matter: " + view->causeWords + ".");
  if (made.cautions.empty())
    made.cautions = {
        "Let the engine cool before you open anything; coolant under pressure scalds.",
        "The gauge is an aid. Prove it against a thermometer. Local codes and licensed practice come first."};
  made.following = card.size();
  sheet::Pages pages = sheet::drawJobSheet(made, options.paper);
  pages.insert(pages.end(), card.begin(), card.end());
  return pages;
}

}  // namespace ohmkin::workflow
