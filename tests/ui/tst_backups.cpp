#include <app/language.h>
#include <catalog/backup.h>
#include <catalogue/catalogue_page.h>
#include <date/date_page.h>
#include <fault/fault_page.h>
#include <jobs/jobs_page.h>
#include <look/style.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <plan/plan_page.h>
#include <sqlite3.h>
#include <workflow/stock_work.h>
#include <QAbstractButton>
#include <QAccessible>
#include <QDir>
#include "shown_window.h"

using namespace ohmkin;
using app::BackupSheet;

namespace {

constexpr int kPages = 7;
constexpr int kCatalogue = 5;
constexpr int kPatience = 15000;

int piecesIn(const QString& file) {
  return workflow::onShelf(catalog::Catalogue::openToRead(file.toStdString()), "BR-2215")->quantity;
}

void sellOneIn(const QString& file) {
  auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
  QVERIFY(workflow::sell(catalogue, "BR-2215", {}, 1, {"Ann", {}, {}}));
}

/// Behind the program's back, as a foreign tool would.
void inFile(const QString& file, const char* sql) {
  sqlite3* handle = nullptr;
  QCOMPARE(sqlite3_open(file.toUtf8().constData(), &handle), SQLITE_OK);
  QCOMPARE(sqlite3_exec(handle, sql, nullptr, nullptr, nullptr), SQLITE_OK);
  sqlite3_close(handle);
}

/// Where a table begins, overwritten: its rows no longer read.
void damage(const QString& file) {
  sqlite3* handle = nullptr;
  sqlite3_stmt* asked = nullptr;
  QCOMPARE(sqlite3_open(file.toUtf8().constData(), &handle), SQLITE_OK);
  const char* sql =
      "SELECT rootpage, (SELECT page_size FROM pragma_page_size) FROM sqlite_schema WHERE name = 'sample'";
  QCOMPARE(sqlite3_prepare_v2(handle, sql, -1, &asked, nullptr), SQLITE_OK);
  QCOMPARE(sqlite3_step(asked), SQLITE_ROW);
  const qint64 page = sqlite3_column_int64(asked, 0);
  const qint64 size = sqlite3_column_int64(asked, 1);
  sqlite3_finalize(asked);
  sqlite3_close(handle);
  QFile bytes(file);
  QVERIFY(bytes.open(QIODevice::ReadWrite));
  bytes.seek((page - 1) * size);
  bytes.write(QByteArray(static_cast<int>(size), '\xA5'));
}

}  // namespace

