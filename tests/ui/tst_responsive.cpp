#include <app/language.h>
#include <look/style.h>
#include <look/type.h>
#include <QAbstractButton>
#include <QElapsedTimer>
#include <QLabel>
#include <QPushButton>
#include <QTimer>
#include "every_page.h"

using namespace ohmkin;

namespace {

/// How long the window's thread was ever away from its events.
class Heartbeat {
 public:
  Heartbeat() {
    timer_.setInterval(10);
    QObject::connect(&timer_, &QTimer::timeout, &timer_, [this] { beat(); });
    since_.start();
    timer_.start();
  }
  [[nodiscard]] qint64 longest() {
    beat();
    return longest_;
  }

 private:
  void beat() { longest_ = std::max(longest_, since_.restart()); }
  QTimer timer_;
  QElapsedTimer since_;
  qint64 longest_ = 0;
};

#ifdef OHMKIN_TIMES_SLOWER
constexpr qint64 kMostMilliseconds = 200 * OHMKIN_TIMES_SLOWER;
#else
constexpr qint64 kMostMilliseconds = 200;
#endif

}  // namespace

/// The window answers while it works, and what it says has room.
class TestResponsive : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  QString longFile() const {
    QFile file(demo_.path("long.csv"));
    if (!file.open(QIODevice::WriteOnly)) return {};
    file.write("part,temperature C,ohms\n");
    for (int row = 0; row < 800000; ++row) {
      const int celsius = 20 + row % 100;
      file.write(QByteArray("X") + QByteArray::number(row / 800) + ',' + QByteArray::number(celsius) + ',' +
                 QByteArray::number(2000.0 * std::exp(-0.035 * celsius), 'f', 2) + '\n');
    }
    return file.fileName();
  }

 private slots:
  void initTestCase() {
    app::speak(QStringLiteral("de"), *qApp);  // its words are the longer ones
    QVERIFY(demo_.whole());
    look::chooseFamily();
    QApplication::setStyle(new look::Style);
  }

  void theWindowAnswersWhileALongFileIsRead() {
    desk::Settings settings(demo_.path("heart.ini"));
    app::Window window(settings);
    window.show();
    window.openCatalogue(demo_.copy("heart.ohmkin"));
    window.takeFile(longFile());
    auto* page = qobject_cast<measure::BenchPage*>(&window.page());
    QVERIFY(page != nullptr);
    QTRY_VERIFY(page->file().working());
    Heartbeat heart;
    QVERIFY(QTest::qWaitFor([&] { return !page->file().working(); }, 60000));
    QVERIFY2(heart.longest() < kMostMilliseconds, qPrintable(QString::number(heart.longest())));
  }

  /// "At once" is measured with what this machine takes to read the same file to its end.
  void readingIsCancelledAtOnce() {
    desk::Settings settings(demo_.path("cancel.ini"));
    app::Window window(settings);
    window.show();
    window.openCatalogue(demo_.copy("cancel.ohmkin"));
    const QString file = longFile();
    const auto begin = [&]() -> measure::BenchPage* {
      window.takeFile(file);
      auto* page = qobject_cast<measure::BenchPage*>(&window.page());
      const bool working = page != nullptr && QTest::qWaitFor([&] { return page->file().working(); });
      return working ? page : nullptr;
    };
    QElapsedTimer clock;
    clock.start();
    const measure::BenchPage* whole = begin();
    QVERIFY(whole != nullptr);
    QVERIFY(QTest::qWaitFor([&] { return !whole->file().working(); }, 60000));
    const qint64 toTheEnd = clock.restart();
    measure::BenchPage* page = begin();
    QVERIFY(page != nullptr);
    QTest::qWait(20);
    clock.restart();
    QTest::keyClick(QApplication::focusWidget() == nullptr ? page : QApplication::focusWidget(), Qt::Key_Escape);
    QVERIFY(QTest::qWaitFor([&] { return !page->file().working(); }, 10000));
    QVERIFY2(clock.elapsed() < toTheEnd / 2, qPrintable(QStringLiteral("%1 of %2").arg(clock.elapsed()).arg(toTheEnd)));
  }

  void noWordsAreCutOff_data() {
    QTest::addColumn<double>("points");
    QTest::newRow("usual type") << 0.0;
    QTest::newRow("type of 200 %") << 2.0;
  }
  void noWordsAreCutOff() {
    QFETCH(double, points);
    const QFont before = QApplication::font();
    if (points > 0) {
      QFont larger = before;
      larger.setPointSizeF(before.pointSizeF() * points);
      QApplication::setFont(larger);
    }
    QStringList faults;
    {
      EveryPage every(demo_, points > 0 ? "large.ini" : "usual.ini", points > 0 ? QSize(1920, 1080) : QSize(1024, 700));
      every.visit([&](const QString& state) {
        for (const QLabel* label : every.window().findChildren<QLabel*>()) {
          if (!label->isVisible() || label->text().isEmpty()) continue;
          const bool cut = label->wordWrap() ? label->heightForWidth(label->width()) > label->height() + 1
                                             : label->sizeHint().width() > label->width() + 1;
          if (cut) faults << state + QStringLiteral(": ") + label->text();
        }
        for (const QPushButton* button : every.window().findChildren<QPushButton*>())
          if (button->isVisible() && button->fontMetrics().horizontalAdvance(button->text()) > button->width())
            faults << state + QStringLiteral(": button ") + button->text();
      });
    }
    QApplication::setFont(before);
    QVERIFY2(faults.isEmpty(), qPrintable(listed(faults)));
  }
};

QTEST_MAIN(TestResponsive)
#include "tst_responsive.moc"
