#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/import_command.h>
#include <cli/import_words.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

/// "TITLE=PART" or "TITLE=PART,LOT"; the last = counts, since a title may hold one.
Expected<workflow::RunSaid> curveSaid(const std::string& text) {
  const auto equals = text.rfind('=');
  if (equals == std::string::npos || equals + 1 == text.size())
    return refuse("curve-option-unreadable", "--curve", "'" + text + "'",
                  "TITLE=PART or TITLE=PART,LOT, for example \"run 2=BR-2215,R7\"");
  workflow::RunSaid said;
  said.title = text.substr(0, equals);
  said.part = text.substr(equals + 1);
  if (const auto comma = said.part.find(','); comma != std::string::npos) {
    said.lot = said.part.substr(comma + 1);
    said.part.resize(comma);
  }
  return said;
}

Expected<workflow::ImportAsked> asked(const Arguments& given, const DisplayUnits& units) {
  workflow::ImportAsked asked;
  asked.correction = given.one("--map");
  asked.asProposed = given.has("--as-proposed");
  asked.askFirst = true;
  asked.hints.bare = units.temperature;
  asked.part = given.one("--part");
  asked.lot = given.one("--lot");
  asked.family = given.one("--family");
  asked.meter = given.one("--meter");
  asked.bath = given.one("--bath");
  asked.units = units;
  for (const std::string& text : given.all("--curve")) {
    auto said = curveSaid(text);
    if (!said) return tl::make_unexpected(said.error());
    asked.runs.push_back(*std::move(said));
  }
  for (const std::string& title : given.all("--leave-out")) asked.runs.push_back({title, true, "", "", ""});
  return asked;
}

Expected<catalog::Catalogue> openToWrite(const Arguments& given) {
  return cataloguePath(given).map(
      [](const std::string& path) { return catalog::Catalogue::open(path, catalog::Access::readWrite); });
}

Expected<Exit> list(const Arguments& given, std::ostream& out) {
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto records = catalog::imports(*catalogue);
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.imports", 1);
    document["imports"] = Json::array();
    for (const auto& record : records) document["imports"].push_back(json(record));
    out << text(document);
  } else {
    for (const auto& record : records) {
      std::string line = fmt::format("{:>4}  {}  {}: readings {}, curves {}, by {}", record.id.value,
                                     record.at.substr(0, 10), record.file, record.rows, record.curves, record.who);
      if (!record.meter.empty()) line += fmt::format("; {}", record.meter);
      if (!record.bath.empty()) line += fmt::format("; {}", record.bath);
      if (!record.stands()) line += fmt::format("; taken out {} by {}", record.undone.substr(0, 10), record.undoneBy);
      out << wrapped(line, 6, 0);
    }
  }
  return records.empty() ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> undo(const Arguments& given, std::ostream& out) {
  const auto number = parseNumber(given.one("--undo"), "--undo");
  if (!number || *number < 1 || *number > 1e15 || *number != static_cast<double>(static_cast<std::int64_t>(*number)))
    return refuse("import-number-unreadable", "--undo", "'" + given.one("--undo") + "'",
                  "the number of an import; ohmkin import --list shows them");
  auto catalogue = openToWrite(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto record = catalog::undoImport(*catalogue, {static_cast<std::int64_t>(*number)}, whoIsAsking(given));
  if (!record) return tl::make_unexpected(record.error());
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.import-undone", 1);
    document["import"] = json(*record);
    out << text(document);
  } else {
    out << wrapped(fmt::format("Import {} of '{}' is out again (readings {}, curves {}); its record stays.",
                               record->id.value, record->file, record->rows, record->curves),
                   0, 0);
  }
  return Exit::answer;
}

/// Each file by itself: one that is refused does not stop the others.
class FileByFile {
 public:
  FileByFile(const Arguments& given, Streams streams, const workflow::ImportAsked& asked)
      : given_(given), streams_(streams), asked_(asked) {}

