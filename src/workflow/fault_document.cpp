#include <fmt/format.h>
#include <workflow/fault_document.h>
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

namespace ohmkin::workflow {
namespace {

using Json = nlohmann::ordered_json;

constexpr auto kSchema = "ohmkin.fault-session";
constexpr std::size_t kLargestDocument = 1U << 18U;
constexpr std::size_t kLongestList = 200;
constexpr std::size_t kLongestCode = 64;
constexpr std::size_t kLongestName = 200;
constexpr int kDeepest = 8;

bool isCode(std::string_view text) {
  return !text.empty() && text.size() <= kLongestCode && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
}

/// Nested deeper than any session is: told before anything is built from it.
bool tooDeep(std::string_view text) {
  int depth = 0;
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\\' && quoted) {
      ++i;
    } else if (text[i] == '"') {
      quoted = !quoted;
    } else if (!quoted && (text[i] == '[' || text[i] == '{')) {
      if (++depth > kDeepest) return true;
    } else if (!quoted && (text[i] == ']' || text[i] == '}')) {
      --depth;
    }
  }
  return false;
}

Json maybe(const std::optional<Ohms>& ohms) { return ohms ? Json(inOhms(*ohms)) : Json(); }

/// Reads one member after the other; the first that is wrong is remembered and the rest reads as nothing.
class Reader {
 public:
  explicit Reader(std::string where) : where_(std::move(where)) {}
  [[nodiscard]] const std::optional<Refusal>& wrong() const { return wrong_; }

  void refuse(const std::string& member, std::string found, std::string expected) {
    if (!wrong_)
      wrong_ = Refusal{"fault-session-unreadable", where_ + ": " + member, std::move(found), std::move(expected)};
  }
  std::string name(const Json& object, const char* key, const std::string& member) {
    const Json value = object.value(key, Json());
    if (value.is_null()) return {};
    if (!value.is_string() || value.get_ref<const std::string&>().size() > kLongestName) {
      refuse(member, shown(value), fmt::format("a name of at most {} bytes", kLongestName));
      return {};
    }
    return value.get<std::string>();
  }
  /// Empty where the member is null or missing.
  std::string code(const Json& object, const char* key, const std::string& member) {
    const Json value = object.value(key, Json());
    if (value.is_null()) return {};
    return codeIn(value, member);
  }
  std::string codeIn(const Json& value, const std::string& member) {
    if (value.is_string() && isCode(value.get_ref<const std::string&>())) return value.get<std::string>();
    refuse(member, shown(value), "a code of small letters, figures and hyphens");
    return {};
  }
  std::optional<double> number(const Json& object, const char* key, const std::string& member, double low,
                               double high) {
    const Json value = object.value(key, Json());
    if (value.is_null()) return std::nullopt;
    const double n = value.is_number() ? value.get<double>() : std::nan("");
    if (n >= low && n <= high) return n;
    refuse(member, shown(value), fmt::format("a number from {:g} to {:g}", low, high));
    return std::nullopt;
  }
  Json list(const Json& object, const char* key) {
    Json value = object.value(key, Json::array());
    if (value.is_array() && value.size() <= kLongestList) return value;
    refuse(key, value.is_array() ? fmt::format("{} entries", value.size()) : shown(value),
           fmt::format("a list of at most {}", kLongestList));
    return Json::array();
  }
  /// Codes, each once.
  std::vector<std::string> codes(const Json& object, const char* key) {
    std::vector<std::string> all;
    for (const Json& each : list(object, key)) {
      std::string code = codeIn(each, key);
      if (wrong_) break;
      if (std::find(all.begin(), all.end(), code) != all.end()) refuse(key, "'" + code + "' twice", "each once");
      all.push_back(std::move(code));
    }
    return all;
  }

 private:
  static std::string shown(const Json& value) {
    std::string text = value.dump(-1, ' ', true, Json::error_handler_t::replace);
    return text.size() > 60 ? text.substr(0, 57) + "…" : text;
  }
  std::string where_;
  std::optional<Refusal> wrong_;
};

