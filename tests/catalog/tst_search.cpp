#include "plain_search.h"
#include "small_catalogue.h"
#include "typed_queries.h"

#include <catalog/change.h>
#include <catalog/search.h>
#include <catalog/search_block.h>
#include <catalog/search_index.h>
#include <QtTest/QtTest>
#include <random>
#include <ranges>

using namespace ohmkin;
using namespace ohmkin::catalog;

namespace {

constexpr std::int64_t kRows = 4000;

/// Rows that a large catalogue lacks: accents, signs, names that hold each other, parts that stand in for each other in
/// a circle.
constexpr const char* kOddRows = R"sql(
INSERT INTO sender (id, name, kind, thread, terminal, grounding, source, pack) VALUES
 ('Ä-1/2', 'Kühlmittelgeber, groß', 'warning switch', 'M10x1', 'stud-4', 'case', 'made-up', 'large'),
 ('ÖL 7×3', 'sonde à résistance', 'warning switch', 'M10x1', 'stud-4', 'case', 'made-up', 'large'),
 ('---', '"quoted"; DROP TABLE sender', 'warning switch', 'M10x1', 'stud-4', 'case', 'made-up', 'large'),
 ('RING-1', 'ring', 'warning switch', 'M10x1', 'stud-4', 'case', 'made-up', 'large'),
 ('RING-2', 'ring ring', 'warning switch', 'M10x1', 'stud-4', 'case', 'made-up', 'large'),
 ('RING-3', 'springring', 'warning switch', 'M10x1', 'stud-4', 'case', 'made-up', 'large');
INSERT INTO stands_in_for VALUES ('RING-1', 'RING-2', '1970', 'made-up', 'large'), ('RING-2', 'RING-3', '1971', 'made-up', 'large'),
 ('RING-3', 'RING-1', '1972', 'made-up', 'large');
INSERT INTO stock VALUES ('RING-3', 'A', 4, 0, 'shop');
)sql";

/// Of the catalogue's hits and of the plain search's alike.
QString shown(const auto& hit) {
  return QString("%1 %2 %3 %4 %5 %6")
      .arg(static_cast<int>(hit.how))
      .arg(static_cast<int>(hit.field))
      .arg(hit.inStock)
      .arg(hit.uses)
      .arg(static_cast<int>(hit.kind))
      .arg(QString::fromStdString(hit.id));
}

QStringList answers(Search& search, const std::string& text, std::size_t limit = 60) {
  const SearchAnswer answer = search.find({text, {}, limit, {}});
  QStringList list{QString("%1 in all").arg(answer.total)};
  for (const SearchHit& hit : answer.hits) list << shown(hit);
  return list;
}

QStringList plainAnswers(const test::PlainSearch& plain, const std::string& text, std::size_t limit = 60) {
  const auto hits = plain.find(QString::fromStdString(text));
  QStringList list{QString("%1 in all").arg(hits.size())};
  for (std::size_t i = 0; i < std::min(limit, hits.size()); ++i) list << shown(hits[i]);
  return list;
}

/// Beginnings of what people type, and worse.
std::vector<std::string> queries(unsigned seed, int count) {
  std::mt19937 random(seed);
  const auto below = [&](std::size_t n) { return random() % n; };
  test::TypedQueries typed(test::LargeSizes(kRows), seed);
  const std::vector<std::string> odd{
      "ä",     "A12",    "groß",   "gross",  "KÜHLMITTEL", "resistance", "ring", "rnig",   "ring ring",
      "7x3",   "oel7x3", "quoted", "'; --",  "\"*\"",      "NEAR(",      "%",    "_",      "a* OR b",
      "löw",   "pere",   "1/2",    "½",      "(ring",      "ring AND",   "drop", "spring", "sprinrging",
      "- - -", "R",      "9",      "400-40", "family 3",   "head",       "H221", "ridng",  "temperature temperature"};
  std::vector<std::string> all(odd);
  while (all.size() < static_cast<std::size_t>(count)) {
    std::string text = typed.next();
    if (below(3) == 0) text.resize(1 + below(text.size()));
    if (below(6) == 0) text += " " + typed.next();
    if (QString::fromStdString(text).contains(QChar::ReplacementCharacter)) continue;  // a letter cut in two
    all.push_back(std::move(text));
  }
  return all;
}

}  // namespace

