#include <QTest>
#include <algorithm>
#include <optional>
#include <regex>

#include "rooms.h"

using namespace ohmkin::architecture;

namespace {

const std::filesystem::path kProject = OHMKIN_PROJECT;
const std::map<std::string, std::size_t> kLongestFile{{"src", 400}, {"ui", 400}, {"tests", 450}};

/// Who may look at whom: only at rooms of an earlier layer. A new room below ui/ is given its place here.
const std::vector<std::set<std::string>> kLayers{
    {"finding"},
    {"quantity"},
    {"curve", "joint", "dating"},
    {"gauge", "bench"},
    {"pairing", "circuit"},
    {"sheet"},
    {"catalog", "exchange"},
    {"workflow"},
    {"cli", "look", "desk"},
    {"parts", "print"},
    {"a page of the window"},
    {"app"},
};
const std::set<std::string> kPure{"finding", "quantity", "curve", "bench",   "joint",
                                  "dating",  "circuit",  "gauge", "pairing", "sheet"};

std::optional<std::size_t> layerOf(const Room& room) {
  const auto layerWith = [](const std::string& name) {
    const auto layer =
        std::find_if(kLayers.begin(), kLayers.end(), [&](const auto& rooms) { return rooms.contains(name); });
    return layer == kLayers.end() ? std::nullopt : std::optional(static_cast<std::size_t>(layer - kLayers.begin()));
  };
  const auto own = layerWith(room.name);
  return own || *room.path.begin() != "ui" ? own : layerWith("a page of the window");
}

std::map<std::string, Room> allRooms() {
  auto rooms = roomsBelow(kProject, "src");
  rooms.merge(roomsBelow(kProject, "ui"));
  return rooms;
}

/// Whose headers a room may include: those it lists and its own. The terminal and the window stand above everything and
/// hand on what the rooms they list are made of; for them what these list counts as well.
std::set<std::string> reachOf(const Room& room, const std::map<std::string, Room>& rooms) {
  std::set<std::string> reach = room.uses;
  reach.insert(room.name);
  if (room.name != "cli" && *room.path.begin() != "ui") return reach;
  for (std::size_t before = 0; before != reach.size();) {
    before = reach.size();
    for (const std::string& name : std::set<std::string>(reach))
      reach.insert(rooms.at(name).uses.begin(), rooms.at(name).uses.end());
  }
  return reach;
}

std::string place(const Source& source, int line) { return source.path.string() + ":" + std::to_string(line); }

/// Fails with every complaint, not only the first; Qt Test would cut a long message.
void verifyNone(const std::vector<std::string>& complaints) {
  for (const std::string& complaint : complaints) qWarning("%s", complaint.c_str());
  QVERIFY(complaints.empty());
}

}  // namespace

class TestRooms : public QObject {
  Q_OBJECT
 private slots:
  void the_reader_of_rooms_reads() {
    QCOMPARE(
        usesIn("# USES nothing\nohmkin_room(a\n  SOURCES b.cpp\n  USES finding\n    quantity # and\n  HIDES fmt::fmt)"),
        (std::set<std::string>{"finding", "quantity"}));
    QCOMPARE(usesIn("ohmkin_room(a SOURCES b.cpp)"), std::set<std::string>{});
    const auto rooms = allRooms();
    QVERIFY(rooms.at("workflow").uses.contains("catalog"));
    QVERIFY(rooms.at("app").uses.contains("match"));
    const Source source{"x.cpp",
                        {{1, "#include <curve/fit.h>  // why"}, {2, "// #include <a/b.h>"}, {3, "#include \"x.h\""}}};
    QCOMPARE(source.quotedIncludes(), (std::vector<std::pair<int, std::string>>{{3, "x.h"}}));
    QCOMPARE(source.includes(), (std::vector<std::pair<int, std::string>>{{1, "curve/fit.h"}}));
    QVERIFY(holdsSql("run(\"SELECT id FROM sender\");"));
    QVERIFY(holdsSql("run(\"delete from sender\");"));
    QVERIFY(!holdsSql("say(\"select a sender, then update the plan\");"));
  }

