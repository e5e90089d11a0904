#include <rapidcheck.h>
#include <sheet/lettering.h>
#include <QTest>

using namespace ohmkin::sheet;

namespace {

std::string joined(const std::vector<std::string>& lines) {
  std::string out;
  for (const std::string& line : lines) out += (out.empty() ? "" : " ") + line;
  return out;
}

}  // namespace

class TestLettering : public QObject {
  Q_OBJECT
 private slots:
  void broken_utf8_becomes_the_replacement_character_data() {
    // What must not be taken as UTF-8: RFC 3629, sections 3 and 10 (overlong forms, surrogates, past U+10FFFF, cut
    // short).
    QTest::addColumn<QByteArray>("bytes");
    QTest::newRow("stray continuation") << QByteArray("\x80");
    QTest::newRow("overlong slash") << QByteArray("\xC0\xAF");
    QTest::newRow("overlong in three") << QByteArray("\xE0\x80\xAF");
    QTest::newRow("surrogate D800") << QByteArray("\xED\xA0\x80");
    QTest::newRow("past the last plane") << QByteArray("\xF4\x90\x80\x80");
    QTest::newRow("cut short") << QByteArray("\xE2\x82");
    QTest::newRow("never a byte") << QByteArray("\xFF");
  }
  void broken_utf8_becomes_the_replacement_character() {
    QFETCH(QByteArray, bytes);
    const QString text = QString::fromStdString(cleaned("a" + bytes.toStdString() + "b"));
    QVERIFY(text.startsWith(QLatin1Char('a')) && text.endsWith(QLatin1Char('b')));
    QCOMPARE(text.mid(1, text.size() - 2), QString(bytes.size(), QChar(0xFFFD)));
  }

  void sound_text_stays_as_it_is() {
    for (const char* text : {"82 °C", "(sender ∥ 510 Ω) + 12 Ω", "−6 K", "日本語", "\xF0\x9F\x9A\x97"})
      QCOMPARE(cleaned(text), std::string(text));
  }

  void control_characters_become_blanks() {
    QCOMPARE(cleaned("a\tb\nc\x01"
                     "d\x7F"
                     "e"),
             std::string("a b c d e"));
  }

  void a_number_stays_with_its_unit() {
    for (double width = 10; width < 60; width += 0.5)
      for (const std::string& line : wrapped("stands at 62 °C or 1.2 kΩ", 3, Weight::regular, width))
        QVERIFY2(!line.starts_with("°") && !line.starts_with("kΩ"), line.c_str());
  }

  void a_word_longer_than_the_line_is_broken() {
    const auto lines = wrapped(std::string(500, 'W'), 3, Weight::bold, 40);
    QVERIFY(lines.size() > 5);
    std::size_t letters = 0;
    for (const std::string& line : lines) {
      QVERIFY(widthOf(line, 3, Weight::bold) <= 40);
      letters += line.size();
    }
    QCOMPARE(letters, std::size_t(500));
  }

  void what_does_not_fit_ends_in_an_ellipsis() {
    const auto lines = wrapped("one two three four five six seven eight nine ten", 3, Weight::regular, 30, 2);
    QCOMPARE(lines.size(), std::size_t(2));
    QVERIFY(lines[1].ends_with("…"));
    QVERIFY(widthOf(lines[1], 3) <= 30);
    QCOMPARE(elided("short", 3, Weight::regular, 30), std::string("short"));
  }

  void balanced_lines_say_all_of_it_in_as_many_lines() {
    const std::string text = "Warmed up with the 82 °C thermostat the needle stands at 62 °C.";
    const auto plain = wrapped(text, 5.4, Weight::bold, 164);
    const auto even = balanced(text, 5.4, Weight::bold, 164, 2);
    QCOMPARE(even.size(), plain.size());
    QCOMPARE(joined(even), text);
    QVERIFY(widthOf(even[0], 5.4, Weight::bold) < widthOf(plain[0], 5.4, Weight::bold));
  }

  void wrapping_loses_no_word_and_keeps_to_the_width() {
    QVERIFY(rc::check([] {
      const auto words = *rc::gen::container<std::vector<std::string>>(
          rc::gen::nonEmpty(rc::gen::container<std::string>(rc::gen::element('a', 'm', 'W', '.', '7', '<'))));
      std::string text;
      for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
      const double width = 20 + *rc::gen::inRange(0, 100);
      std::string kept;
      for (const std::string& line : wrapped(text, 3, Weight::bold, width)) {
        RC_ASSERT(widthOf(line, 3, Weight::bold) <= width);
        RC_ASSERT(!line.empty());
        kept += line;
      }
      std::erase(text, ' ');
      std::erase(kept, ' ');
      RC_ASSERT(kept == text);
    }));
  }

  void any_bytes_at_all_give_text_that_xml_can_hold() {
    QVERIFY(rc::check([](const std::string& bytes) {
      const std::string text = cleaned(bytes);
      RC_ASSERT(QString::fromStdString(text).toStdString() == text);
      for (const QChar c : QString::fromStdString(text)) RC_ASSERT(c.unicode() >= 0x20);
    }));
  }
};

QTEST_APPLESS_MAIN(TestLettering)
#include "tst_lettering.moc"