FaultQuestion readQuestion(Reader& reader, const Json& json) {
  FaultQuestion question;
  const Json object = json.value("question", Json());
  if (!object.is_object()) {
    reader.refuse("question", "no object", "gauge, sender and what is known of them");
    return question;
  }
  question.gauge = reader.name(object, "gauge", "question.gauge");
  if (question.gauge.empty()) reader.refuse("question.gauge", "nothing", "a gauge or a resistance family");
  question.sender = reader.name(object, "sender", "question.sender");
  if (const auto t = reader.number(object, "running_c", "question.running_c", -50, 300)) question.running = celsius(*t);
  if (const auto v = reader.number(object, "supply_v", "question.supply_v", 0, 100)) question.supply = volts(*v);
  if (const auto r = reader.number(object, "feed_shunt_ohm", "question.feed_shunt_ohm", 0, 1e9))
    question.feedShunt = ohms(*r);
  if (const auto r = reader.number(object, "ground_shunt_ohm", "question.ground_shunt_ohm", 0, 1e9))
    question.groundShunt = ohms(*r);
  return question;
}

void readSeen(Reader& reader, const Json& json, FaultSession& session) {
  for (const Json& each : reader.list(json, "seen")) {
    if (!each.is_object()) {
      reader.refuse("seen", "an entry that is no object", "a test and what it showed");
      return;
    }
    FaultSession::Seen seen;
    seen.test = reader.codeIn(each.value("test", Json()), "seen.test");
    seen.outcome = reader.code(each, "outcome", "seen.outcome");
    const auto after =
        reader.number(each, "after_tried", "seen.after_tried", 0, static_cast<double>(session.tried.size()));
    seen.afterTried = static_cast<std::size_t>(after.value_or(0));
    if (reader.wrong()) return;
    if (std::any_of(session.seen.begin(), session.seen.end(),
                    [&](const FaultSession::Seen& s) { return s.test == seen.test; }))
      reader.refuse("seen", "'" + seen.test + "' twice", "each test once");
    session.seen.push_back(std::move(seen));
  }
}

Refusal unknown(std::string_view where, const char* what, const std::string& code) {
  return {"fault-session-unknown", std::string(where), fmt::format("the {} '{}'", what, code),
          fmt::format("a {} that this gauge's circuit has", what)};
}

}  // namespace

std::string faultDocument(const FaultSession& session) {
  Json json;
  json["schema"] = kSchema;
  json["version"] = 1;
  const FaultQuestion& q = session.question;
  json["question"] = {{"gauge", q.gauge},
                      {"sender", q.sender.empty() ? Json() : Json(q.sender)},
                      {"running_c", q.running ? Json(inCelsius(*q.running)) : Json()},
                      {"supply_v", q.supply ? Json(inVolts(*q.supply)) : Json()},
                      {"feed_shunt_ohm", maybe(q.feedShunt)},
                      {"ground_shunt_ohm", maybe(q.groundShunt)}};
  json["symptom"] = session.symptom ? Json(circuit::symptomCode(*session.symptom)) : Json();
  json["seen"] = Json::array();
  for (const FaultSession::Seen& seen : session.seen)
    json["seen"].push_back({{"test", seen.test},
                            {"outcome", seen.outcome.empty() ? Json() : Json(seen.outcome)},
                            {"after_tried", seen.afterTried}});
  json["paid"] = session.paid;
  json["tried"] = session.tried;
  json["helped"] = session.helped.empty() ? Json() : Json(session.helped);
  json["cause"] = session.cause.empty() ? Json() : Json(session.cause);
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

Expected<FaultSession> readFaultDocument(std::string_view text, std::string_view where) {
  const std::string file(where);
  const auto no = [&](std::string found, std::string expected) {
    return refuse("fault-session-unreadable", file, std::move(found), std::move(expected));
  };
  if (text.size() > kLargestDocument) return no(fmt::format("{} bytes", text.size()), "a search, a few kilobytes");
  if (tooDeep(text)) return no("lists within lists, too deep", "a search for a fault");
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object()) return no("no JSON object", "a search for a fault");
  if (json.value("schema", Json()) != kSchema)
    return no("another kind of document", fmt::format("\"schema\": \"{}\"", kSchema));
  if (json.value("version", Json()) != 1)
    return refuse("fault-session-newer", file, "version " + json.value("version", Json()).dump().substr(0, 20),
                  "version 1");
  Reader reader(file);
  FaultSession session;
  session.question = readQuestion(reader, json);
  if (const std::string symptom = reader.code(json, "symptom", "symptom"); !symptom.empty()) {
    session.symptom = circuit::symptomOf(symptom);
    if (!session.symptom) reader.refuse("symptom", "'" + symptom + "'", "low, pegged, high, erratic, lamps or any");
  }
  session.paid = reader.codes(json, "paid");
  session.tried = reader.codes(json, "tried");
  readSeen(reader, json, session);
  session.helped = reader.code(json, "helped", "helped");
  session.cause = reader.code(json, "cause", "cause");
  if (std::find(session.tried.begin(), session.tried.end(), session.helped) != session.tried.end())
    reader.refuse("helped", "'" + session.helped + "'", "a repair that is not among those that did not help");
  if (reader.wrong()) return tl::make_unexpected(*reader.wrong());
  return session;
}

