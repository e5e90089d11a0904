#include <fmt/format.h>
#include <workflow/plan.h>
#include <nlohmann/json.hpp>

namespace ohmkin::workflow {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kLargestDocument = 1U << 20U;
constexpr std::string_view kSchema = "ohmkin.plan";

struct TextField {
  const char* key;
  std::string Question::*field;
};
constexpr TextField kTexts[] = {{"line", &Question::line},        {"cluster", &Question::cluster},
                                {"gauge", &Question::gauge},      {"engine", &Question::engine},
                                {"casting", &Question::casting},  {"casting_date", &Question::castingDate},
                                {"port", &Question::portThread},  {"port_location", &Question::portLocation},
                                {"terminal", &Question::terminal}};
struct DateField {
  const char* key;
  std::optional<Date> Question::*field;
};
constexpr DateField kDates[] = {{"built", &Question::built}, {"engine_built", &Question::engineBuilt}};

Json write(const Question& question) {
  Json out = Json::object();
  for (const TextField& text : kTexts) {
    if (!(question.*text.field).empty()) out[text.key] = question.*text.field;
  }
  for (const DateField& day : kDates) {
    if (question.*day.field) out[day.key] = isoDate(*(question.*day.field));
  }
  if (question.year) out["year"] = question.year->value;
  return out;
}

Expected<Question> read(const Json& json, const std::string& where) {
  if (!json.is_object()) return refuse("plan-unreadable", where, "no object", "an object of what is known");
  Question question;
  for (const auto& [key, value] : json.items()) {
    const std::string here = fmt::format("{}.{}", where, key);
    bool known = false;
    for (const TextField& text : kTexts) {
      if (key != text.key) continue;
      if (!value.is_string()) return refuse("plan-unreadable", here, value.dump(), "a text");
      question.*text.field = value.get<std::string>();
      known = true;
    }
    for (const DateField& day : kDates) {
      if (key != day.key) continue;
      const auto date = parseDate(value.is_string() ? value.get<std::string>() : value.dump(), here);
      if (!date) return tl::make_unexpected(date.error());
      question.*day.field = *date;
      known = true;
    }
    if (key == "year") {
      if (!value.is_number_integer() || value.get<long>() < 1900 || value.get<long>() > 2100)
        return refuse("plan-unreadable", here, value.dump(), "a model year of four digits");
      question.year = ModelYear{value.get<int>()};
      known = true;
    }
    if (!known)
      return refuse("plan-unreadable", here, "a key this version does not know",
                    "line, year, cluster, casting and the like");
  }
  return question;
}

}  // namespace

std::string planDocument(const PlanQuestion& question) {
  Json out{{"schema", kSchema}, {"version", 1}, {"dashes", Json::array()}, {"engines", Json::array()}};
  for (const Question& dash : question.dashes) out["dashes"].push_back(write(dash));
  for (const Question& engine : question.engines) out["engines"].push_back(write(engine));
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Expected<PlanQuestion> readPlanDocument(std::string_view text, std::string_view where) {
  const std::string file(where);
  if (text.size() > kLargestDocument)
    return refuse("plan-unreadable", file, fmt::format("{} bytes", text.size()), "a plan, a few kilobytes at most");
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object())
    return refuse("plan-unreadable", file, "no JSON object", "a plan written by ohmkin plan --save");
  if (json.value("schema", Json()) != kSchema)
    return refuse("plan-unreadable", file, "another kind of document", "\"schema\": \"ohmkin.plan\"");
  if (json.value("version", Json()) != 1)
    return refuse("plan-newer", file, "version " + json.value("version", Json()).dump(), "version 1");
  PlanQuestion question;
  for (const auto& [key, side] : {std::pair{"dashes", &question.dashes}, std::pair{"engines", &question.engines}}) {
    const Json list = json.value(key, Json());
    if (!list.is_array())
      return refuse("plan-unreadable", file, fmt::format("no list of {}", key), fmt::format("\"{}\": […]", key));
    for (std::size_t i = 0; i < list.size(); ++i) {
      auto one = read(list[i], fmt::format("{}: {}[{}]", file, key, i));
      if (!one) return tl::make_unexpected(one.error());
      side->push_back(std::move(*one));
    }
  }
  return question;
}

}  // namespace ohmkin::workflow
