#include "small_catalogue.h"

#include <catalog/change.h>
#include <catalog/row_editor.h>
#include <catalog/row_editor_pages.h>
#include <catalog/search.h>
#include <catalog/search_index.h>
#include <rapidcheck.h>
#include <QtTest/QtTest>
#include <algorithm>

using namespace ohmkin;
using namespace ohmkin::catalog;

namespace {

/// The order of a column as SQLite states it (https://sqlite.org/datatype3.html, 4.1): nothing, numbers, text by bytes.
int rank(const Cell& cell) {
  if (std::holds_alternative<std::monostate>(cell)) return 0;
  return std::holds_alternative<std::string>(cell) ? 2 : 1;
}
double number(const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return static_cast<double>(*whole);
  return std::get<double>(cell);
}
int compared(const Cell& a, const Cell& b) {
  if (rank(a) != rank(b)) return rank(a) - rank(b);
  if (rank(a) == 0) return 0;
  if (rank(a) == 2) return std::get<std::string>(a).compare(std::get<std::string>(b));
  return number(a) < number(b) ? -1 : number(a) > number(b) ? 1 : 0;
}
bool before(const PagePlace& a, const PagePlace& b) {
  if (const int order = compared(a.sorted, b.sorted); order != 0) return order < 0;
  for (std::size_t k = 0; k < a.key.size(); ++k)
    if (const int order = compared(a.key[k], b.key[k]); order != 0) return order < 0;
  return false;
}

std::vector<PagePlace> paged(const Catalogue& catalogue, PageOfRows asked) {
  std::vector<PagePlace> all;
  while (true) {
    const auto rows = pageOfRows(catalogue, asked);
    for (const RowSeen& row : rows) all.push_back(row.place);
    if (rows.size() < asked.most) return all;
    asked.after = all.back();
    if (all.size() > 10'000) return all;  // turns in a circle
  }
}

QStringList foundFor(Catalogue& catalogue, const std::string& text) {
  Search search(catalogue);
  QStringList all;
  for (const SearchHit& hit : search.find({text, {}, 60, {}}).hits)
    all << QString("%1 %2 %3").arg(static_cast<int>(hit.kind)).arg(static_cast<int>(hit.how)).arg(hit.id.c_str());
  return all;
}

ThingState stateOf(const Catalogue& catalogue, const char* table, const std::string& id) {
  const std::vector<Cell> key{id};
  return thingState(catalogue, table, key).value();
}

}  // namespace

/// Pages in order, and the search after every change of a row.
class TestRowEditor : public QObject {
  Q_OBJECT
  test::Folder folder_;

 private slots:
  void pages_of_every_column_are_the_sorted_list_cut_in_pieces_data() {
    QTest::addColumn<QString>("table");
    for (const char* table : {"sender", "gauge", "cluster", "casting", "family", "original_engine", "vehicle_line"})
      QTest::newRow(table) << table;
  }
  void pages_of_every_column_are_the_sorted_list_cut_in_pieces() {
    QFETCH(QString, table);
    const auto catalogue = test::smallCatalogue(folder_.path(table.toStdString()));
    const auto columns = dataColumns(catalogue, table.toStdString());
    const auto count = static_cast<std::size_t>(rowCount(catalogue, table.toStdString()));
    QVERIFY(count > 0);
    for (const std::string& column : columns) {
      for (const bool descending : {false, true}) {
        for (const std::size_t most : {std::size_t{1}, std::size_t{2}, std::size_t{3}, std::size_t{100}}) {
          const PageOfRows asked{table.toStdString(), columns, column, descending, {}, {}, {}, most};
          const auto all = paged(catalogue, asked);
          QVERIFY2(all.size() == count, column.c_str());
          for (std::size_t i = 1; i < all.size(); ++i)
            QVERIFY2(descending ? before(all[i], all[i - 1]) : before(all[i - 1], all[i]), column.c_str());
        }
      }
    }
  }

  void the_search_finds_what_was_edited_renamed_or_deleted_as_if_all_were_indexed_anew() {
    auto catalogue = test::smallCatalogue(folder_.path("search"));
    rebuildIndex(catalogue.connection());
    // One thing with no references to it besides those that follow, and its names over time.
    std::string id = "SW-1";
    const std::vector<std::string> ids{"SW-1", "ZQ-77", "SW-9"};
    const std::vector<std::string> names{"switch", "quartz oddity", "switched"};
    const bool held = rc::check("index right after every change = full rebuild", [&] {
      // Few steps: a full rebuild after each.
      const auto count = *rc::gen::inRange<std::size_t>(1, 3);
      const auto steps = *rc::gen::container<std::vector<std::pair<int, int>>>(
          count, rc::gen::pair(rc::gen::inRange(0, 3), rc::gen::inRange(0, 3)));
      for (const auto& [what, which] : steps) {
        const auto at = static_cast<std::size_t>(which);
        const ThingState was = stateOf(catalogue, "sender", id);
        {
          RowEditor editor(catalogue);
          ThingState now = was;
          if (what == 0) now.row["name"] = names[at];
          if (what == 1) now.row["id"] = ids[at];
          if (what == 2) editor.remove(was);
          RC_ASSERT(editor.put(what == 2 ? std::optional<ThingState>() : was, now).has_value());
          RC_ASSERT(editor.keep().has_value());
          if (what == 1) id = ids[at];
        }
        std::vector<QStringList> right;
        for (const auto* texts : {&ids, &names})
          for (const std::string& text : *texts) right.push_back(foundFor(catalogue, text));
        rebuildIndex(catalogue.connection());
        std::size_t next = 0;
        for (const auto* texts : {&ids, &names})
          for (const std::string& text : *texts) RC_ASSERT(right[next++] == foundFor(catalogue, text));
        RC_ASSERT(!foundFor(catalogue, id).filter(QString::fromStdString(id)).empty());
      }
    });
    QVERIFY(held);
    const ThingState last = stateOf(catalogue, "sender", id);
    RowEditor editor(catalogue);
    editor.remove(last);
    QVERIFY(editor.keep());
    QVERIFY(foundFor(catalogue, id).filter(QString::fromStdString(id)).empty());
  }
};

QTEST_APPLESS_MAIN(TestRowEditor)
#include "tst_row_editor.moc"
