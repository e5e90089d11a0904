#include "rooms.h"

#include <algorithm>
#include <fstream>
#include <regex>
#include <sstream>

namespace ohmkin::architecture {
namespace fs = std::filesystem;

namespace {

std::vector<std::pair<int, std::string>> linesMatching(const Source& source, const std::regex& form) {
  std::vector<std::pair<int, std::string>> found;
  std::smatch match;
  for (const Line& line : source.lines) {
    if (std::regex_search(line.text, match, form)) found.emplace_back(line.number, match[1].str());
  }
  return found;
}

}  // namespace

std::vector<std::pair<int, std::string>> Source::includes() const {
  static const std::regex angle(R"(^\s*#\s*include\s*<([^>]+)>)");
  return linesMatching(*this, angle);
}

std::vector<std::pair<int, std::string>> Source::quotedIncludes() const {
  static const std::regex quoted(R"re(^\s*#\s*include\s*"([^"]+)")re");
  return linesMatching(*this, quoted);
}

bool holdsSql(const std::string& line) {
  static const std::regex sql(
      R"re("[^"]*\b(select\s[^"]*\sfrom\s|insert\s+(or\s+\w+\s+)?into\s|update\s+\w+\s+set\s|delete\s+from\s|create\s+(table|index|view|virtual)\s|pragma\s+\w))re",
      std::regex::icase);
  return std::regex_search(line, sql);
}

std::set<std::string> usesIn(const std::string& cmake) {
  std::stringstream text(cmake);
  std::string code;
  for (std::string line; std::getline(text, line);) code += line.substr(0, line.find('#')) + "\n";
  static const std::regex uses(R"(\bUSES\s+([a-z_\s]+?)\s*(?:\)|LINKS|HIDES|SOURCES))");
  std::set<std::string> names;
  for (std::sregex_iterator each(code.begin(), code.end(), uses), end; each != end; ++each) {
    std::stringstream list((*each)[1].str());
    for (std::string name; list >> name;) names.insert(name);
  }
  return names;
}

std::map<std::string, Room> roomsBelow(const fs::path& project, const std::string& folder) {
  std::map<std::string, Room> rooms;
  for (const auto& entry : fs::directory_iterator(project / folder)) {
    std::ifstream file(entry.path() / "CMakeLists.txt");
    if (!file) continue;
    std::stringstream text;
    text << file.rdbuf();
    const std::string name = entry.path().filename().string();
    rooms[name] = {name, fs::path(folder) / name, usesIn(text.str())};
  }
  return rooms;
}

std::vector<Source> sourcesBelow(const fs::path& project, const fs::path& folder) {
  std::vector<Source> sources;
  for (const auto& entry : fs::recursive_directory_iterator(project / folder)) {
    const auto extension = entry.path().extension();
    if (extension != ".h" && extension != ".cpp") continue;
    Source source{fs::relative(entry.path(), project), {}};
    std::ifstream file(entry.path());
    int number = 0;
    for (std::string text; std::getline(file, text);) source.lines.push_back({++number, text});
    sources.push_back(std::move(source));
  }
  std::sort(sources.begin(), sources.end(), [](const Source& a, const Source& b) { return a.path < b.path; });
  return sources;
}

}  // namespace ohmkin::architecture
