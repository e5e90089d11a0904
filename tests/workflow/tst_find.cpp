#include "demo_catalogue.h"

#include <catalog/change.h>
#include <catalog/search_index.h>
#include <workflow/find.h>
#include <QtTest/QtTest>
#include <ranges>

using namespace ohmkin;
using namespace ohmkin::workflow;

namespace {

QString shown(const Marked& marked) {
  std::string text = marked.text;
  for (const auto& span : std::views::reverse(marked.spans)) {
    text.insert(span.begin + span.length, "]");
    text.insert(span.begin, "[");
  }
  return QString::fromStdString(text);
}

void addSender(catalog::Catalogue& catalogue, const std::string& id) {
  catalog::Connection& connection = catalogue.connection();
  catalog::Change whole(connection);
  catalog::change(
      connection,
      "INSERT INTO sender (id, name, kind, thread, terminal, grounding, source, pack) SELECT ?, 'made up here', "
      "'warning switch', thread, terminal, 'case', source, 'shop' FROM sender LIMIT 1",
      id);
  catalog::indexRow(connection, "sender", id);
  whole.commit();
}

void standsInFor(catalog::Catalogue& catalogue, const std::string& newer, const std::string& older) {
  catalog::Connection& connection = catalogue.connection();
  catalog::Change whole(connection);
  catalog::change(connection, "INSERT INTO stands_in_for SELECT ?, ?, '1980', id, 'shop' FROM source LIMIT 1", newer,
                  older);
  catalog::indexRow(connection, "stands_in_for", std::vector<std::string>{older, newer});
  whole.commit();
}

}  // namespace

