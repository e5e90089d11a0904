#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/print_request.h>
#include <cli/stock_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <quantity/parse.h>
#include <workflow/job_work.h>
#include <workflow/stock_label.h>
#include <workflow/stock_work.h>
#include <cmath>
#include <ostream>

namespace ohmkin::cli {
namespace {

Json json(const workflow::PartOnShelf& part) {
  Json bins = Json::array();
  for (const auto& bin : part.bins)
    bins.push_back({{"bin", bin.bin}, {"quantity", bin.quantity}, {"minimum", bin.minimum}});
  return {{"part", part.part},       {"name", part.name}, {"in_catalogue", part.known}, {"quantity", part.quantity},
          {"minimum", part.minimum}, {"low", part.low()}, {"bins", std::move(bins)}};
}

Json json(const catalog::StockMovement& m) {
  Json out{{"id", m.id.value},        {"at", m.at},    {"who", m.who},       {"kind", catalog::text(m.kind)},
           {"part", m.sender.text},   {"bin", m.bin},  {"change", m.change}, {"left_in_bin", m.leftInBin},
           {"other_bin", m.otherBin}, {"note", m.note}};
  out["job"] = m.job ? Json(m.job->value) : Json();
  out["undoes"] = m.undoes ? Json(m.undoes->value) : Json();
  out["undone_by"] = m.undoneBy ? Json(m.undoneBy->value) : Json();
  return out;
}

Expected<int> pieces(const std::string& text, const std::string& where) {
  const auto number = parseNumber(text, where);
  if (!number || *number != std::floor(*number) || std::abs(*number) > catalog::kMostPieces)
    return refuse("quantity-unreadable", where, fmt::format("'{}'", text),
                  fmt::format("a whole number, at most {}", catalog::kMostPieces));
  return static_cast<int>(*number);
}

Expected<workflow::MovementSaid> saidOf(const Arguments& given) {
  workflow::MovementSaid said{whoIsAsking(given), given.one("--note"), {}};
  if (!given.has("--job")) return said;
  const auto job = workflow::readJobNumber(given.one("--job"), "--job");
  if (!job) return tl::make_unexpected(job.error());
  said.job = *job;
  return said;
}

Exit shown(const std::vector<workflow::PartOnShelf>& parts, const Arguments& given, Streams streams) {
  if (given.has("--json")) {
    Json out = document("ohmkin.stock", 1);
    out["parts"] = Json::array();
    for (const auto& part : parts) out["parts"].push_back(json(part));
    streams.out << text(out);
  } else {
    for (const auto& part : parts) streams.out << wrapped(part.sentence(), 2, 0);
    if (parts.empty()) streams.out << "Nothing.\n";
  }
  return parts.empty() ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> done(const Expected<workflow::MovementDone>& made, const Arguments& given, Streams streams) {
  if (!made) return tl::make_unexpected(made.error());
  if (given.has("--json")) {
    Json out = document("ohmkin.stock-movement", 1);
    out["movement"] = json(made->movement);
    out["after"] = json(made->after);
    streams.out << text(out);
  } else {
    streams.out << wrapped(made->sentence, 2, 0) << fmt::format("Movement {}.\n", made->movement.id.value);
  }
  return Exit::answer;
}

Expected<Exit> show(const Arguments& given, const catalog::Catalogue& catalogue, Streams streams) {
  if (given.words.size() < 2) return shown(workflow::shelf(catalogue), given, streams);
  const auto part = workflow::onShelf(catalogue, given.words[1]);
  if (!part) return tl::make_unexpected(part.error());
  return shown({*part}, given, streams);
}

Expected<Exit> history(const Arguments& given, const catalog::Catalogue& catalogue, Streams streams) {
  const auto all = workflow::movementsOf(catalogue, given.words.size() > 1 ? given.words[1] : std::string());
  if (!all) return tl::make_unexpected(all.error());
  Json out = document("ohmkin.stock-movements", 1);
  out["movements"] = Json::array();
  std::string lines;
  for (const auto& m : *all) {
    out["movements"].push_back(json(m));
    lines +=
        fmt::format("{} {} {}: {}, by {}{}{}\n", m.id.value, m.at.substr(0, 16), m.sender.text, workflow::wordsOf(m),
                    m.who, m.undoneBy ? " (undone)" : "", m.note.empty() ? "" : ". " + m.note);
  }
  streams.out << (given.has("--json") ? text(out) : lines);
  return all->empty() ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> label(const Arguments& given, const catalog::Catalogue& catalogue, Streams streams) {
  const auto units = displayUnits(given);
  if (!units) return tl::make_unexpected(units.error());
  const auto request = printRequest(given, *units);
  if (!request) return tl::make_unexpected(request.error());
  if (!request->wanted()) return refuse("file-not-named", "--pdf", "nothing", "a FILE to write, --pdf or --svg");
  const std::vector<std::string> parts(given.words.begin() + 1, given.words.end());
  const auto pages = workflow::shelfLabels(catalogue, parts, request->options, given.has("--small"));
  if (!pages) return tl::make_unexpected(pages.error());
  if (const auto written = deliver(*request, *pages, streams); !written) return tl::make_unexpected(written.error());
  return Exit::answer;
}

/// sell PART [N], receive PART N, count PART N, minimum PART N.
Expected<Exit> counted(const Arguments& given, catalog::Catalogue& catalogue, Streams streams) {
  const std::string& what = given.words[0];
  if (given.words.size() < 2 || given.words.size() > 3 || (given.words.size() == 2 && what != "sell"))
    return refuse("stock-words", what, fmt::format("{} words more", given.words.size() - 1), "PART and a number");
  const auto quantity = given.words.size() == 3 ? pieces(given.words[2], what) : Expected<int>(1);
  if (!quantity) return tl::make_unexpected(quantity.error());
  const auto said = saidOf(given);
  if (!said) return tl::make_unexpected(said.error());
  const std::string& part = given.words[1];
  const std::string bin = given.one("--bin");
  if (what == "sell") return done(workflow::sell(catalogue, part, bin, *quantity, *said), given, streams);
  if (what == "receive") return done(workflow::receive(catalogue, part, bin, *quantity, *said), given, streams);
  if (what == "count") return done(workflow::countBin(catalogue, part, bin, *quantity, *said), given, streams);
  const auto after = workflow::setMinimum(catalogue, part, bin, *quantity, said->who);
  if (!after) return tl::make_unexpected(after.error());
  return shown({*after}, given, streams);
}

Expected<Exit> moved(const Arguments& given, catalog::Catalogue& catalogue, Streams streams) {
  if (given.words.size() != 3 || !given.has("--to"))
    return refuse("stock-words", "move", "not what it takes", "move PART N --bin FROM --to BIN");
  const auto quantity = pieces(given.words[2], "move");
  if (!quantity) return tl::make_unexpected(quantity.error());
  const auto said = saidOf(given);
  if (!said) return tl::make_unexpected(said.error());
  return done(workflow::moveToBin(catalogue, given.words[1], given.one("--bin"), given.one("--to"), *quantity, *said),
              given, streams);
}

Expected<Exit> undone(const Arguments& given, catalog::Catalogue& catalogue, Streams streams) {
  const auto number = given.words.size() == 2 ? pieces(given.words[1], "undo") : Expected<int>(0);
  if (!number || *number < 1)
    return refuse("stock-words", "undo", "no movement", "the number of a movement, as history shows it");
  return done(workflow::undoMovement(catalogue, {*number}, whoIsAsking(given)), given, streams);
}

}  // namespace

const CommandSpec& StockCommand::spec() const {
  static const CommandSpec spec{
      "stock",
      "What is on the shelf: sold, received, counted, moved, and what runs low. Every piece that comes or goes is "
      "written down and can be undone.",
      "show [PART] | sell PART [N] | receive PART N | count PART N | move PART N | minimum PART N | low | history "
      "[PART] | undo MOVEMENT | label PART…",
      "PART is a part number in any spelling; N pieces",
      1,
      64,
      withCommonOptions(
          withPrintOptions({{"--bin", "BIN", "where it lies; otherwise the fullest bin it has"},
                            {"--to", "BIN", "move: the bin it goes to"},
                            {"--note", "TEXT", "why, for the record"},
                            {"--job", "ID", "the job it is for"},
                            {"--small", "", "label: one label a page, 62 mm × 29 mm, instead of a sheet of them"},
                            {"--who", "NAME", "who counts, for the record; otherwise the name you are logged in by"}})),
      "ohmkin stock sell BR-2215 --catalog demo.ohmkin",
      {"show", "sell", "receive", "count", "move", "minimum", "low", "history", "undo", "label"}};
  return spec;
}

Expected<Exit> StockCommand::run(const Arguments& arguments, Streams streams) const {
  const std::string& what = arguments.words.front();
  if (what == "show" || what == "low" || what == "history" || what == "label") {
    const auto catalogue = openCatalogue(arguments);
    if (!catalogue) return tl::make_unexpected(catalogue.error());
    if (what == "show") return show(arguments, *catalogue, streams);
    if (what == "low") return shown(workflow::underMinimum(*catalogue), arguments, streams);
    return what == "label" ? label(arguments, *catalogue, streams) : history(arguments, *catalogue, streams);
  }
  const auto path = cataloguePath(arguments);
  if (!path) return tl::make_unexpected(path.error());
  const bool takesNumber = what == "sell" || what == "receive" || what == "count" || what == "minimum";
  if (!takesNumber && what != "move" && what != "undo")
    return refuse("stock-words", "", "'" + what + "'",
                  "show, sell, receive, count, move, minimum, low, history, undo or label");
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  if (takesNumber) return counted(arguments, catalogue, streams);
  return what == "move" ? moved(arguments, catalogue, streams) : undone(arguments, catalogue, streams);
}

}  // namespace ohmkin::cli
