/// Not a test: makes the README's picture of the match page by the program itself.
///   picture CATALOGUE "1968 ridgeway utility …" OUT.png [--size 1440x900] [--tone dark] [--sender N] [--tab 0|1|2|3]
///   [--check]
///   [--fahrenheit]
#include <app/window.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <match/match_page.h>
#include <QApplication>
#include <QCommandLineParser>
#include <QTemporaryDir>
#include <QTest>

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  QCommandLineParser given;
  given.addOptions({{QStringLiteral("size"), QString(), QStringLiteral("WxH"), QStringLiteral("1440x900")},
                    {QStringLiteral("tone"), QString(), QStringLiteral("tone"), QStringLiteral("light")},
                    {QStringLiteral("sender"), QString(), QStringLiteral("n"), QStringLiteral("0")},
                    {QStringLiteral("tab"), QString(), QStringLiteral("n"), QStringLiteral("0")},
                    {QStringLiteral("branch"), QString(), QStringLiteral("n"), QStringLiteral("0")},
                    {QStringLiteral("points"), QString(), QStringLiteral("n")},
                    {QStringLiteral("refused"), QString()},
                    {QStringLiteral("check"), QString()},
                    {QStringLiteral("list"), QString()},
                    {QStringLiteral("menu"), QString()},
                    {QStringLiteral("fahrenheit"), QString()}});
  given.process(application);
  const QStringList words = given.positionalArguments();
  if (words.size() != 3) return 2;

  ohmkin::look::chooseFamily();
  if (given.isSet(QStringLiteral("points"))) {
    QFont larger = QApplication::font();
    larger.setPointSizeF(given.value(QStringLiteral("points")).toDouble());
    QApplication::setFont(larger);
  }
  QApplication::setStyle(new ohmkin::look::Style);
  ohmkin::look::setTone(given.value(QStringLiteral("tone")) == QStringLiteral("dark") ? ohmkin::look::Tone::dark
                                                                                      : ohmkin::look::Tone::light);
  const QTemporaryDir folder;
  ohmkin::desk::Settings settings(folder.filePath(QStringLiteral("settings.ini")));
  if (given.isSet(QStringLiteral("fahrenheit"))) settings.setUnits({ohmkin::TemperatureUnit::fahrenheit, {}});
  ohmkin::app::Window window(settings);
  const QStringList size = given.value(QStringLiteral("size")).split(QLatin1Char('x'));
  window.resize(size.value(0).toInt(), size.value(1).toInt());
  window.show();
  if (words[0] == QStringLiteral("-")) window.openLast();
  else window.openCatalogue(words[0]);

  auto* page = qobject_cast<ohmkin::match::MatchPage*>(&window.page());
  page->query().setText(words[1]);
  if (given.isSet(QStringLiteral("list"))) {
    page->query().takeFocus();
    QTest::qWait(300);
    page->query().edit()->end(false);
    QTest::keyClicks(page->query().edit(), QStringLiteral(" ri"));
  }
  QTest::qWait(1200);
  if (given.isSet(QStringLiteral("refused"))) QTest::keyClick(page, Qt::Key_R, Qt::ControlModifier);
  page->branches().choose(given.value(QStringLiteral("branch")).toInt());
  for (int i = 0; i < given.value(QStringLiteral("sender")).toInt(); ++i)
    QTest::keyClick(&page->candidates(), Qt::Key_Down);
  if (given.isSet(QStringLiteral("tab")))
    page->details().showTab(static_cast<ohmkin::match::DetailPanel::Tab>(given.value(QStringLiteral("tab")).toInt()));
  if (given.isSet(QStringLiteral("check"))) {
    page->details().errors().check().click();
    while (page->details().errors().checking()) QTest::qWait(50);
  }
  if (given.isSet(QStringLiteral("menu"))) QTest::keyClick(&window, Qt::Key_F10);
  QTest::qWait(150);
  QPixmap picture = window.grab();
  if (QWidget* popup = QApplication::activePopupWidget()) {
    QPainter painter(&picture);
    painter.drawPixmap(window.mapFromGlobal(popup->mapToGlobal(QPoint(0, 0))), popup->grab());
  }
  return picture.save(words[2]) ? 0 : 1;
}
