#include <exchange/csv.h>
#include <exchange/shown.h>
#include <rapidcheck.h>
#include <QtTest>

using namespace ohmkin;
using exchange::CsvRow;

namespace {

std::vector<CsvRow> rowsOf(std::string_view text) {
  std::vector<CsvRow> rows;
  const auto read = exchange::readCsv(text, "x.csv", [&](CsvRow& row) {
    rows.push_back(row);
    return true;
  });
  if (!read) rows.push_back({0, {read.error().where}});
  return rows;
}

QString flat(const std::vector<CsvRow>& rows) {
  QStringList all;
  for (const auto& row : rows) {
    QStringList cells;
    for (const auto& cell : row.cells) cells << QString::fromStdString(cell);
    all << QString::number(row.line) + "[" + cells.join('|') + "]";
  }
  return all.join(' ');
}

}  // namespace

class CsvTest : public QObject {
  Q_OBJECT
 private slots:
  void rowsAreReadAsTheStandardHasThem_data();
  void rowsAreReadAsTheStandardHasThem();
  void whateverIsWrittenIsReadBack();
  void anyBytesAreReadOrRefused();
  void utf8IsToldFromWhatIsNot_data();
  void utf8IsToldFromWhatIsNot();
  void hostileTextIsShownWithoutItsControlCharacters();
};

void CsvTest::rowsAreReadAsTheStandardHasThem_data() {
  QTest::addColumn<QByteArray>("text");
  QTest::addColumn<QString>("rows");
  // RFC 4180, section 2, rules 1 to 7 with their examples.
  QTest::newRow("rule 1: a line a row") << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")
                                        << "1[aaa|bbb|ccc] 2[zzz|yyy|xxx]";
  QTest::newRow("rule 2: no break at the end")
      << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx") << "1[aaa|bbb|ccc] 2[zzz|yyy|xxx]";
  QTest::newRow("rule 4: blanks belong to the cell") << QByteArray(" a,b ,c\n") << "1[ a|b |c]";
  QTest::newRow("rule 5: quoted") << QByteArray("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx")
                                  << "1[aaa|bbb|ccc] 2[zzz|yyy|xxx]";
  QTest::newRow("rule 6: a break inside quotes")
      << QByteArray("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") << "1[aaa|b\r\nbb|ccc] 3[zzz|yyy|xxx]";
  QTest::newRow("rule 7: a doubled quote") << QByteArray("\"aaa\",\"b\"\"bb\",\"ccc\"") << "1[aaa|b\"bb|ccc]";
  QTest::newRow("LF alone") << QByteArray("a,b\nc,d\n") << "1[a|b] 2[c|d]";
  QTest::newRow("blank lines are no rows but count") << QByteArray("a\n\n\r\nb\n") << "1[a] 4[b]";
  QTest::newRow("CR alone") << QByteArray("a\rb\rc") << "1[a] 2[b] 3[c]";
  QTest::newRow("byte-order mark") << QByteArray(
                                          "\xEF\xBB\xBF"
                                          "a,b\n")
                                   << "1[a|b]";
  QTest::newRow("empty cells") << QByteArray(",,\n\"\",x,\n") << "1[||] 2[|x|]";
  QTest::newRow("nothing") << QByteArray("") << "";
  QTest::newRow("a quote never closed") << QByteArray("a\n\"b\nc\n") << "1[a] 0[x.csv:2]";
  QTest::newRow("a quote inside a bare cell") << QByteArray("a\nb\"c\"\n") << "1[a] 0[x.csv:2]";
  QTest::newRow("text after a closing quote") << QByteArray("\"a\"b\n") << "0[x.csv:1]";
}

void CsvTest::rowsAreReadAsTheStandardHasThem() {
  QFETCH(QByteArray, text);
  QFETCH(QString, rows);
  QCOMPARE(flat(rowsOf({text.constData(), static_cast<std::size_t>(text.size())})), rows);
}

