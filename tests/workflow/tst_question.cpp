#include "demo_catalogue.h"

#include <workflow/match.h>
#include <QTest>
#include <functional>

using namespace ohmkin;
using workflow::Question;

Q_DECLARE_METATYPE(std::function<void(Question&)>)

/// Bad questions: each gets one clear sentence naming the argument, and the file stays as it was.
class TestQuestion : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

 private slots:
  void what_the_catalogue_does_not_have_is_refused_data() {
    QTest::addColumn<std::function<void(Question&)>>("spoil");
    QTest::addColumn<QString>("code");
    QTest::addColumn<QString>("where");
    QTest::addColumn<QString>("hint");
    using Spoil = std::function<void(Question&)>;
    QTest::newRow("line") << Spoil([](Question& q) { q.line = "ridgway utilty"; }) << "line-unknown"
                          << "--vehicle"
                          << "utility";
    QTest::newRow("year") << Spoil([](Question& q) { q.year = ModelYear{1931}; }) << "year-outside-line"
                          << "--year"
                          << "1964–81";
    QTest::newRow("build date") << Spoil([](Question& q) { q.built = date(1999, 1, 1); }) << "built-outside-year"
                                << "--built"
                                << "1968";
    QTest::newRow("option") << Spoil([](Question& q) { q.cluster = "deluxe"; }) << "cluster-unknown"
                            << "--cluster"
                            << "gauge package";
    QTest::newRow("gauge") << Spoil([](Question& q) { q.gauge = "GA-9x"; }) << "gauge-unknown"
                           << "--gauge"
                           << "GA-";
    QTest::newRow("engine") << Spoil([](Question& q) { q.casting.clear(), q.engine = "ridgeway-sixx"; })
                            << "engine-unknown"
                            << "--engine"
                            << "ridgeway-six";
    QTest::newRow("casting") << Spoil([](Question& q) { q.casting = "30481"; }) << "casting-unknown"
                             << "--casting"
                             << "30418";
    QTest::newRow("casting date") << Spoil([](Question& q) { q.castingDate = "ZZ 99"; }) << "casting-date-unreadable"
                                  << "--casting-date"
                                  << "date";
    QTest::newRow("thread") << Spoil([](Question& q) { q.portThread = "1/2-13 NPT"; }) << "thread-unknown"
                            << "--port"
                            << "1/2-14 NPT";
    QTest::newRow("place") << Spoil([](Question& q) { q.portLocation = "front of the haed"; })
                           << "port-location-unknown"
                           << "--port-location"
                           << "front of the head";
    QTest::newRow("part") << Spoil([](Question& q) { q.fitted = "BR-2251"; }) << "part-unknown"
                          << "--fitted"
                          << "BR-22";
  }
  void what_the_catalogue_does_not_have_is_refused() {
    QFETCH(std::function<void(Question&)>, spoil);
    QFETCH(QString, code);
    QFETCH(QString, where);
    QFETCH(QString, hint);
    Question question;
    question.line = "ridgeway utility";
    question.year = ModelYear{1968};
    question.casting = "30418";
    spoil(question);
    const std::string before = test::bytesOf(demo_.file());
    const auto catalogue = demo_.open();
    const auto answer = workflow::match(catalogue, question);
    QVERIFY(!answer);
    QCOMPARE(QString::fromStdString(answer.error().code), code);
    QCOMPARE(QString::fromStdString(answer.error().where), where);
    QVERIFY2(answer.error().sentence().find(hint.toStdString()) != std::string::npos,
             answer.error().sentence().c_str());
    QCOMPARE(test::bytesOf(demo_.file()), before);
  }

  void an_empty_catalogue_is_an_honest_no() {
    const auto path = demo_.beside("empty.ohmkin");
    { catalog::Catalogue::create(path); }
    const auto catalogue = catalog::Catalogue::open(path, catalog::Access::readOnly);
    const auto nothingAsked = workflow::match(catalogue, {});
    QVERIFY(nothingAsked && !nothingAsked->answered());
    Question question;
    question.line = "ridgeway utility";
    QCOMPARE(workflow::match(catalogue, question).error().code, std::string("line-unknown"));
  }
};

QTEST_APPLESS_MAIN(TestQuestion)
#include "tst_question.moc"
