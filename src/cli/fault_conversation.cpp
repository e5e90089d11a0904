#include <cli/fault_conversation.h>
#include <cli/fault_words.h>
#include <fmt/format.h>
#include <algorithm>
#include <istream>
#include <ostream>

namespace ohmkin::cli {
namespace {

const circuit::TradeTest* testNamed(const FaultSearch& search, const std::string& code) {
  const circuit::TestBook& book = search.finder.predictions().tests();
  const auto at = book.testWith(code);
  return at ? &book.tests[*at] : nullptr;
}

/// What was answered, in order, and the repairs made between.
std::string listed(const FaultSearch& search) {
  std::string text;
  const auto& session = search.session;
  const auto repairs = [&](std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < std::min(to, session.tried.size()); ++i)
      text += fmt::format("  {} did not help\n", session.tried[i]);
  };
  std::size_t made = 0;
  for (const auto& seen : session.seen) {
    repairs(made, seen.afterTried);
    made = std::max(made, seen.afterTried);
    const circuit::TradeTest* test = testNamed(search, seen.test);
    text += fmt::format("  {}={:<12} {}\n", seen.test, seen.outcome.empty() ? "unsure" : seen.outcome,
                        test == nullptr ? "" : test->title);
  }
  repairs(made, session.tried.size());
  return text.empty() ? "  Nothing was answered yet.\n" : text;
}

/// The last thing said: a repair that did not help, or an answer.
void goBack(workflow::FaultSession& session) {
  const bool repairLast =
      !session.tried.empty() && (session.seen.empty() || session.seen.back().afterTried < session.tried.size());
  if (repairLast) session.tried.pop_back();
  else if (!session.seen.empty()) session.seen.pop_back();
}

/// Said at any time. True where the line was one of them.
bool atAnyTime(FaultSearch& search, const std::string& line, Streams streams) {
  if (line.empty() || line == "back" || line == "undo") goBack(search.session);
  else if (line == "list") streams.out << listed(search) << "\n";
  else if (line.starts_with("drop ")) {
    const std::string code = line.substr(5);
    const auto taken = std::erase_if(search.session.seen, [&](const auto& s) { return s.test == code; });
    if (taken == 0) streams.err << fmt::format("'{}' was not answered; list shows what was\n", code);
  } else return false;
  return true;
}

Expected<void> takeAnswer(FaultSearch& search, const std::string& line, const std::string& asked) {
  return answer(search, line.find('=') != std::string::npos ? line : asked + "=" + line, "answer");
}

/// The repair was proposed and made: yes, or it is one of those tried. True where that ends the search.
bool takeOutcome(FaultSearch& search, const std::string& line, const std::string& repair, Streams streams) {
  if (line == "yes" || line == "y") {
    search.session.helped = repair;
    streams.out << "Good. Prove it against a thermometer before you trust the needle.\n";
    return true;
  }
  if (line == "no" || line == "n") {
    auto& tried = search.session.tried;
    if (std::find(tried.begin(), tried.end(), repair) == tried.end()) tried.push_back(repair);
    return false;
  }
  if (const auto taken = takeAnswer(search, line, ""); !taken) streams.err << taken.error().sentence() << "\n";
  return false;
}

}  // namespace

Expected<Exit> converse(FaultSearch search, std::istream& in, Streams streams) {
  constexpr std::string_view kAlways = "back, list, drop TEST, or TEST=RESULT to add or change";
  for (;;) {
    if (const auto kept = keep(search); !kept) return tl::make_unexpected(kept.error());
    const auto now = workflow::answerOf(search.finder, search.session, "session");
    if (!now) return tl::make_unexpected(now.error());
    const auto& conclusion = now->conclusion;
    streams.out << faultText(search.finder, search.session.symptom.value_or(circuit::Symptom::any), *now);
    const std::string repair = search.finder.predictions().faults().repairs[conclusion.repair].code;
    const bool triedAlready =
        std::find(search.session.tried.begin(), search.session.tried.end(), repair) != search.session.tried.end();
    if (!conclusion.next && triedAlready) return Exit::noAnswer;  // nothing is left to ask or to mend
    const std::string asked =
        conclusion.next ? search.finder.predictions().tests().tests[conclusion.next->test].code : "";
    streams.out << (conclusion.next ? fmt::format("\nResult; {}: ", kAlways)
                                    : fmt::format("\nDid the repair help? yes or no; {}: ", kAlways))
                << std::flush;
    std::string line;
    if (!std::getline(in, line)) return conclusion.settled ? Exit::answer : Exit::noAnswer;
    streams.out << "\n";
    if (atAnyTime(search, line, streams)) continue;
    if (!conclusion.next) {
      if (!takeOutcome(search, line, repair, streams)) continue;
      if (const auto kept = keep(search); !kept) return tl::make_unexpected(kept.error());
      return Exit::answer;
    }
    if (const auto taken = takeAnswer(search, line, asked); !taken) streams.err << taken.error().sentence() << "\n";
  }
}

}  // namespace ohmkin::cli
