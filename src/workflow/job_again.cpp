#include <catalog/change_log.h>
#include <fmt/format.h>
#include <workflow/document_values.h>
#include <workflow/job_work.h>
#include <workflow/match_document.h>
#include <algorithm>
#include <cmath>
#include <set>

namespace ohmkin::workflow {
namespace {

using documents::Json;
using documents::textOf;

constexpr std::size_t kMostChanges = 200;
constexpr std::size_t kMostReasons = 12;

/// What of an answer is compared, out of its document: so that the kept one and today's are read alike.
struct Gist {
  std::string part;
  std::string verdict;
  std::string hot;
  std::optional<double> late;      ///< K
  std::set<std::string> findings;  ///< codes, in the branch and of the recommended sender
  std::set<std::string> names;     ///< part, family, gauge: what changes may be about
};

void takeFindings(const Json& json, std::set<std::string>& codes) {
  if (!json.is_object() || !json.contains("findings") || !json["findings"].is_array()) return;
  for (const Json& finding : json["findings"]) codes.insert(textOf(finding, "code"));
}

/// At the hot mark, in words: "1.8 K late".
void takeHot(const Json& table, Gist& gist) {
  if (!table.is_object() || !table.contains("hot_mark")) return;
  const Json& hot = table["hot_mark"];
  const auto number = [&](const char* key) {
    return hot.is_object() && hot.contains(key) && hot[key].is_number() ? hot[key].get<double>() : 0.0;
  };
  const std::string reaches = textOf(hot, "reaches");
  if (reaches == "yes") {
    gist.late = number("late_k");
    gist.hot = std::abs(*gist.late) < pairing::kOnTime
                   ? std::string("on time")
                   : fmt::format("{:.1f} K {}", std::abs(*gist.late), *gist.late > 0 ? "late" : "early");
  } else if (reaches == "never") {
    gist.hot = fmt::format("never reached, at least {:.1f} K late", number("at_least_late_k"));
  } else if (reaches == "past-already") {
    gist.hot = fmt::format("passed already, at least {:.1f} K early", number("at_least_early_k"));
  }
}

Gist gistOf(const Json& answer) {
  Gist gist;
  takeFindings(answer, gist.findings);
  if (!answer.is_object() || !answer.contains("branches") || !answer["branches"].is_array() ||
      answer["branches"].empty())
    return gist;
  const Json& branch = answer["branches"].front();
  takeFindings(branch, gist.findings);
  for (const char* key : {"gauge", "family"}) gist.names.insert(textOf(branch, key));
  if (!branch.is_object() || !branch.contains("senders") || !branch["senders"].is_array()) return gist;
  for (const Json& sender : branch["senders"]) {
    if (!sender.is_object() || !sender.contains("recommended") || sender["recommended"] != Json(true)) continue;
    gist.part = textOf(sender, "part");
    if (const auto lot = textOf(sender, "lot"); !lot.empty()) gist.part += ", lot " + lot;
    gist.verdict = textOf(sender, "sentence");
    gist.names.insert(textOf(sender, "part"));
    gist.names.insert(textOf(sender, "family"));
    takeFindings(sender, gist.findings);
    const bool trimmed = sender.contains("trim") && sender["trim"].is_object() && sender["trim"].contains("after") &&
                         textOf(sender, "rank").find("trim") != std::string::npos;
    takeHot(trimmed ? sender["trim"]["after"] : sender.value("errors", Json()), gist);
    break;
  }
  return gist;
}

std::string listOf(const std::set<std::string>& some, const std::set<std::string>& without) {
  std::string words;
  for (const std::string& one : some)
    if (!one.empty() && !without.contains(one)) words += (words.empty() ? "" : ", ") + one;
  return words;
}

void compare(const Gist& then, const Gist& now, AnsweredAgain& again) {
  const auto add = [&](const char* what, const std::string& was, const std::string& is, std::string sentence) {
    again.differences.push_back({what, was, is, std::move(sentence)});
  };
  const auto orNone = [](const std::string& part) { return part.empty() ? std::string("no sender") : part; };
  if (then.part != now.part)
    add("sender", then.part, now.part,
        fmt::format("Today {} is recommended; then it was {}.", orNone(now.part), orNone(then.part)));
  if (then.verdict != now.verdict)
    add("verdict", then.verdict, now.verdict,
        fmt::format("The verdict was: \"{}\" Today: \"{}\"", then.verdict, now.verdict));
  const bool hotDiffers =
      then.late && now.late ? std::abs(*then.late - *now.late) >= pairing::kOnTime : then.hot != now.hot;
  if (hotDiffers)
    add("hot mark", then.hot, now.hot,
        fmt::format("At the hot mark the needle was {}; today {}.", then.hot.empty() ? "not known" : then.hot,
                    now.hot.empty() ? "not known" : now.hot));
  if (then.findings != now.findings) {
    const std::string gone = listOf(then.findings, now.findings);
    const std::string come = listOf(now.findings, then.findings);
    add("findings", gone, come,
        fmt::format("{}{}{}", gone.empty() ? "" : "No longer found: " + gone + ".",
                    gone.empty() || come.empty() ? "" : " ", come.empty() ? "" : "Found today: " + come + "."));
  }
}

bool concerns(const catalog::ChangeLine& change, const std::set<std::string>& names) {
  if (change.what.starts_with("job ")) return false;
  if (change.what.find("pack") != std::string::npos || change.what.find("bench") != std::string::npos) return true;
  return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    return !name.empty() && change.subject.find(name) != std::string::npos;
  });
}

