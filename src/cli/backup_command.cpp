#include <cli/backup_command.h>
#include <cli/common_options.h>
#include <cli/json_values.h>
#include <fmt/format.h>
#include <workflow/backup.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

using workflow::BackupState;

Json json(const catalog::Backup& backup) {
  return {{"file", backup.file.string()},
          {"taken", catalog::moment(backup)},
          {"reason", catalog::text(backup.reason)},
          {"version", backup.version},
          {"bytes", backup.bytes}};
}

Exit show(const std::vector<BackupState>& states, bool checked, const Arguments& given, std::ostream& out) {
  Json document = cli::document("ohmkin.backups", 1);
  document["backups"] = Json::array();
  bool allHold = true;
  std::string lines;
  for (const BackupState& state : states) {
    Json one = json(state.backup);
    if (checked) one["holds"] = !state.fault.has_value();
    if (state.fault) one["fault"] = state.fault->sentence();
    document["backups"].push_back(std::move(one));
    allHold = allHold && !state.fault;
    lines += fmt::format("{}  {}\n", state.backup.file.filename().string(), workflow::shortText(state.backup));
    if (state.fault) lines += fmt::format("  damaged: found {}\n", state.fault->found);
    else if (checked) lines += "  holds\n";
  }
  out << (given.has("--json") ? text(document) : lines);
  return allHold ? Exit::answer : Exit::noAnswer;
}

Expected<Exit> list(const std::string& path, bool check, const Arguments& given, std::ostream& out) {
  const auto states = check ? workflow::checkedBackups(path) : workflow::knownBackups(path);
  if (!states.empty()) return show(states, check, given, out);
  if (given.has("--json")) (void)show(states, check, given, out);
  else
    out << fmt::format(
        "No backup of {} yet. 'ohmkin backup make' makes one; before the first change of a day one is made by "
        "itself.\n",
        path);
  return Exit::noAnswer;
}

Expected<Exit> make(const std::string& path, const Arguments& given, std::ostream& out) {
  const auto made = catalog::backUp(catalog::Catalogue::openToRead(path));
  Json document = cli::document("ohmkin.backup-made", 1);
  document["backup"] = json(made);
  out << (given.has("--json") ? text(document) : workflow::sentence(made) + "\n");
  return Exit::answer;
}

Expected<Exit> restore(const std::string& path, const Arguments& given, std::ostream& out) {
  const auto backup = workflow::backupCalled(path, given.words.size() > 1 ? given.words[1] : "newest");
  if (!backup) return tl::make_unexpected(backup.error());
  const auto restored = catalog::restore(path, *backup);
  Json document = cli::document("ohmkin.backup-restored", 1);
  document["backup"] = json(restored.from);
  document["kept"] = restored.kept.empty() ? Json() : Json(restored.kept.string());
  out << (given.has("--json") ? text(document) : workflow::sentence(restored) + "\n");
  return Exit::answer;
}

Expected<Exit> salvage(const std::string& path, const Arguments& given, std::ostream& out) {
  if (given.words.size() != 2)
    return refuse("backup-words", "salvage", "no file",
                  "the new catalogue to copy into; a file that exists is never replaced");
  const auto salvaged = catalog::salvage(path, given.words[1]);
  Json document = cli::document("ohmkin.salvage", 1);
  document["file"] = given.words[1];
  document["whole"] = salvaged.whole();
  document["rows"] = salvaged.rows();
  document["tables"] = Json::array();
  for (const auto& table : salvaged.tables)
    document["tables"].push_back({{"table", table.table},
                                  {"rows", table.rows},
                                  {"left_out", table.broken},
                                  {"whole", table.whole},
                                  {"fault", table.fault.empty() ? Json() : Json(table.fault)}});
  if (given.has("--json")) out << text(document);
  else
    for (const std::string& sentence : workflow::sentences(salvaged)) out << sentence << '\n';
  return Exit::answer;
}

}  // namespace

const CommandSpec& BackupCommand::spec() const {
  static const CommandSpec spec{
      "backup",
      "Copies of the catalogue: lists, makes and checks them, puts one back, saves what reads of a damaged catalogue.",
      "[list | make | check | restore [NAME] | salvage FILE]",
      "list, if nothing is said; NAME as listed or the beginning of it, without it the newest; FILE is new",
      0,
      2,
      withCommonOptions({}),
      "ohmkin backup restore newest --catalog shop.ohmkin",
      {"list", "make", "check", "restore", "salvage"}};
  return spec;
}

Expected<Exit> BackupCommand::run(const Arguments& arguments, Streams streams) const {
  const auto path = cataloguePath(arguments);
  if (!path) return tl::make_unexpected(path.error());
  const std::string what = arguments.words.empty() ? "list" : arguments.words.front();
  if (what != "restore" && what != "salvage" && arguments.words.size() > 1)
    return refuse("backup-words", what, fmt::format("'{}'", arguments.words[1]), "nothing behind it");
  if (what == "list") return list(*path, false, arguments, streams.out);
  if (what == "check") return list(*path, true, arguments, streams.out);
  if (what == "make") return make(*path, arguments, streams.out);
  if (what == "restore") return restore(*path, arguments, streams.out);
  if (what == "salvage") return salvage(*path, arguments, streams.out);
  return refuse("backup-words", "backup", fmt::format("'{}'", what), "list, make, check, restore or salvage");
}

}  // namespace ohmkin::cli
