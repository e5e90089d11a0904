#include <cli/common_options.h>
#include <cstdlib>
#include <fstream>
#include <sstream>

namespace ohmkin::cli {

std::vector<OptionSpec> withCommonOptions(std::vector<OptionSpec> own) {
  own.push_back({"--catalog", "FILE", "the .ohmkin catalogue; without it, the one OHMKIN_CATALOG names"});
  own.push_back({"--units", "UNITS", "C or F, Nm or lbf-ft, separated by commas; bare temperatures are read so too"});
  own.push_back({"--json", "", "the answer as JSON with stable keys"});
  return own;
}

Expected<std::string> cataloguePath(const Arguments& arguments) {
  if (arguments.has("--catalog")) return arguments.one("--catalog");
  if (const char* named = std::getenv("OHMKIN_CATALOG"); named != nullptr && *named != '\0') return std::string(named);
  return refuse("catalogue-not-named", "--catalog", "nothing", "a catalogue FILE; ohmkin demo FILE writes one to try");
}

Expected<catalog::Catalogue> openCatalogue(const Arguments& arguments) {
  return cataloguePath(arguments).map([](const std::string& path) { return catalog::Catalogue::openToRead(path); });
}

Expected<DisplayUnits> displayUnits(const Arguments& arguments) {
  return parseDisplayUnits(arguments.one("--units"), "--units");
}

std::optional<std::string> contentsOf(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return std::nullopt;
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace ohmkin::cli
