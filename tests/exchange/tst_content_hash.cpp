#include <exchange/content_hash.h>
#include <QTemporaryDir>
#include <QTest>
#include <fstream>

using ohmkin::exchange::contentHash;
using ohmkin::exchange::ContentHash;

/// FIPS 180-4's worked examples for SHA-256 (NIST, "Cryptographic Standards and Guidelines: example values").
class TestContentHash : public QObject {
  Q_OBJECT
 private slots:
  void the_standards_examples_come_out_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("hash");
    QTest::newRow("one block") << "abc"
                               << "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    QTest::newRow("two blocks") << "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"
                                << "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1";
    QTest::newRow("a million a") << QString(1'000'000, 'a')
                                 << "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0";
  }
  void the_standards_examples_come_out() {
    QFETCH(QString, text);
    QFETCH(QString, hash);
    const std::string bytes = text.toStdString();
    ContentHash whole;
    whole.add(bytes);
    QCOMPARE(QString::fromStdString(whole.hex()), hash);
    for (std::size_t at = 0; at < bytes.size(); at += 777) whole.add(std::string_view(bytes).substr(at, 777));
    QCOMPARE(QString::fromStdString(whole.hex()), hash);
  }
  void a_file_is_hashed_and_a_folder_refused() {
    const QTemporaryDir folder;
    const std::string path = folder.filePath("a.csv").toStdString();
    std::ofstream(path, std::ios::binary) << "abc";
    const auto hash = contentHash(path);
    QVERIFY(hash && hash->starts_with("ba7816bf"));
    QVERIFY(!contentHash(folder.path().toStdString()));
    QVERIFY(!contentHash(path + ".not"));
  }
};

QTEST_APPLESS_MAIN(TestContentHash)
#include "tst_content_hash.moc"
