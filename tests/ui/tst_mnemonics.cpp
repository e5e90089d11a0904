#include <app/language.h>
#include <look/style.h>
#include <QAbstractButton>
#include <QMenu>
#include <QTranslator>
#include "every_page.h"

using namespace ohmkin;

namespace {

/// The letter Alt takes; none: empty.
QString letterOf(const QString& text) {
  const QKeySequence keys = QKeySequence::mnemonic(text);
  return keys.isEmpty() ? QString() : keys.toString().toUpper();
}

QString where(const QWidget& widget) {
  return QString::fromLatin1(widget.metaObject()->className()).section(QLatin1Char(':'), -1);
}

}  // namespace

/// Of what Alt and a letter press at one time no two have the same letter: Qt would go from one to the other and press
/// neither.
class TestMnemonics : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  static QStringList clashes(const QWidget& whole) {
    QMap<QString, QStringList> taken;
    for (const QAbstractButton* button : whole.findChildren<QAbstractButton*>())
      if (button->isVisible() && !letterOf(button->text()).isEmpty())
        taken[letterOf(button->text())] << where(*button) + QLatin1Char(' ') + button->text();
    QStringList faults;
    for (auto each = taken.cbegin(); each != taken.cend(); ++each)
      if (each.value().size() > 1)
        faults << each.key() + QStringLiteral(": ") + each.value().join(QStringLiteral(", "));
    return faults;
  }

 private slots:
  void initTestCase() {
    QVERIFY(demo_.whole());
    QApplication::setStyle(new look::Style);
  }

  void cleanup() {
    for (QTranslator* each : qApp->findChildren<QTranslator*>()) {
      QCoreApplication::removeTranslator(each);
      delete each;
    }
    QLocale::setDefault(QLocale(QLocale::English));
  }

  void noTwoButtonsHaveOneLetter_data() {
    QTest::addColumn<QString>("language");
    QTest::newRow("English") << QStringLiteral("en");
    QTest::newRow("German") << QStringLiteral("de");
  }
  void noTwoButtonsHaveOneLetter() {
    QFETCH(QString, language);
    app::speak(language, *qApp);
    QStringList faults;
    int seen = 0;
    {
      EveryPage every(demo_, qPrintable(language + QStringLiteral(".ini")), {1440, 900}, true);
      every.visit([&](const QString& state) {
        ++seen;
        for (const QString& fault : clashes(every.window())) faults << state + QStringLiteral(": ") + fault;
      });
      every.window().backupSheet().offer(demo_.file());
      QTest::qWait(300);
      for (const QString& fault : clashes(every.window().backupSheet())) faults << QStringLiteral("Backups: ") + fault;
    }
    QVERIFY(seen > 14);
    QVERIFY2(faults.isEmpty(), qPrintable(listed(faults)));
  }

  void noTwoEntriesOfTheMenuHaveOneLetter_data() { noTwoButtonsHaveOneLetter_data(); }
  void noTwoEntriesOfTheMenuHaveOneLetter() {
    QFETCH(QString, language);
    app::speak(language, *qApp);
    desk::Settings settings(demo_.path("menu.ini"));
    const app::Window window(settings);
    QMap<QString, QStringList> taken;
    for (const QAction* action : window.menu().actions())
      if (const QString letter = letterOf(action->text()); !letter.isEmpty()) taken[letter] << action->text();
    QStringList faults;
    for (auto each = taken.cbegin(); each != taken.cend(); ++each)
      if (each.value().size() > 1) faults << each.value().join(QStringLiteral(", "));
    QVERIFY2(faults.isEmpty(), qPrintable(listed(faults)));
    QVERIFY(taken.size() > 5);
  }
};

QTEST_MAIN(TestMnemonics)
#include "tst_mnemonics.moc"