class TestFind : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

 private slots:
  void aNumberInAnySpelling_data() {
    QTest::addColumn<QString>("typed");
    for (const char* typed : {"BR-2201", "br2201", "Br 2201", "BR/22.01", "  br  2201 "}) QTest::newRow(typed) << typed;
  }
  void aNumberInAnySpelling() {
    QFETCH(QString, typed);
    const auto catalogue = demo_.open();
    Finder finder(catalogue);
    const auto answer = finder.find({typed.toStdString(), {}, 5, {}});
    QVERIFY(answer && !answer->found.empty());
    const Found& first = answer->found.front();
    QCOMPARE(first.kind, FoundKind::sender);
    QCOMPARE(first.id, std::string("BR-2201"));
    QCOMPARE(first.rank, std::size_t{1});
    QCOMPARE(first.how, MatchedHow::exactly);
    QCOMPARE(shown(first.number), QString("[BR-2201]"));
    QCOMPARE(first.title.text, std::string("temperature sender"));
    QVERIFY2(first.about.find("family A") != std::string::npos, first.about.c_str());
  }

  void aLineByItsMakeWithALetterWrong() {
    const auto catalogue = demo_.open();
    Finder finder(catalogue);
    const auto answer = finder.find({"ridgewya util", {FoundKind::line}, 5, {}});
    QVERIFY(answer && !answer->found.empty());
    QCOMPARE(answer->found.front().id, std::string("ridgeway-utility"));
    QCOMPARE(answer->found.front().how, MatchedHow::oneLetterOff);
    QVERIFY(answer->found.front().why.starts_with("one letter off: "));
  }

  void pagesGoOnAndCountOn() {
    const auto catalogue = demo_.open();
    Finder finder(catalogue);
    const auto whole = finder.find({"r", {}, 1000, {}});
    QVERIFY(whole && whole->found.size() > 6);
    QVERIFY(whole->next.empty());
    std::vector<std::string> ids;
    std::string after;
    do {
      const auto page = finder.find({"r", {}, 3, after});
      QVERIFY(page);
      for (const Found& one : page->found) {
        ids.push_back(one.id);
        QCOMPARE(one.rank, ids.size());
      }
      after = page->next;
    } while (!after.empty());
    QCOMPARE(ids.size(), whole->found.size());
    for (std::size_t i = 0; i < ids.size(); ++i) QCOMPARE(ids[i], whole->found[i].id);
  }

  void anOldNumberLeadsThroughTheChainToTheCurrentPart() {
    auto catalogue = demo_.open(catalog::Access::readWrite);
    for (const char* id : {"ZQ-1", "ZQ-2", "ZQ-3"}) addSender(catalogue, id);
    standsInFor(catalogue, "ZQ-2", "ZQ-1");
    standsInFor(catalogue, "ZQ-3", "ZQ-2");
    Finder finder(catalogue);
    const auto answer = finder.find({"zq1", {}, 10, {}});
    QVERIFY(answer);
    QCOMPARE(answer->found.size(), std::size_t{3});
    const Found& old = answer->found[0];
    QCOMPARE(old.id, std::string("ZQ-1"));
    QVERIFY(old.leadsTo && !old.leadsTo->circle);
    QCOMPARE(old.leadsTo->parts, std::vector<std::string>{"ZQ-3"});
    QCOMPARE(old.leadsTo->through, std::vector<std::string>{"ZQ-2"});
    QCOMPARE(old.leadsTo->sentence, std::string("superseded by ZQ-3 (through ZQ-2)"));
    for (std::size_t i = 1; i < 3; ++i) {
      QCOMPARE(answer->found[i].field, SearchField::oldNumber);
      QCOMPARE(answer->found[i].why, std::string("old number ZQ-1"));
      QCOMPARE(shown(answer->found[i].matched), QString("[ZQ-1]"));
    }
    QVERIFY(!leadsTo(catalogue, "ZQ-3"));
  }

  void aCircleIsSaidAndLeadsNowhere() {
    auto catalogue = demo_.open(catalog::Access::readWrite);
    for (const char* id : {"KW-1", "KW-2", "KW-3"}) addSender(catalogue, id);
    standsInFor(catalogue, "KW-2", "KW-1");
    standsInFor(catalogue, "KW-3", "KW-2");
    standsInFor(catalogue, "KW-2", "KW-3");
    Finder finder(catalogue);
    const auto answer = finder.find({"kw-1", {}, 1, {}});
    QVERIFY(answer && answer->found.size() == 1 && answer->found.front().leadsTo);
    const LeadsTo& leads = *answer->found.front().leadsTo;
    QVERIFY(leads.circle);
    QVERIFY(leads.parts.empty());
    QCOMPARE(leads.sentence,
             std::string("KW-2, KW-3 stand in for each other in a circle: none of them is the current one."));
  }

  void refusesWhatItCannotTake() {
    const auto catalogue = demo_.open();
    Finder finder(catalogue);
    QCOMPARE(finder.find({"r", {}, 0, {}}).error().code, std::string("limit-out-of-range"));
    QCOMPARE(finder.find({"r", {}, 1001, {}}).error().code, std::string("limit-out-of-range"));
    for (const char* after : {"x", "1.2.3", "1.2.3.99.A", "1.2.3.", "99999999999.1.1.1.A"})
      QCOMPARE(finder.find({"r", {}, 1, after}).error().code, std::string("place-unreadable"));
    std::stop_source stop;
    stop.request_stop();
    QCOMPARE(finder.find({"r", {}, 1, {}}, stop.get_token()).error().code, std::string("cancelled"));
  }

  void nothingTypedAndNothingFoundDiffer() {
    const auto catalogue = demo_.open();
    Finder finder(catalogue);
    const auto empty = finder.find({"  ", {}, 5, {}});
    QVERIFY(empty && empty->found.empty() && empty->findings.empty());
    const auto nothing = finder.find({"qqqqxxxx", {}, 5, {}});
    QVERIFY(nothing && nothing->found.empty());
    QCOMPARE(nothing->findings.front().code, std::string("search-nothing"));
  }

  void everyKindIsFoundByItsNumberAndNamed() {
    const auto catalogue = demo_.open();
    Finder finder(catalogue);
    for (std::size_t k = 0; k < catalog::kThingKinds; ++k) {
      const auto kind = static_cast<FoundKind>(k);
      QCOMPARE(foundKindNamed(catalog::text(kind)), std::optional(kind));
      bool some = false;
      for (const char* text : {"a", "b", "p", "r", "m", "1", "g", "s", "3"}) {
        const auto answer = finder.find({text, {kind}, 50, {}});
        QVERIFY(answer);
        for (const Found& one : answer->found) {
          some = true;
          const auto again = finder.find({one.id, {kind}, 1, {}});
          QVERIFY(again && again->found.size() == 1);
          QCOMPARE(again->found.front().id, one.id);
          QVERIFY2(!one.title.text.empty(), one.id.c_str());
        }
      }
      QVERIFY2(some, std::string(catalog::text(kind)).c_str());
    }
    QVERIFY(!foundKindNamed("turnip"));
  }
};

QTEST_APPLESS_MAIN(TestFind)
#include "tst_find.moc"