class TestSearch : public QObject {
  Q_OBJECT
  test::Folder folder_;
  std::filesystem::path file_;

  std::filesystem::path copy(const std::string& name) {
    const auto path = folder_.path(name);
    std::filesystem::copy_file(file_, path);
    return path;
  }

 private slots:
  void initTestCase() {
    file_ = folder_.path("large.ohmkin");
    const Catalogue made = test::largeCatalogue(file_, kRows);
    made.connection().database().exec(kOddRows);
    rebuildIndex(made.connection());
  }

  void findsWhatLookingAtEveryRowFinds() {
    const Catalogue catalogue = Catalogue::open(file_, Access::readOnly);
    const test::PlainSearch plain(catalogue.connection());
    Search search(catalogue);
    QCOMPARE(search.basis(), SearchBasis::index);
    int some = 0;
    for (const std::string& text : queries(5, 500)) {
      const QStringList found = answers(search, text);
      if (found != plainAnswers(plain, text)) qWarning("asked '%s'", text.c_str());
      QCOMPARE(found, plainAnswers(plain, text));
      if (found.size() > 1) ++some;
    }
    QVERIFY2(some > 350, "most of what is asked finds something");
  }

  void pagesTogetherAreTheWholeList() {
    const Catalogue catalogue = Catalogue::open(file_, Access::readOnly);
    Search search(catalogue);
    for (const char* text : {"b", "sender", "ring", "3"}) {
      const SearchAnswer whole = search.find({text, {}, 10'000, {}});
      QVERIFY(!whole.next);
      QCOMPARE(whole.hits.size(), whole.total);
      std::vector<SearchHit> pages;
      std::optional<SearchPlace> after;
      do {
        SearchAnswer page = search.find({text, {}, 7, after});
        QCOMPARE(page.total, whole.total);
        pages.insert(pages.end(), page.hits.begin(), page.hits.end());
        after = page.next;
      } while (after);
      QCOMPARE(pages.size(), whole.hits.size());
      for (std::size_t i = 0; i < pages.size(); ++i) QCOMPARE(shown(pages[i]), shown(whole.hits[i]));
    }
  }

  void oneKindAlone() {
    const Catalogue catalogue = Catalogue::open(file_, Access::readOnly);
    const test::PlainSearch plain(catalogue.connection());
    Search search(catalogue);
    for (const ThingKind kind : {ThingKind::line, ThingKind::casting, ThingKind::terminal}) {
      std::size_t expected = 0;
      for (const auto& hit : plain.find("3"))
        if (hit.kind == kind) ++expected;
      const SearchAnswer answer = search.find({"3", {kind}, 1000, {}});
      QCOMPARE(answer.total, expected);
      for (const SearchHit& hit : answer.hits) QCOMPARE(hit.kind, kind);
    }
  }

  void anyBytesOfAnyLength() {
    const Catalogue catalogue = Catalogue::open(file_, Access::readOnly);
    Search search(catalogue);
    for (const std::string& text :
         {std::string(), std::string("   "), std::string("\xff\xfe\x80"), std::string("\xe2\x82"),
          std::string("\0\0", 2), std::string(10'000, '\''), std::string("\xed\xa0\x80")})
      QCOMPARE(search.find({text, {}, 20, {}}).total, std::size_t{0});
    QCOMPARE(search.find({std::string(10'000, 'a'), {}, 20, {}}).total, std::size_t{0});
    std::string many;
    while (many.size() < 10'000) many += "ring " + std::to_string(many.size()) + " ";
    QCOMPARE(search.find({many, {}, 20, {}}).total, std::size_t{0});
    const SearchAnswer cut = search.find({std::string("RI\xffNG-1\0", 8), {}, 20, {}});
    QVERIFY(!cut.hits.empty());
    QCOMPARE(cut.hits.front().id, std::string("RING-1"));
  }

  void stopsWhenToldTo() {
    const Catalogue catalogue = Catalogue::open(file_, Access::readOnly);
    Search search(catalogue);
    std::stop_source source;
    source.request_stop();
    QVERIFY(search.find({"ring one two", {}, 20, {}}, source.get_token()).stopped);
    QVERIFY(!search.find({"ring", {}, 20, {}}).stopped);
  }

  void spansAreWhatWasTyped_data() {
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("expected");
    QTest::newRow("the whole number") << "sn101"
                                      << "SN-10.1"
                                      << "[SN-10.1]";
    QTest::newRow("its beginning") << "SN 1"
                                   << "SN-10.1"
                                   << "[SN-1]0.1";
    QTest::newRow("inside") << "418"
                            << "30418-A"
                            << "30[418]-A";
    QTest::newRow("words apart") << "ut ridge"
                                 << "Ridgeway utility"
                                 << "[Ridge]way [ut]ility";
    QTest::newRow("an accent") << "pere"
                               << "Le Père 2"
                               << "Le [Père] 2";
    QTest::newRow("one letter makes two") << "gross"
                                          << "ganz groß"
                                          << "ganz [groß]";
    QTest::newRow("nothing of it") << "zz"
                                   << "Ridgeway"
                                   << "Ridgeway";
  }
  void spansAreWhatWasTyped() {
    QFETCH(QString, typed);
    QFETCH(QString, text);
    QFETCH(QString, expected);
    std::string marked = text.toStdString();
    const auto spans = spansIn(typed.toStdString(), marked);
    for (const auto& span : std::views::reverse(spans)) {
      marked.insert(span.begin + span.length, "]");
      marked.insert(span.begin, "[");
    }
    QCOMPARE(QString::fromStdString(marked), expected);
  }

  /// Random changes of every sort, each noted as its writer would; then one index kept, one read afresh, one made
  /// afresh and the plain way must agree.
  void staysRightThroughChanges() {
    const auto path = copy("changing.ohmkin");
    Catalogue catalogue = Catalogue::open(path, Access::readWrite);
    const Catalogue elsewhere = Catalogue::open(path, Access::readOnly);
    Connection& connection = catalogue.connection();
    SQLite::Database& database = connection.database();
    Search kept(elsewhere);
    std::mt19937 random(3);
    const auto below = [&](std::size_t n) { return static_cast<std::int64_t>(random() % n); };
    const auto anyOf = [&](const std::string& table) {
      return database.execAndGet("SELECT id FROM " + table + " ORDER BY id LIMIT 1 OFFSET " + std::to_string(below(10)))
          .getString();
    };
    const auto run = [&](const std::string& sql, const std::vector<std::string>& values) {
      SQLite::Statement statement(database, sql);
      for (std::size_t i = 0; i < values.size(); ++i) statement.bind(static_cast<int>(i) + 1, values[i]);
      return statement.exec();
    };
    const test::LargeSizes sizes(kRows);
    for (int round = 0; round < 12; ++round) {
      for (int step = 0; step < 25; ++step) {
        Change whole(connection);
        const std::string sender = test::largeSenderNumber(below(40));
        const std::string other = test::largeSenderNumber(below(40));
        const std::string word = "Wort" + std::to_string(below(50));
        switch (below(9)) {
          case 0:
            run("UPDATE sender SET name = ? WHERE id = ?", {word + " geber", sender});
            indexRow(connection, "sender", sender);
            break;
          case 1:
            run("INSERT OR IGNORE INTO stands_in_for VALUES (?, ?, '1990', 'made-up', 'large')",
                {sender, sender == other ? std::string("RING-1") : other});
            indexRow(connection, "stands_in_for", std::vector<std::string>{sender == other ? "RING-1" : other, sender});
            break;
          case 2:
            unindexRow(connection, "stands_in_for", std::vector<std::string>{other, sender});
            run("DELETE FROM stands_in_for WHERE replaces = ? AND sender = ?", {other, sender});
            break;
          case 3:
            run("INSERT INTO stock VALUES (?, 'Z', 1, 0, 'shop') ON CONFLICT DO UPDATE SET quantity = 1 - quantity",
                {sender});
            indexRow(connection, "stock", std::vector<std::string>{sender, "Z"});
            break;
          case 4: {
            const std::string line = anyOf("vehicle_line");
            run("UPDATE vehicle_line SET name = ?, also = ? WHERE id = ?", {word + " wagen", "alt " + word, line});
            indexRow(connection, "vehicle_line", line);
            break;
          }
          case 5: {
            const std::string make = anyOf("make");
            run("UPDATE make SET name = ? WHERE id = ?", {word, make});
            indexRow(connection, "make", make);
            break;
          }
          case 6: {
            const std::string id = "NEW-" + std::to_string(below(30));
            if (run("INSERT OR IGNORE INTO sender (id, name, kind, family, thread, terminal, grounding, source, pack) "
                    "VALUES "
                    "(?, 'neu', 'variable sender', ?, 'M10x1', 'stud-4', 'case', 'made-up', 'shop')",
                    {id, anyOf("family")}) > 0) {
              indexRow(connection, "sender", id);
            } else {
              unindexRow(connection, "sender", id);
              run("DELETE FROM sender WHERE id = ?", {id});
            }
            break;
          }
          case 7: {
            SQLite::Statement one(database,
                                  "SELECT line, engine, year_from, sender FROM original_sender LIMIT 1 OFFSET " +
                                      std::to_string(below(2000)));
            if (!one.executeStep()) QFAIL("no rows left");
            std::vector<std::string> key;
            key.reserve(4);
            for (int c = 0; c < 4; ++c) key.push_back(one.getColumn(c).getString());
            one.reset();
            unindexRow(connection, "original_sender", key);
            run("DELETE FROM original_sender WHERE line = ? AND engine = ? AND year_from = CAST(? AS INTEGER) AND "
                "sender = ?",
                key);
            break;
          }
          default: {
            const std::string casting = test::largeCastingNumber(below(static_cast<std::size_t>(sizes.castings)));
            unindexRow(connection, "casting", casting);
            run("UPDATE casting SET engine = ? WHERE id = ?", {anyOf("engine_family"), casting});
            indexRow(connection, "casting", casting);
          }
        }
        if (below(5) != 0) whole.commit();  // else it is taken back
      }
      const test::PlainSearch plain(connection);
      Search fresh(catalogue);
      QCOMPARE(fresh.basis(), SearchBasis::index);
      std::vector<std::string> asked = queries(static_cast<unsigned>(round), 60);
      for (const char* more : {"wort1", "wort", "neu", "new-1", "wagen", "alt wort2", "geber", "engine", "f0"})
        asked.emplace_back(more);
      for (const std::string& text : asked) {
        const QStringList expected = plainAnswers(plain, text);
        if (answers(kept, text) != expected) qWarning("asked '%s' in round %d", text.c_str(), round);
        QCOMPARE(answers(kept, text), expected);
        QCOMPARE(answers(fresh, text), expected);
      }
      if (round % 3 == 2) {
        rebuildIndex(connection);
        Search again(catalogue);
        for (const std::string& text : asked) QCOMPARE(answers(again, text), plainAnswers(plain, text));
      }
    }
  }

  void whatIsReadInsideAChangeThatIsTakenBackIsForgotten() {
    Catalogue catalogue = Catalogue::open(copy("taken-back.ohmkin"), Access::readWrite);
    Connection& connection = catalogue.connection();
    Search search(catalogue);
    {
      const Change whole(connection);
      connection.database().exec("UPDATE sender SET name = 'quorn' WHERE id = 'RING-1'");
      indexRow(connection, "sender", "RING-1");
      QCOMPARE(search.find({"quorn", {}, 9, {}}).total, std::size_t{1});
    }
    QCOMPARE(search.find({"quorn", {}, 9, {}}).total, std::size_t{0});
    Change whole(connection);
    connection.database().exec("UPDATE sender SET name = 'quill' WHERE id = 'RING-2'");
    indexRow(connection, "sender", "RING-2");
    whole.commit();
    QCOMPARE(search.find({"quill", {}, 9, {}}).total, std::size_t{1});
  }

  /// A change of many rows rebuilds it once on the way.
  void manyRowsTouchedAtOnce() {
    Catalogue catalogue = Catalogue::open(copy("many.ohmkin"), Access::readWrite);
    Connection& connection = catalogue.connection();
    Search search(catalogue);
    Change whole(connection);
    for (int i = 0; i < 1500; ++i) {
      const std::string id = "MANY-" + std::to_string(i);
      connection.database().exec("INSERT INTO make VALUES ('" + id + "', 'manifold', 'shop')");
      indexRow(connection, "make", id);
    }
    whole.commit();
    QVERIFY(connection.database().execAndGet("SELECT count(*) FROM search_touched").getInt() < 1000);
    QCOMPARE(search.find({"manifold", {}, 9, {}}).total, std::size_t{1500});
  }

  void missingIsMadeWhereTheFileCanBeWritten() {
    const auto path = copy("missing.ohmkin");
    {
      const Catalogue catalogue = Catalogue::open(path, Access::readWrite);
      catalogue.connection().database().exec("DELETE FROM search_index");
    }
    const Catalogue catalogue = Catalogue::openToRead(path);
    Search search(catalogue);
    QCOMPARE(search.basis(), SearchBasis::index);
    QVERIFY(indexStands(catalogue.connection()));
    const test::PlainSearch plain(catalogue.connection());
    for (const std::string& text : queries(9, 50)) QCOMPARE(answers(search, text), plainAnswers(plain, text));
  }

  void elsewhereItIsDoneWithoutAndSaysSo() {
    const auto path = copy("locked.ohmkin");
    Catalogue writer = Catalogue::open(path, Access::readWrite);
    writer.connection().useWriteAheadLog();
    writer.connection().database().exec("UPDATE search_index SET version = 999");
    const Catalogue reader = Catalogue::open(path, Access::readOnly);
    auto busy = std::make_optional<Change>(writer.connection());
    Search search(reader);
    QCOMPARE(search.basis(), SearchBasis::scan);
    {
      const test::PlainSearch plain(reader.connection());
      for (const std::string& text : queries(10, 50)) QCOMPARE(answers(search, text), plainAnswers(plain, text));
    }
    // What another writes is seen, whether noted or not; and an index that comes is used.
    writer.connection().database().exec("UPDATE sender SET name = 'quorn' WHERE id = 'RING-1'");
    busy->commit();
    busy.reset();
    QCOMPARE(search.find({"quorn", {}, 9, {}}).total, std::size_t{1});
    QCOMPARE(search.basis(), SearchBasis::scan);
    {
      Change change(writer.connection());
      rebuildIndex(writer.connection());
      change.commit();
    }
    QCOMPARE(search.find({"quorn", {}, 9, {}}).total, std::size_t{1});
    QCOMPARE(search.basis(), SearchBasis::index);
  }

  void aDamagedIndexIsNotBelieved() {
    const auto path = copy("damaged.ohmkin");
    Catalogue catalogue = Catalogue::open(path, Access::readWrite);
    SQLite::Database& database = catalogue.connection().database();
    const SQLite::Column data = database.execAndGet("SELECT data FROM search_index");
    const std::string whole(static_cast<const char*>(data.getBlob()), static_cast<std::size_t>(data.getBytes()));
    const test::PlainSearch plain(catalogue.connection());
    std::mt19937 random(4);
    for (int i = 0; i < 200; ++i) {
      std::string bytes = whole;
      if (i % 4 == 0) bytes.resize(random() % whole.size());
      else bytes[i % 4 == 1 ? random() % 4000 : random() % whole.size()] ^= static_cast<char>(1U << (random() % 8));
      std::vector<std::uint32_t> numbers(bytes.size() / 4);
      std::memcpy(numbers.data(), bytes.data(), numbers.size() * 4);
      const auto block = SearchBlock::read(numbers);
      if (!block) continue;
      for (std::size_t word = 0; word < block->words(); ++word)
        for (const std::uint32_t bits : block->places(word)) QVERIFY(SearchPosting{bits}.thing() < block->things());
    }
    SQLite::Statement put(database, "UPDATE search_index SET data = ?, build = build + 1");
    put.bind(1, whole.data(), static_cast<int>(whole.size() / 2));
    put.exec();
    Search search(catalogue);
    QCOMPARE(search.basis(), SearchBasis::scan);
    QCOMPARE(answers(search, "ring"), plainAnswers(plain, "ring"));
  }

  void isTheSameForTheSameRows() {
    const Catalogue one = Catalogue::open(copy("same.ohmkin"), Access::readWrite);
    const auto bytes = [&] {
      const SQLite::Column data = one.connection().database().execAndGet("SELECT data FROM search_index");
      return std::string(static_cast<const char*>(data.getBlob()), static_cast<std::size_t>(data.getBytes()));
    };
    const std::string before = bytes();
    rebuildIndex(one.connection());
    QVERIFY(bytes() == before);
  }
};

QTEST_APPLESS_MAIN(TestSearch)
#include "tst_search.moc"