Expected<std::vector<circuit::Answer>> answersOf(const FaultFinder& finder, const FaultSession& session,
                                                 std::string_view where) {
  const circuit::TestBook& book = finder.predictions().tests();
  std::vector<circuit::Answer> answers;
  for (const FaultSession::Seen& seen : session.seen) {
    const auto test = book.testWith(seen.test);
    if (!test) return tl::make_unexpected(unknown(where, "test", seen.test));
    circuit::Answer answer{*test, std::nullopt, seen.afterTried};
    if (!seen.outcome.empty()) {
      const auto& outcomes = book.tests[*test].outcomes;
      const auto found = std::find(outcomes.begin(), outcomes.end(), seen.outcome);
      if (found == outcomes.end()) return tl::make_unexpected(unknown(where, "result", seen.outcome));
      answer.outcome = static_cast<std::size_t>(found - outcomes.begin());
    }
    answers.push_back(answer);
  }
  for (const std::string& paid : session.paid)
    if (std::none_of(book.setups.begin(), book.setups.end(), [&](const auto& s) { return s.code == paid; }))
      return tl::make_unexpected(unknown(where, "set-up", paid));
  return answers;
}

Expected<std::vector<std::size_t>> triedOf(const FaultFinder& finder, const FaultSession& session,
                                           std::string_view where) {
  const circuit::FaultBook& book = finder.predictions().faults();
  const auto repair = [&](const std::string& code) {
    return std::find_if(book.repairs.begin(), book.repairs.end(), [&](const auto& r) { return r.code == code; });
  };
  std::vector<std::size_t> tried;
  for (const std::string& code : session.tried) {
    const auto found = repair(code);
    if (found == book.repairs.end()) return tl::make_unexpected(unknown(where, "repair", code));
    tried.push_back(static_cast<std::size_t>(found - book.repairs.begin()));
  }
  if (!session.helped.empty() && repair(session.helped) == book.repairs.end())
    return tl::make_unexpected(unknown(where, "repair", session.helped));
  if (!session.cause.empty() && !book.faultWith(session.cause))
    return tl::make_unexpected(unknown(where, "cause", session.cause));
  return tried;
}

std::size_t leaveOutUnknown(const FaultFinder& finder, FaultSession& session) {
  const circuit::TestBook& tests = finder.predictions().tests();
  const circuit::FaultBook& faults = finder.predictions().faults();
  const auto isTest = [&](const FaultSession::Seen& seen) {
    const auto test = tests.testWith(seen.test);
    if (!test || seen.outcome.empty()) return test.has_value();
    const auto& outcomes = tests.tests[*test].outcomes;
    return std::find(outcomes.begin(), outcomes.end(), seen.outcome) != outcomes.end();
  };
  const auto isSetup = [&](const std::string& code) {
    return std::any_of(tests.setups.begin(), tests.setups.end(), [&](const auto& s) { return s.code == code; });
  };
  const auto isRepair = [&](const std::string& code) {
    return std::any_of(faults.repairs.begin(), faults.repairs.end(), [&](const auto& r) { return r.code == code; });
  };
  std::size_t leftOut = std::erase_if(session.seen, [&](const auto& seen) { return !isTest(seen); });
  leftOut += std::erase_if(session.paid, [&](const auto& code) { return !isSetup(code); });
  leftOut += std::erase_if(session.tried, [&](const auto& code) { return !isRepair(code); });
  for (FaultSession::Seen& seen : session.seen) seen.afterTried = std::min(seen.afterTried, session.tried.size());
  const auto clear = [&](std::string& code, bool known) {
    if (code.empty() || known) return;
    code.clear();
    ++leftOut;
  };
  clear(session.helped, isRepair(session.helped));
  clear(session.cause, faults.faultWith(session.cause).has_value());
  return leftOut;
}

Expected<FaultAnswer> answerOf(const FaultFinder& finder, const FaultSession& session, std::string_view where) {
  const auto answers = answersOf(finder, session, where);
  if (!answers) return tl::make_unexpected(answers.error());
  const auto tried = triedOf(finder, session, where);
  if (!tried) return tl::make_unexpected(tried.error());
  return finder.answer(session.symptom.value_or(circuit::Symptom::any), *answers, session.paid, *tried);
}

}  // namespace ohmkin::workflow
