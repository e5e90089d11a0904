#include <look/palette.h>
#include <look/type.h>
#include <QApplication>
#include <QTest>

using namespace ohmkin::look;

/// Contrast after WCAG 2.2: 1.4.3 (text 4.5:1), 1.4.11 (graphics and edges of controls 3:1).
class TestPalette : public QObject {
  Q_OBJECT

 private slots:
  void contrastIsWcags() {
    // WCAG 2.2, definition of contrast ratio: from 1:1 to 21:1, black on white.
    QCOMPARE(contrast(Qt::black, Qt::white), 21.0);
    QCOMPARE(contrast(Qt::white, Qt::black), 21.0);
    QCOMPARE(contrast(QColor(10, 20, 30), QColor(10, 20, 30)), 1.0);
    // WCAG 2.2, relative luminance: L = 0.2126 R + 0.7152 G + 0.0722 B; pure blue on white is (1.05)/(0.0722 + 0.05).
    QVERIFY(std::abs(contrast(Qt::blue, Qt::white) - 1.05 / 0.1222) < 1e-9);
  }

  void textCanBeRead_data() {
    QTest::addColumn<int>("ink");
    QTest::addColumn<int>("ground");
    const auto row = [](const char* name, Paint ink, Paint ground) {
      QTest::newRow(name) << static_cast<int>(ink) << static_cast<int>(ground);
    };
    row("ink on ground", Paint::ink, Paint::ground);
    row("ink on panel", Paint::ink, Paint::panel);
    row("ink on the chosen", Paint::ink, Paint::accentWash);
    row("ink on a caution", Paint::ink, Paint::warningWash);
    row("quiet on ground", Paint::quiet, Paint::ground);
    row("quiet on panel", Paint::quiet, Paint::panel);
    row("quiet on the unknown", Paint::quiet, Paint::unknownWash);
    row("accent on panel", Paint::accent, Paint::panel);
    row("accent on ground", Paint::accent, Paint::ground);
    row("accent on the chosen", Paint::accent, Paint::accentWash);
    row("warning on panel", Paint::warning, Paint::panel);
    row("warning on ground", Paint::warning, Paint::ground);
    row("warning on a caution", Paint::warning, Paint::warningWash);
    row("warning on the chosen", Paint::warning, Paint::accentWash);
    row("chosen text in the box", Paint::panel, Paint::accent);
  }
  void textCanBeRead() {
    QFETCH(int, ink);
    QFETCH(int, ground);
    for (const Tone tone : {Tone::light, Tone::dark}) {
      const double ratio = contrast(colour(static_cast<Paint>(ink), tone), colour(static_cast<Paint>(ground), tone));
      QVERIFY2(ratio >= 4.5,
               qPrintable(QStringLiteral("%1:1 in %2").arg(ratio).arg(tone == Tone::light ? "light" : "dark")));
    }
  }

  void edgesOfControlsCanBeSeen() {
    for (const Tone tone : {Tone::light, Tone::dark})
      for (const Paint shape : {Paint::edge, Paint::accent, Paint::warning, Paint::quiet})
        for (const Paint under : {Paint::ground, Paint::panel})
          QVERIFY2(contrast(colour(shape, tone), colour(under, tone)) >= 3.0,
                   qPrintable(QStringLiteral("paint %1 on %2: %3")
                                  .arg(int(shape))
                                  .arg(int(under))
                                  .arg(contrast(colour(shape, tone), colour(under, tone)))));
  }

  void aDarkDesktopIsTakenForDark() {
    QPalette desktop;
    desktop.setColor(QPalette::Window, Qt::black);
    desktop.setColor(QPalette::WindowText, Qt::white);
    QCOMPARE(toneOf(desktop), Tone::dark);
    desktop.setColor(QPalette::Window, Qt::white);
    desktop.setColor(QPalette::WindowText, Qt::black);
    QCOMPARE(toneOf(desktop), Tone::light);
  }

  void sizesFollowTheFont() {
    const QFont before = QApplication::font();
    QFont twice = before;
    twice.setPixelSize(26);
    QApplication::setFont(twice);
    QCOMPARE(space(8), 16);
    QVERIFY(typeface(Text::headline).pixelSize() > 26);
    QApplication::setFont(before);
  }
};

QTEST_MAIN(TestPalette)
#include "tst_palette.moc"
