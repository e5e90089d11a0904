#pragma once
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

/// The source tree as text: which rooms there are, what each lists under USES, what each file includes.
namespace ohmkin::architecture {

struct Line {
  int number = 0;
  std::string text;
};

struct Source {
  std::filesystem::path path;  ///< below the project's folder, for example src/curve/fit.cpp
  std::vector<Line> lines;
  /// What stands between the angle brackets, for example curve/fit.h, with its line.
  std::vector<std::pair<int, std::string>> includes() const;
  std::vector<std::pair<int, std::string>> quotedIncludes() const;
};

struct Room {
  std::string name;            ///< curve
  std::filesystem::path path;  ///< src/curve
  std::set<std::string> uses;  ///< what its CMakeLists.txt lists under USES
};

/// Rooms below folder ("src", "ui"): every sub-folder that builds something.
std::map<std::string, Room> roomsBelow(const std::filesystem::path& project, const std::string& folder);

/// Every .h and .cpp below folder, in the order of their paths.
std::vector<Source> sourcesBelow(const std::filesystem::path& project, const std::filesystem::path& folder);

/// SQL in a string literal, by the phrases that are nothing else.
bool holdsSql(const std::string& line);

/// The names under USES in the text of a room's CMakeLists.txt.
std::set<std::string> usesIn(const std::string& cmake);

}  // namespace ohmkin::architecture