  void arrows_run_downward() {
    const auto rooms = allRooms();
    std::vector<std::string> complaints;
    for (const auto& [name, room] : rooms) {
      const auto layer = layerOf(room);
      if (!layer) {
        complaints.push_back(room.path.string() + " has no layer: give it one in tests/architecture/tst_rooms.cpp");
        continue;
      }
      for (const std::string& used : room.uses) {
        if (!rooms.contains(used)) {
          complaints.push_back(room.path.string() + " lists '" + used + "', which is no room");
        } else if (layerOf(rooms.at(used)).value_or(kLayers.size()) >= *layer) {
          complaints.push_back(room.path.string() + " looks up or sideways at " + rooms.at(used).path.string());
        }
      }
    }
    verifyNone(complaints);
  }

  void a_room_includes_only_what_it_lists() {
    const auto rooms = allRooms();
    std::vector<std::string> complaints;
    for (const auto& [name, room] : rooms) {
      const auto reach = reachOf(room, rooms);
      for (const Source& source : sourcesBelow(kProject, room.path)) {
        for (const auto& [line, header] : source.includes()) {
          const std::string other = header.substr(0, header.find('/'));
          if (header.find('/') == std::string::npos || !rooms.contains(other) || reach.contains(other)) continue;
          complaints.push_back(
              place(source, line).append(" includes <").append(header).append("> and does not list ").append(other));
        }
      }
    }
    verifyNone(complaints);
  }

  void headers_are_reached_by_their_room() {
    std::vector<std::string> complaints;
    for (const char* folder : {"src", "ui"}) {
      for (const Source& source : sourcesBelow(kProject, folder)) {
        for (const auto& [line, header] : source.quotedIncludes()) {
          if (!header.ends_with(".moc"))
            complaints.push_back(place(source, line) + " includes '" + header + "' instead of <room/header.h>");
        }
      }
    }
    verifyNone(complaints);
  }

  void there_is_no_qt_below_the_window() {
    static const std::regex qt("^(Q[A-Z]|Qt)");
    std::vector<std::string> complaints;
    for (const Source& source : sourcesBelow(kProject, "src")) {
      for (const auto& [line, header] : source.includes()) {
        if (std::regex_search(header, qt)) complaints.push_back(place(source, line) + " includes <" + header + ">");
      }
    }
    verifyNone(complaints);
  }

  void pure_rooms_touch_no_file() {
    static const std::set<std::string> outside{"fstream", "filesystem", "iostream", "cstdio", "unistd.h", "fcntl.h"};
    std::vector<std::string> complaints;
    for (const std::string& name : kPure) {
      if (!std::filesystem::exists(kProject / "src" / name)) continue;
      for (const Source& source : sourcesBelow(kProject, std::filesystem::path("src") / name)) {
        for (const auto& [line, header] : source.includes()) {
          if (outside.contains(header)) complaints.push_back(place(source, line) + " includes <" + header + ">");
        }
      }
    }
    verifyNone(complaints);
  }

  void sql_stands_in_the_catalogue_alone() {
    std::vector<std::string> complaints;
    for (const char* folder : {"src", "ui"}) {
      for (const Source& source : sourcesBelow(kProject, folder)) {
        if (source.path.string().starts_with("src/catalog/")) continue;
        for (const auto& [line, header] : source.includes()) {
          if (header == "sqlite3.h" || header.starts_with("SQLiteCpp/") || header == "QSqlDatabase")
            complaints.push_back(place(source, line) + " includes <" + header + ">");
        }
        for (const Line& line : source.lines) {
          if (holdsSql(line.text)) complaints.push_back(place(source, line.number) + " holds SQL");
        }
      }
    }
    verifyNone(complaints);
  }

  void no_file_is_longer_than_a_reader_can_hold() {
    std::vector<std::string> complaints;
    for (const auto& [folder, longest] : kLongestFile) {
      for (const Source& source : sourcesBelow(kProject, folder)) {
        if (source.lines.size() <= longest) continue;
        complaints.push_back(source.path.string() + " has " + std::to_string(source.lines.size()) + " lines");
      }
    }
    verifyNone(complaints);
  }
};

QTEST_APPLESS_MAIN(TestRooms)
#include "tst_rooms.moc"
