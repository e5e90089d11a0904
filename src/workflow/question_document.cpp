#include <fmt/format.h>
#include <workflow/document_values.h>
#include <workflow/match_document.h>
#include <cmath>

namespace ohmkin::workflow {
namespace {

using documents::Json;

constexpr std::size_t kLargest = 64U << 10U;
constexpr std::string_view kSchema = "ohmkin.question";
constexpr std::size_t kMostReadings = 1000;

struct TextField {
  const char* key;
  std::string Question::*field;
};
constexpr TextField kTexts[] = {{"line", &Question::line},         {"cluster", &Question::cluster},
                                {"gauge", &Question::gauge},       {"engine", &Question::engine},
                                {"casting", &Question::casting},   {"casting_date", &Question::castingDate},
                                {"port", &Question::portThread},   {"port_location", &Question::portLocation},
                                {"terminal", &Question::terminal}, {"fitted", &Question::fitted}};
struct DateField {
  const char* key;
  std::optional<Date> Question::*field;
};
constexpr DateField kDates[] = {{"built", &Question::built}, {"engine_built", &Question::engineBuilt}};

Refusal unreadable(std::string where, std::string found, std::string expected) {
  return {"question-unreadable", std::move(where), std::move(found), std::move(expected)};
}

std::string brief(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace).substr(0, 60);
}

/// Two numbers of a list, finite.
std::optional<std::pair<double, double>> twoNumbers(const Json& list) {
  if (!list.is_array() || list.size() != 2 || !list[0].is_number() || !list[1].is_number()) return {};
  const std::pair both{list[0].get<double>(), list[1].get<double>()};
  if (!std::isfinite(both.first) || !std::isfinite(both.second) || both.first < -kZeroCelsius) return {};
  return both;
}

Expected<void> takeReadings(const Json& list, Question& question, const std::string& where) {
  if (!list.is_array() || list.size() > kMostReadings)
    return tl::make_unexpected(unreadable(where, brief(list), "a list of readings"));
  for (const Json& one : list) {
    const auto both = twoNumbers(one);
    if (!both || both->second <= 0) return tl::make_unexpected(unreadable(where, brief(one), "[°C, Ω]"));
    question.readings.emplace_back(celsius(both->first), ohms(both->second));
  }
  return {};
}

Expected<void> takeNumber(const std::string& key, const Json& value, Question& question, const std::string& where) {
  const bool year = key == "year";
  const double low = year ? 1900 : 0;
  const double high = year ? 2100 : 2'000'000'000;
  if (!value.is_number_integer() || value.get<double>() < low || value.get<double>() > high)
    return tl::make_unexpected(
        unreadable(where, brief(value), year ? "a model year of four digits" : "a whole number"));
  if (year) question.year = ModelYear{value.get<int>()};
  else question.serial = value.get<int>();
  return {};
}

Expected<void> take(const std::string& key, const Json& value, Question& question, const std::string& where) {
  for (const TextField& text : kTexts) {
    if (key != text.key) continue;
    if (!value.is_string()) return tl::make_unexpected(unreadable(where, brief(value), "a text"));
    question.*text.field = value.get<std::string>();
    return {};
  }
  for (const DateField& day : kDates) {
    if (key != day.key) continue;
    const auto date = parseDate(value.is_string() ? value.get<std::string>() : brief(value), where);
    if (!date) return tl::make_unexpected(date.error());
    question.*day.field = *date;
    return {};
  }
  if (key == "year" || key == "serial") return takeNumber(key, value, question, where);
  if (key == "readings") return takeReadings(value, question, where);
  if (key == "dash_original") {
    if (!value.is_boolean()) return tl::make_unexpected(unreadable(where, brief(value), "true or false"));
    question.dashOriginal = value.get<bool>();
    return {};
  }
  if (key == "band_c") {
    const auto both = twoNumbers(value);
    if (!both || both->first >= both->second)
      return tl::make_unexpected(unreadable(where, brief(value), "two temperatures, the lower first"));
    question.band = TemperatureSpan{celsius(both->first), celsius(both->second)};
    return {};
  }
  return tl::make_unexpected(unreadable(where, "a key this version does not know", "line, year, casting and the like"));
}

}  // namespace

std::string questionDocument(const Question& question) {
  Json out = documents::document(kSchema, 1);
  for (const TextField& text : kTexts)
    if (!(question.*text.field).empty()) out[text.key] = question.*text.field;
  for (const DateField& day : kDates)
    if (question.*day.field) out[day.key] = isoDate(*(question.*day.field));
  if (question.year) out["year"] = question.year->value;
  if (question.serial) out["serial"] = *question.serial;
  if (question.dashOriginal) out["dash_original"] = *question.dashOriginal;
  for (const auto& [at, read] : question.readings) out["readings"].push_back({inCelsius(at), inOhms(read)});
  if (question.band) out["band_c"] = {inCelsius(question.band->low), inCelsius(question.band->high)};
  return documents::text(out);
}

Expected<Question> readQuestionDocument(std::string_view text, std::string_view where) {
  const std::string file(where);
  if (text.size() > kLargest)
    return tl::make_unexpected(unreadable(file, fmt::format("{} bytes", text.size()), "a question, 64 KiB at most"));
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object() || json.value("schema", Json()) != kSchema)
    return tl::make_unexpected(unreadable(file, "no question", "\"schema\": \"ohmkin.question\""));
  if (json.value("version", Json()) != 1)
    return refuse("question-newer", file, "version " + brief(json.value("version", Json())), "version 1");
  Question question;
  for (const auto& [key, value] : json.items()) {
    if (key == "schema" || key == "version") continue;
    if (const auto taken = take(key, value, question, fmt::format("{}.{}", file, key)); !taken)
      return tl::make_unexpected(taken.error());
  }
  return question;
}

}  // namespace ohmkin::workflow
