#include <QTest>
#include <algorithm>
#include <fstream>
#include <functional>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace {

using Arrows = std::map<std::string, std::set<std::string>>;

std::string textOf(const char* file) {
  std::ifstream in(file);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

Arrows linked() {
  Arrows arrows;
  std::stringstream lines(textOf(OHMKIN_ARROWS));
  for (std::string from, to; lines >> from >> to;) arrows[from].insert(to);
  return arrows;
}

/// The picture as text: "a --> b & c" a line.
std::string drawn(const Arrows& arrows) {
  std::string text;
  for (const auto& [from, tos] : arrows) {
    std::string list;
    for (const std::string& to : tos) list.append(list.empty() ? "" : " & ").append(to);
    text.append("    ").append(from).append(" --> ").append(list).append("\n");
  }
  return text;
}

/// Without the arrows that a longer way says already.
Arrows reduced(const Arrows& arrows) {
  std::map<std::string, std::set<std::string>> below;
  const std::function<const std::set<std::string>&(const std::string&)> reach = [&](const std::string& room) -> auto& {
    const auto [at, fresh] = below.try_emplace(room);
    if (fresh && arrows.contains(room)) {
      std::set<std::string> all;
      for (const std::string& to : arrows.at(room)) {
        all.insert(to);
        all.merge(std::set<std::string>(reach(to)));
      }
      at->second = std::move(all);
    }
    return at->second;
  };
  Arrows shortest;
  for (const auto& [from, tos] : arrows) {
    for (const std::string& to : tos) {
      const bool implied = std::any_of(
          tos.begin(), tos.end(), [&](const std::string& other) { return other != to && reach(other).contains(to); });
      if (!implied) shortest[from].insert(to);
    }
  }
  return shortest;
}

}  // namespace

class TestPicture : public QObject {
  Q_OBJECT
 private slots:
  void an_arrow_that_a_longer_way_says_is_left_out() {
    QCOMPARE(reduced({{"a", {"b", "c"}}, {"b", {"c"}}}), (Arrows{{"a", {"b"}}, {"b", {"c"}}}));
  }

  void no_two_rooms_link_each_other_even_by_a_long_way() {
    Arrows arrows = linked();
    QVERIFY(!arrows.empty());
    while (
        !arrows.empty()) {  // take away the rooms that nothing links, until none is left or all that are left go round
      std::set<std::string> used;
      for (const auto& [from, tos] : arrows) used.insert(tos.begin(), tos.end());
      const auto before = arrows.size();
      std::erase_if(arrows, [&](const auto& each) { return !used.contains(each.first); });
      QVERIFY2(arrows.size() < before, qPrintable("in a circle:\n" + QString::fromStdString(drawn(arrows))));
    }
  }

  void the_picture_in_DEVELOPERS_is_what_the_libraries_link() {
    static const std::regex block("```mermaid\ngraph TD\n([^`]*)```");
    const std::string guide = textOf(OHMKIN_GUIDE);
    std::smatch picture;
    QVERIFY(std::regex_search(guide, picture, block));
    const std::string expected = drawn(reduced(linked()));
    if (picture[1].str() != expected) qWarning("The picture should be:\n%s", expected.c_str());
    QVERIFY(picture[1].str() == expected);
  }
};

QTEST_APPLESS_MAIN(TestPicture)
#include "tst_picture.moc"