/// Changes since then that bear on it, where the log knows them.
std::vector<std::string> reasons(const catalog::Catalogue& catalogue, std::int64_t line,
                                 const std::set<std::string>& names, bool shelfSaid) {
  std::vector<std::string> all;
  for (const catalog::ChangeLine& change : catalog::changesSince(catalogue, line, kMostChanges)) {
    if (!concerns(change, names)) continue;
    if (all.size() == kMostReasons) {
      all.emplace_back("And more.");
      break;
    }
    all.push_back(
        fmt::format("{}: {}, on {} by {}.", change.subject, change.what, change.at.substr(0, 10), change.who));
  }
  if (shelfSaid) all.emplace_back("What is on the shelf changed.");
  return all;
}

bool speaksOfTheShelf(const AnsweredAgain& again) {
  return std::any_of(again.differences.begin(), again.differences.end(), [](const Difference& difference) {
    return difference.what == "verdict" &&
           (difference.then.find("shelf") == std::string::npos) != (difference.now.find("shelf") == std::string::npos);
  });
}

}  // namespace

Expected<AnsweredAgain> answerAgain(const catalog::Catalogue& catalogue, catalog::JobNumber id, int ordinal,
                                    const MatchOptions& options) {
  const std::string where = fmt::format("job {}", id.value);
  const auto all = catalog::documents(catalogue, id);
  const auto kept =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.ordinal == ordinal && !one.removed; });
  if (kept == all.end())
    return refuse("document-unknown", where, fmt::format("no document {}", ordinal), "one that it lists");
  if (kept->kind != catalog::DocumentKind::match || kept->question.empty())
    return refuse("document-not-asked-again", where, fmt::format("document {}, {}", ordinal, text(kept->kind)),
                  "a match kept with its question");
  const auto question = readQuestionDocument(kept->question, where);
  if (!question) return tl::make_unexpected(question.error());

  AnsweredAgain again;
  const Gist then = gistOf(Json::parse(kept->document, nullptr, false));
  auto answer = match(catalogue, *question, options);
  Gist now;
  if (!answer) {
    again.differences.push_back({"question", "answered", answer.error().sentence(),
                                 "Today it cannot be answered: " + answer.error().sentence() + "."});
  } else {
    again.nowDocument = matchDocument(*answer);
    now = gistOf(Json::parse(again.nowDocument, nullptr, false));
    compare(then, now, again);
    again.now = std::move(*answer);
  }
  again.differs = !again.differences.empty();
  if (!again.differs) {
    again.sentence = "Today's answer is the same.";
    return again;
  }
  again.sentence = again.differences.front().sentence;
  std::set<std::string> names = then.names;
  names.insert(now.names.begin(), now.names.end());
  again.because = reasons(catalogue, kept->logLine, names, speaksOfTheShelf(again));
  return again;
}

}  // namespace ohmkin::workflow
