#include <fmt/format.h>
#include <gauge/box_reading.h>
#include <workflow/movement_document.h>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

namespace ohmkin::workflow {
namespace {

using Json = nlohmann::ordered_json;
using gauge::Movement;

constexpr std::size_t kLargestDocument = 1U << 20U;
constexpr std::size_t kMostPoints = 1000;

Json coilLaw(const gauge::CrossedCoil& coil) {
  Json law{{"grounded_deg", coil.grounded.degrees}, {"sweep_deg", coil.sweep.degrees}, {"half_ohm", inOhms(coil.half)}};
  if (coil.feedCoil) law["feed_coil_ohm"] = inOhms(*coil.feedCoil);
  if (coil.groundCoil) law["ground_coil_ohm"] = inOhms(*coil.groundCoil);
  if (coil.magnet)
    law["return_magnet"] = {{"strength", coil.magnet->strength},
                            {"pull_deg", coil.magnet->pull.degrees},
                            {"weakening_ohm", inOhms(coil.magnet->weakening)}};
  return law;
}

Json benchLaw(const gauge::BenchPoints& bench) {
  Json points = Json::array();
  for (const auto& [u, needle] : bench.points)
    points.push_back(
        {{"ohm", u < 1 ? Json(inOhms(bench.scale) * u / (1 - u)) : Json("open")}, {"needle_deg", needle.degrees}});
  return {{"points", std::move(points)}};
}

/// The numbers of one object; the first that is missing or no number is remembered.
class Object {
 public:
  Object(const Json& json, std::string where) : json_(json), where_(std::move(where)) {}
  double number(const char* key) {
    const Json value = json_.value(key, Json());
    if (value.is_number()) return value.get<double>();
    if (!wrong_) wrong_ = Refusal{"movement-unreadable", where_ + "." + key, value.dump(), "a number"};
    return 0;
  }
  std::optional<Ohms> maybeOhms(const char* key) {
    if (!json_.contains(key)) return std::nullopt;
    return ohms(number(key));
  }
  [[nodiscard]] const std::optional<Refusal>& wrong() const { return wrong_; }

 private:
  const Json& json_;
  std::string where_;
  std::optional<Refusal> wrong_;
};

Expected<Movement> readCoil(const Json& law, const std::string& where) {
  Object numbers(law, where);
  gauge::CrossedCoil coil{{numbers.number("grounded_deg")},
                          {numbers.number("sweep_deg")},
                          ohms(numbers.number("half_ohm")),
                          numbers.maybeOhms("feed_coil_ohm"),
                          numbers.maybeOhms("ground_coil_ohm")};
  if (numbers.wrong()) return tl::make_unexpected(*numbers.wrong());
  if (const auto magnet = law.find("return_magnet"); magnet != law.end()) {
    if (!magnet->is_object())
      return refuse("movement-unreadable", where + ".return_magnet", magnet->dump(), "an object of three numbers");
    Object three(*magnet, where + ".return_magnet");
    coil.magnet =
        gauge::ReturnMagnet{three.number("strength"), {three.number("pull_deg")}, ohms(three.number("weakening_ohm"))};
    if (three.wrong()) return tl::make_unexpected(*three.wrong());
  }
  return coil;
}

Expected<Movement> readBimetal(const Json& law, const std::string& where) {
  Object numbers(law, where);
  gauge::Bimetal bimetal{{numbers.number("rest_deg")},
                         {numbers.number("grounded_deg")},
                         ohms(numbers.number("heater_ohm")),
                         volts(numbers.number("regulated_v"))};
  if (numbers.wrong()) return tl::make_unexpected(*numbers.wrong());
  return bimetal;
}

Expected<Movement> readPoints(const Json& law, const std::string& where) {
  const Json points = law.value("points", Json());
  if (!points.is_array() || points.size() > kMostPoints)
    return refuse("movement-unreadable", where + ".points", "no list of points", "four points or more, up to 1000");
  std::vector<gauge::BoxReading> readings;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::string here = fmt::format("{}.points[{}]", where, i);
    if (!points[i].is_object()) return refuse("movement-unreadable", here, points[i].dump(), "ohms and a needle angle");
    Object point(points[i], here);
    gauge::BoxReading reading;
    reading.box = points[i].value("ohm", Json()) == "open" ? ohms(std::numeric_limits<double>::infinity())
                                                           : ohms(point.number("ohm"));
    reading.needle = {point.number("needle_deg")};
    if (point.wrong()) return tl::make_unexpected(*point.wrong());
    readings.push_back(reading);
  }
  auto bench = gauge::benchPointsOf(readings);
  if (!bench) return tl::make_unexpected(bench.error());
  return std::move(*bench);
}

}  // namespace

std::string movementLaw(const Movement& movement) {
  if (const auto* coil = std::get_if<gauge::CrossedCoil>(&movement)) return coilLaw(*coil).dump();
  if (const auto* bench = std::get_if<gauge::BenchPoints>(&movement)) return benchLaw(*bench).dump();
  const auto& bimetal = std::get<gauge::Bimetal>(movement);
  return Json{{"rest_deg", bimetal.rest.degrees},
              {"grounded_deg", bimetal.grounded.degrees},
              {"heater_ohm", inOhms(bimetal.heater)},
              {"regulated_v", inVolts(bimetal.regulated)}}
      .dump();
}

Expected<Movement> readMovementDocument(std::string_view text, std::string_view where) {
  const std::string file(where);
  if (text.size() > kLargestDocument)
    return refuse("movement-unreadable", file, fmt::format("{} bytes", text.size()), "a movement, a few kilobytes");
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded() || !json.is_object())
    return refuse("movement-unreadable", file, "no JSON object", "what ohmkin movement --json writes");
  if (json.value("schema", Json()) != "ohmkin.movement")
    return refuse("movement-unreadable", file, "another kind of document", "\"schema\": \"ohmkin.movement\"");
  if (json.value("version", Json()) != 1)
    return refuse("movement-newer", file, "version " + json.value("version", Json()).dump(), "version 1");
  const Json kind = json.value("movement", Json());
  const Json law = json.value("law", Json());
  if (!law.is_object()) return refuse("movement-unreadable", file + ": law", law.dump(), "the movement's numbers");
  Expected<Movement> movement = kind == "crossed coil"   ? readCoil(law, file + ": law")
                                : kind == "bimetal"      ? readBimetal(law, file + ": law")
                                : kind == "bench points" ? readPoints(law, file + ": law")
                                                         : refuse("movement-unreadable", file + ": movement",
                                                                  kind.dump(), "crossed coil, bimetal or bench points");
  if (movement) movement = gauge::checked(*movement);
  if (movement) return movement;
  Refusal refusal = std::move(movement.error());
  if (refusal.where.find(file) == std::string::npos) refusal.where = file + ": " + refusal.where;
  return tl::make_unexpected(std::move(refusal));
}

}  // namespace ohmkin::workflow