  template <class Result>
  bool take(const Expected<Result>& result, const workflow::BenchFamilies& families, const std::string& file) {
    if (!result) {
      const Refusal refusal = asBenchOption(result.error());
      streams_.err << "ohmkin: " << refusal.sentence() << "\n";
      worst_ = std::max(worst_, refusal.code == "import-again" ? Exit::noAnswer : Exit::badInput);
      files_.push_back({{"file", file}, {"imported", false}, {"refusal", json(refusal)}});
      return false;
    }
    streams_.err << rejectedText(result->rejected, result->tally, file);
    if (given_.has("--json")) files_.push_back(json(*result, families));
    return true;
  }
  void preview(const catalog::Catalogue& catalogue, const workflow::BenchFamilies& families, const std::string& path) {
    const auto seen = workflow::previewImport(catalogue, families, workflow::readingsFile(path), asked_);
    if (take(seen, families, path) && !given_.has("--json")) streams_.out << previewText(*seen, families, asked_.units);
  }
  void import(catalog::Catalogue& catalogue, const workflow::BenchFamilies& families, const std::string& path) {
    const auto in =
        workflow::importFile(catalogue, families, workflow::readingsFile(path), asked_, whoIsAsking(given_));
    if (take(in, families, path) && !given_.has("--json")) streams_.out << importedText(*in, families, asked_.units);
  }
  Exit end() {
    if (given_.has("--json")) {
      Json document = cli::document("ohmkin.import", 1);
      document["files"] = std::move(files_);
      streams_.out << text(document);
    }
    return worst_;
  }

 private:
  const Arguments& given_;
  Streams streams_;
  const workflow::ImportAsked& asked_;
  Exit worst_ = Exit::answer;
  Json files_ = Json::array();
};

}  // namespace

const CommandSpec& ImportCommand::spec() const {
  static const CommandSpec spec{
      "import",
      "Files of bench readings into the catalogue: each whole or not at all, fitted, and held against every family.",
      "FILE…",
      "CSV of any habit: temperature and ohms, and where they are there time, curve, heating or cooling",
      0,
      256,
      withCommonOptions(
          {{"--dry-run", "", "shows how each column is read, the curves and what is wrong; writes nothing"},
           {"--map", "PLAN",
            "how the file is to be read where the proposal is wrong: temperature=2:C, resistance=3:kohm, skip=4; "
            "remembered for files of that shape"},
           {"--as-proposed", "",
            "goes by the proposal, not by what is remembered, and does not ask what the file leaves open"},
           {"--part", "PART", "part number of every curve whose name in the file is none", false, {}, Names::parts},
           {"--lot", "LOT", "lot, delivery or date code of that part"},
           {"--family",
            "FAMILY",
            "family the part claims to be of; otherwise the catalogue's for the part",
            false,
            {},
            Names::families},
           {"--curve", "TITLE=PART[,LOT]", "part and lot of the curve the file names so", true},
           {"--leave-out", "TITLE", "a curve that is not to be kept", true},
           {"--meter", "METER", "a meter of the catalogue, digital, moving-coil, or its accuracy: 0.8 %"},
           {"--bath", "BATH", "a thermometer of the catalogue, or its accuracy: 0.5 K"},
           {"--who", "NAME", "who measured; otherwise the name you are logged in by"},
           {"--list", "", "what was imported, when and by whom"},
           {"--undo", "N", "takes import N out again: readings, curves and all"}}),
      "ohmkin import --dry-run --part BR-2215 --lot R7 --meter \"0.8 %\" --bath \"0.5 K\" bath.csv"};
  return spec;
}

Expected<Exit> ImportCommand::run(const Arguments& arguments, Streams streams) const {
  if (arguments.has("--list")) return list(arguments, streams.out);
  if (arguments.has("--undo")) return undo(arguments, streams.out);
  if (arguments.words.empty())
    return refuse("nothing-to-import", "FILE", "nothing", "files of readings, --list or --undo");
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto question = asked(arguments, *units);
  if (!question) return tl::make_unexpected(question.error());
  FileByFile files(arguments, streams, *question);
  if (arguments.has("--dry-run")) {
    const auto catalogue = openCatalogue(arguments);
    if (!catalogue) return tl::make_unexpected(catalogue.error());
    const auto families = workflow::benchFamilies(*catalogue);
    for (const std::string& path : arguments.words) files.preview(*catalogue, families, path);
  } else {
    auto catalogue = openToWrite(arguments);
    if (!catalogue) return tl::make_unexpected(catalogue.error());
    const auto families = workflow::benchFamilies(*catalogue);
    for (const std::string& path : arguments.words) files.import(*catalogue, families, path);
  }
  return files.end();
}

}  // namespace ohmkin::cli
