#include <QFile>
#include <QMimeDatabase>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include "demo_catalogue.h"

/// A catalogue is known by what is in it, under whatever name: shared-mime-info's database made from our file, read by
/// Qt.
class TestMimeType : public QObject {
  Q_OBJECT
  ohmkin::test::DemoCatalogue demo_;
  QTemporaryDir folder_;

 private slots:
  void initTestCase() {
    if (QStandardPaths::findExecutable("update-mime-database").isEmpty()) QSKIP("no shared-mime-info");
    QVERIFY(QDir(folder_.path()).mkpath("mime/packages"));
    QVERIFY(QFile::copy(OHMKIN_MIME, folder_.filePath("mime/packages/ohmkin.xml")));
    // As installed: beside the types every desktop has, SQLite's among them.
    const QString known = QStringLiteral("/usr/share/mime/packages/freedesktop.org.xml");
    QVERIFY(QFile::copy(known, folder_.filePath("mime/packages/freedesktop.org.xml")));
    QCOMPARE(QProcess::execute("update-mime-database", {folder_.filePath("mime")}), 0);
    qputenv("XDG_DATA_DIRS", folder_.path().toUtf8());  // before the first question to the database
    qputenv("XDG_DATA_HOME", folder_.filePath("home").toUtf8());
  }

  void a_catalogue_is_known_by_its_header() {
    const QString other = folder_.filePath("renamed.bin");
    QVERIFY(QFile::copy(QString::fromStdString(demo_.file().string()), other));
    QCOMPARE(QMimeDatabase().mimeTypeForFile(other).name(), QStringLiteral("application/x-ohmkin"));
    QCOMPARE(QMimeDatabase().mimeTypeForFile("shop.ohmkin", QMimeDatabase::MatchExtension).name(),
             QStringLiteral("application/x-ohmkin"));
  }

  void another_database_is_not_taken_for_one() {
    const QString other = folder_.filePath("other.bin");
    QVERIFY(QFile::copy(QString::fromStdString(demo_.file().string()), other));
    QFile file(other);
    file.setPermissions(QFile::ReadOwner | QFile::WriteOwner);
    QVERIFY(file.open(QIODevice::ReadWrite) && file.seek(68));
    file.write("ELSE");
    file.close();
    QCOMPARE(QMimeDatabase().mimeTypeForFile(other).name(), QStringLiteral("application/vnd.sqlite3"));
  }
};

QTEST_GUILESS_MAIN(TestMimeType)
#include "tst_mime_type.moc"
