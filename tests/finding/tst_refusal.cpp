#include <finding/refusal.h>
#include <QTest>

class TestRefusal : public QObject {
  Q_OBJECT
 private slots:
  void says_where_what_and_what_was_expected() {
    const ohmkin::Refusal refusal{"ohms-unreadable", "--reading", "'-5'", "ohms above 0, for example 51"};
    QCOMPARE(refusal.sentence(), std::string("--reading: found '-5', expected ohms above 0, for example 51"));
  }
  void leaves_out_what_is_not_known() {
    QCOMPARE((ohmkin::Refusal{"x", "", "", "a vehicle line"}.sentence()), std::string("expected a vehicle line"));
    QCOMPARE((ohmkin::Refusal{"x", "shop.ohmkin", "a folder", ""}.sentence()),
             std::string("shop.ohmkin: found a folder"));
  }
};

QTEST_APPLESS_MAIN(TestRefusal)
#include "tst_refusal.moc"