void CsvTest::whateverIsWrittenIsReadBack() {
  QVERIFY(rc::check([] {
    const auto width = *rc::gen::inRange(2, 6);
    const auto table =
        *rc::gen::container<std::vector<std::vector<std::string>>>(rc::gen::container<std::vector<std::string>>(
            static_cast<std::size_t>(width),
            rc::gen::container<std::string>(rc::gen::element('a', ',', '"', '\n', ' ', '\xC3'))));
    std::string text;
    for (const auto& row : table) {
      for (std::size_t c = 0; c < row.size(); ++c) {
        text += c == 0 ? "\"" : ",\"";
        for (const char ch : row[c]) text += ch == '"' ? "\"\"" : std::string(1, ch);
        text += '"';
      }
      text += "\r\n";
    }
    const auto rows = rowsOf(text);
    RC_ASSERT(rows.size() == table.size());
    for (std::size_t r = 0; r < rows.size(); ++r) RC_ASSERT(rows[r].cells == table[r]);
  }));
}

void CsvTest::anyBytesAreReadOrRefused() {
  QVERIFY(rc::check([](const std::string& text) {
    for (const auto& row : rowsOf(text)) RC_ASSERT(row.line <= text.size() + 1);
  }));
}

void CsvTest::utf8IsToldFromWhatIsNot_data() {
  QTest::addColumn<QByteArray>("bytes");
  QTest::addColumn<bool>("sound");
  // Unicode 15, table 3-7, Well-Formed UTF-8 Byte Sequences: ends of each row, and just outside.
  QTest::newRow("U+0000") << QByteArray("\x00", 1) << true;
  QTest::newRow("U+0080") << QByteArray("\xC2\x80") << true;
  QTest::newRow("U+07FF") << QByteArray("\xDF\xBF") << true;
  QTest::newRow("U+0800") << QByteArray("\xE0\xA0\x80") << true;
  QTest::newRow("U+D7FF") << QByteArray("\xED\x9F\xBF") << true;
  QTest::newRow("U+E000") << QByteArray("\xEE\x80\x80") << true;
  QTest::newRow("U+10000") << QByteArray("\xF0\x90\x80\x80") << true;
  QTest::newRow("U+10FFFF") << QByteArray("\xF4\x8F\xBF\xBF") << true;
  QTest::newRow("lone continuation") << QByteArray("\x80") << false;
  QTest::newRow("overlong two") << QByteArray("\xC1\xBF") << false;
  QTest::newRow("overlong three") << QByteArray("\xE0\x9F\xBF") << false;
  QTest::newRow("surrogate") << QByteArray("\xED\xA0\x80") << false;
  QTest::newRow("overlong four") << QByteArray("\xF0\x8F\xBF\xBF") << false;
  QTest::newRow("past the last") << QByteArray("\xF4\x90\x80\x80") << false;
  QTest::newRow("cut short") << QByteArray("\xE2\x82") << false;
}

void CsvTest::utf8IsToldFromWhatIsNot() {
  QFETCH(QByteArray, bytes);
  QFETCH(bool, sound);
  QCOMPARE(
      exchange::brokenUtf8At({bytes.constData(), static_cast<std::size_t>(bytes.size())}) == std::string_view::npos,
      sound);
}

void CsvTest::hostileTextIsShownWithoutItsControlCharacters() {
  QCOMPARE(exchange::shown("\x1B[31mred\xFF"), std::string("'\\x1B[31mred\\xFF'"));
  QCOMPARE(exchange::shown("\xC2\x9B"
                           "x"),
           std::string("'\\xC2\\x9Bx'"));
  QCOMPARE(exchange::shown("Ω"), std::string("'Ω'"));
  QVERIFY(exchange::shown(std::string(1000, 'a')).size() < 80);
}

QTEST_APPLESS_MAIN(CsvTest)
#include "tst_csv.moc"