/// Backups from the window, with real files.
class TestBackups : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  QString fresh(const char* name) const {
    QDir(demo_.path(name) + QStringLiteral(".backups")).removeRecursively();
    for (const char* ending : {"-wal", "-shm"}) QFile::remove(demo_.path(name) + QString::fromLatin1(ending));
    return demo_.copy(name);
  }
  static BackupSheet& opened(ShownWindow& shown) {
    ShownWindow::press(Qt::Key_B, Qt::ControlModifier);
    BackupSheet& sheet = shown.window.backupSheet();
    (void)QTest::qWaitFor([&] { return sheet.isVisible(); });
    QTest::qWait(150);  // listed
    return sheet;
  }
  static QString cell(const BackupSheet& sheet, int row, int column) {
    return sheet.list().model()->index(row, column).data().toString();
  }
  /// Every page was shown once, so that each has the catalogue open.
  static void visitAll(ShownWindow& shown) {
    for (int at = 0; at < kPages; ++at) {
      shown.at<desk::Page>(at);
      QTest::qWait(150);
    }
  }

 private slots:
  void initTestCase() {
    QVERIFY(demo_.whole());
    app::speak(QStringLiteral("en"), *qApp);  // one and many
    QApplication::setStyle(new look::Style);
  }

  void oneIsMadeListedAndFoundWhole() {
    ShownWindow shown(demo_, "made.ini");
    shown.open(fresh("made.ohmkin"));
    BackupSheet& sheet = opened(shown);
    QVERIFY(sheet.backups().empty());
    ShownWindow::press(Qt::Key_M, Qt::AltModifier);
    QTRY_COMPARE_WITH_TIMEOUT(sheet.backups().size(), std::size_t{1}, kPatience);
    QVERIFY2(sheet.told().startsWith("Backup made"), qPrintable(sheet.told()));
    QCOMPARE(cell(sheet, 0, 1), QStringLiteral("by hand"));
    QTRY_COMPARE_WITH_TIMEOUT(cell(sheet, 0, 3), QStringLiteral("whole"), kPatience);
    ShownWindow::press(Qt::Key_Escape);
    QVERIFY(!sheet.isVisible());
  }

  void aDamagedOneIsSaidAndNotGoneBackTo() {
    const QString file = fresh("hurt.ohmkin");
    const auto backup = catalog::backUp(catalog::Catalogue::openToRead(file.toStdString()));
    std::filesystem::resize_file(backup.file, std::filesystem::file_size(backup.file) - 1);
    ShownWindow shown(demo_, "hurt.ini");
    shown.open(file);
    BackupSheet& sheet = opened(shown);
    QTRY_COMPARE_WITH_TIMEOUT(cell(sheet, 0, 3), QStringLiteral("damaged"), kPatience);
    sheet.list().setFocus();
    ShownWindow::press(Qt::Key_Return);
    QTest::qWait(100);
    QVERIFY(sheet.question().isEmpty());
  }

  void goingBackIsSaidDoneAndUndone() {
    const QString file = fresh("back.ohmkin");
    const int before = piecesIn(file);
    (void)catalog::backUp(catalog::Catalogue::openToRead(file.toStdString()));
    ShownWindow shown(demo_, "back.ini");
    shown.open(file);
    visitAll(shown);
    sellOneIn(file);
    sellOneIn(file);
    BackupSheet& sheet = opened(shown);
    QTRY_VERIFY(sheet.list().hasFocus());
    const int rows = sheet.list().model()->rowCount();
    for (int row = 1; row < rows; ++row) ShownWindow::press(Qt::Key_Down);  // the oldest, made by hand
    ShownWindow::press(Qt::Key_Return);
    QTRY_VERIFY(!sheet.question().isEmpty());
    QVERIFY2(sheet.question().contains("loses 2 movements of the shelf"), qPrintable(sheet.question()));
    QVERIFY(sheet.goBackButton().hasFocus());
    ShownWindow::press(Qt::Key_Space);
    QTRY_VERIFY_WITH_TIMEOUT(!sheet.working() && sheet.told().startsWith("The catalogue is as it was"), kPatience);
    QCOMPARE(piecesIn(file), before);
    // Every page has what is there now.
    auto& catalogue = *shown.window.findChild<shelves::CataloguePage*>();
    QTRY_VERIFY(catalogue.ready());
    QTRY_VERIFY(shown.window.findChild<jobs::JobsPage*>()->ready());
    QTRY_VERIFY(shown.window.findChild<measure::BenchPage*>()->ready());
    // And back again, by the keyboard.
    QVERIFY(sheet.undoButton().isVisible());
    ShownWindow::press(Qt::Key_U, Qt::AltModifier);
    QTRY_VERIFY(!sheet.question().isEmpty());
    QVERIFY2(sheet.question().contains("nothing is lost; it gets back 2 movements"), qPrintable(sheet.question()));
    ShownWindow::press(Qt::Key_Space);
    QTRY_VERIFY_WITH_TIMEOUT(!sheet.working() && piecesIn(file) == before - 2, kPatience);
    ShownWindow::press(Qt::Key_Escape);
    // The catalogue page reads and writes the file that is there now.
    auto& page = shown.at<shelves::CataloguePage>(kCatalogue);
    QTRY_VERIFY(page.ready());
    QTest::keyClicks(page.query().edit(), QStringLiteral("br2215"));
    QTRY_VERIFY(page.found().rows().rowCount() > 0);
    ShownWindow::press(Qt::Key_Return);
    QTRY_COMPARE(page.thing().shownNow().number, QStringLiteral("BR-2215"));
    ShownWindow::press(Qt::Key_F4);
    QTRY_COMPARE(piecesIn(file), before - 3);
  }

  void whatIsTypedIsSaidBefore() {
    const QString file = fresh("typed.ohmkin");
    (void)catalog::backUp(catalog::Catalogue::openToRead(file.toStdString()));
    ShownWindow shown(demo_, "typed.ini");
    shown.open(file);
    auto& jobs = shown.at<jobs::JobsPage>(6);
    QTRY_VERIFY(jobs.ready());
    ShownWindow::press(Qt::Key_N, Qt::ControlModifier);
    QTRY_VERIFY(jobs.job().fields().reference().hasFocus());
    QTest::keyClicks(&jobs.job().fields().reference(), QStringLiteral("green wagon"));
    BackupSheet& sheet = opened(shown);
    QTRY_VERIFY(sheet.list().hasFocus());
    ShownWindow::press(Qt::Key_Return);
    QTRY_VERIFY(sheet.question().contains("green wagon"));
    ShownWindow::press(Qt::Key_L, Qt::AltModifier);  // leave it
    QTRY_VERIFY(sheet.question().isEmpty());
    ShownWindow::press(Qt::Key_Escape);
    QCOMPARE(jobs.job().fields().reference().text(), QStringLiteral("green wagon"));
  }

  void aCatalogueInUseElsewhereStaysAndIsOpenedAgain() {
    const QString file = fresh("used.ohmkin");
    (void)catalog::backUp(catalog::Catalogue::openToRead(file.toStdString()));
    sellOneIn(file);
    const int before = piecesIn(file);
    ShownWindow shown(demo_, "used.ini");
    shown.open(file);
    const auto elsewhere = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    QVERIFY(workflow::onShelf(elsewhere, "BR-2215"));
    BackupSheet& sheet = opened(shown);
    QTRY_VERIFY(!sheet.backups().empty());
    sheet.askBack(static_cast<int>(sheet.backups().size()) - 1);
    QTRY_VERIFY(!sheet.question().isEmpty());
    sheet.goBackButton().click();
    QTRY_VERIFY_WITH_TIMEOUT(!sheet.working() && sheet.told().startsWith("Not gone back"), kPatience);
    QCOMPARE(piecesIn(file), before);
    ShownWindow::press(Qt::Key_Escape);
    auto* match = qobject_cast<match::MatchPage*>(&shown.window.page());
    match->query().setText(kSettled);
    QTRY_VERIFY(match->showsAnswer());
  }

  void aFileThatIsNoCatalogueIsPutRight() {
    const QString file = fresh("coffee.ohmkin");
    (void)catalog::backUp(catalog::Catalogue::openToRead(file.toStdString()));
    QFile spilt(file);
    QVERIFY(spilt.open(QIODevice::WriteOnly | QIODevice::Truncate));
    spilt.write("spilt coffee");
    spilt.close();
    ShownWindow shown(demo_, "coffee.ini");
    shown.window.openCatalogue(file);
    auto* match = qobject_cast<match::MatchPage*>(&shown.window.page());
    QTRY_VERIFY(match->start().copies().isVisible());
    QVERIFY(!match->start().salvage().isVisible());  // nothing of it would read
    match->start().copies().click();
    BackupSheet& sheet = shown.window.backupSheet();
    QTRY_VERIFY(!sheet.trouble().isEmpty());
    QTRY_VERIFY(sheet.backups().size() == 1);
    sheet.askBack(0);
    QTRY_VERIFY2(sheet.question().contains("does not read"), qPrintable(sheet.question()));
    sheet.goBackButton().click();
    QTRY_VERIFY_WITH_TIMEOUT(!sheet.working() && sheet.trouble().isEmpty() && !sheet.told().isEmpty(), kPatience);
    QTRY_COMPARE(shown.window.windowTitle(), QStringLiteral("coffee.ohmkin – Ohmkin"));
  }

  void foreignTablesAreRefusedAndWhatIsOursIsSaved() {
    const QString file = fresh("foreign.ohmkin");
    inFile(file, "CREATE TABLE uninvited (a)");
    ShownWindow shown(demo_, "foreign.ini");
    shown.window.openCatalogue(file);
    auto* match = qobject_cast<match::MatchPage*>(&shown.window.page());
    QTRY_VERIFY(match->start().salvage().isVisible());
    match->start().copies().click();
    BackupSheet& sheet = shown.window.backupSheet();
    QTRY_VERIFY(!sheet.trouble().isEmpty());
    const QString saved = demo_.path("foreign-saved.ohmkin");
    QFile::remove(saved);
    sheet.salvageInto(saved);
    QTRY_VERIFY_WITH_TIMEOUT(sheet.told().contains("Nothing was lost"), kPatience);
    QTRY_VERIFY(sheet.openSavedButton().hasFocus());
    ShownWindow::press(Qt::Key_Space);
    QTRY_COMPARE(shown.window.windowTitle(), QStringLiteral("foreign-saved.ohmkin – Ohmkin"));
    match->query().setText(kSettled);
    QTRY_VERIFY(match->showsAnswer());
    // A file that exists is never written over.
    QFile::remove(demo_.path("foreign2.ohmkin"));
    shown.window.openCatalogue(file);
    QTRY_VERIFY(match->start().salvage().isVisible());
    match->start().copies().click();
    QTRY_VERIFY(!sheet.trouble().isEmpty());
    sheet.salvageInto(saved);
    QTRY_VERIFY_WITH_TIMEOUT(!sheet.working() && !sheet.told().isEmpty(), kPatience);
    QVERIFY2(!sheet.openSavedButton().isVisible(), qPrintable(sheet.told()));
  }

  void aDamagedCatalogueIsSavedAsFarAsItReads() {
    const QString file = fresh("damaged.ohmkin");
    damage(file);
    ShownWindow shown(demo_, "damaged.ini");
    shown.window.openCatalogue(file);
    QTest::qWait(500);
    BackupSheet& sheet = opened(shown);
    const QString saved = demo_.path("damaged-saved.ohmkin");
    QFile::remove(saved);
    sheet.salvageInto(saved);
    QVERIFY2(QTest::qWaitFor([&] { return !sheet.working() && sheet.told().contains("rows"); }, kPatience),
             qPrintable(sheet.told()));
    QVERIFY2(!sheet.told().contains("Nothing was lost"), qPrintable(sheet.told()));
    QVERIFY(QFile::exists(saved));
  }

  void aDaysBackupThatFailedIsToldOnce() {
    const QString file = fresh("missed.ohmkin");
    inFile(file, "UPDATE pack SET loaded = '2020-01-01T00:00:00Z' WHERE id = 'shop'");
    QFile inTheWay(file + QStringLiteral(".backups"));  // no folder can be made there
    QVERIFY(inTheWay.open(QIODevice::WriteOnly));
    inTheWay.close();
    const int before = piecesIn(file);
    ShownWindow shown(demo_, "missed.ini");
    shown.open(file);
    sellOneIn(file);
    QCOMPARE(piecesIn(file), before - 1);
    QTRY_VERIFY(shown.question() != nullptr);
    QVERIFY2(shown.question()->text().contains("no backup"), qPrintable(shown.question()->text()));
    QTest::keyClick(shown.question(), Qt::Key_Escape);
    sellOneIn(file);
    QTest::qWait(2500);
    QVERIFY(shown.question() == nullptr);
    inTheWay.remove();
  }

  void everyControlHasANameAndTabStaysInside() {
    QAccessible::setActive(true);
    const QString file = fresh("names.ohmkin");
    (void)catalog::backUp(catalog::Catalogue::openToRead(file.toStdString()));
    ShownWindow shown(demo_, "names.ini");
    shown.open(file);
    BackupSheet& sheet = opened(shown);
    QTRY_VERIFY(sheet.list().hasFocus());
    sheet.askBack(0);
    QTRY_VERIFY(!sheet.question().isEmpty());
    QSet<QWidget*> reached;
    for (int i = 0; i < 20; ++i) {
      ShownWindow::press(Qt::Key_Tab);
      QVERIFY(sheet.isAncestorOf(QApplication::focusWidget()));
      reached.insert(QApplication::focusWidget());
    }
    for (QWidget* widget : sheet.findChildren<QWidget*>()) {
      if (!widget->isVisible() || !widget->isEnabled() || !(widget->focusPolicy() & Qt::TabFocus)) continue;
      QVERIFY2(reached.contains(widget), widget->metaObject()->className());
      const auto* told = QAccessible::queryAccessibleInterface(widget);
      QVERIFY2(told != nullptr && !told->text(QAccessible::Name).isEmpty(), widget->metaObject()->className());
    }
    QVERIFY(reached.size() >= 5);
  }
};

QTEST_MAIN(TestBackups)
#include "tst_backups.moc"
