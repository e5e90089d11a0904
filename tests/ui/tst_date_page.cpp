#include <catalog/layouts.h>
#include <date/date_page.h>
#include <date/presenter.h>
#include <look/palette.h>
#include <QSignalSpy>
#include <QTest>
#include "dialogs.h"
#include "shown_page.h"

using namespace ohmkin;
using namespace ohmkin::castings;

class TestDatePage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  struct Shown : ShownPage<DatePage> {
    using ShownPage::ShownPage;
    static void type(QLineEdit& entry, const QString& text) {
      entry.setFocus();
      QTest::keyClicks(&entry, text);
    }
    /// By keyboard alone, from where the page puts it: number, Tab, code.
    void typeHead(const QString& number, const QString& code) {
      page.takeKeyboard();
      type(*page.form().rows()[0].number, number);
      type(*page.form().rows()[0].code, code);
    }
  };

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void whatIsTypedIsAnsweredAsItIsTyped() {
    Shown shown(demo_, "typed.ini");
    shown.open(demo_.file());
    QVERIFY(!shown.page.showsAnswer());
    shown.typeHead("30418", "H 22 1");
    Shown::type(shown.page.form().year(), "1968");
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_VERIFY2(shown.page.headline().contains("22 Aug 1981") || shown.page.headline().contains("1981"),
                 qPrintable(shown.page.headline()));
    // common practice, no source: a head cast thirteen years after its vehicle makes the engine a later one
    QTRY_VERIFY2(shown.page.engineWords().contains("later"), qPrintable(shown.page.engineWords()));
    const MeaningModel& meanings = shown.page.meanings().rows();
    QVERIFY(meanings.row(0).heading);
    QCOMPARE(meanings.row(1).words, QStringLiteral("22 Aug 1981"));
    QVERIFY(meanings.row(1).chance > 0.9);
    QVERIFY(meanings.row(1).aside.contains("as it stands"));
    QVERIFY(!shown.page.findings().findings().empty());
    QVERIFY(shown.page.asText().contains("22 Aug 1981"));
  }

  void whatWasAssumedIsSaid() {
    Shown shown(demo_, "assumed.ini");
    shown.open(demo_.file());
    shown.typeHead("30418", "H ?2 1");
    QTRY_VERIFY(shown.page.showsAnswer());
    QStringList all;
    for (int i = 0; i < shown.page.meanings().rows().rowCount(); ++i)
      all << shown.page.meanings()
                 .rows()
                 .data(shown.page.meanings().rows().index(i), Qt::AccessibleTextRole)
                 .toString();
    for (const char* day : {"2 Aug 1981", "12 Aug 1981", "22 Aug 1981"})
      QVERIFY2(all.join(';').contains(day), qPrintable(all.join(';')));
    QVERIFY2(all.join(';').contains("%"), qPrintable(all.join(';')));
  }

  void anImpossibleDaySaysWhy() {
    Shown shown(demo_, "june.ini");
    shown.open(demo_.file());
    shown.typeHead("30418", "F 31 1");  // June has 30 days
    QTRY_VERIFY(shown.page.showsAnswer());
    const auto& findings = shown.page.findings().findings();
    QVERIFY(std::any_of(findings.begin(), findings.end(),
                        [](const auto& finding) { return finding.sentence.contains("Jun"); }));
  }

  void aCodeThatFitsManyDecadesIsNotSettled() {
    Shown shown(demo_, "decades.ini");
    shown.open(demo_.file());
    Shown::type(*shown.page.form().rows()[0].code, "H 22 1");  // a year digit, and nothing to say which decade
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_VERIFY2(shown.page.headline().contains("Not settled"), qPrintable(shown.page.headline()));
  }

  void theTimeLineHoldsEveryFactAndHasATableTwin() {
    Shown shown(demo_, "line.ini");
    shown.open(demo_.file());
    shown.typeHead("30418", "H 22 1");
    Shown::type(shown.page.form().stamp(), "0914 81A");
    Shown::type(shown.page.form().year(), "1968");
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.timeLine().picture().rows.size(), std::size_t(4));
    const TimeLinePicture& picture = shown.page.timeLine().picture();
    for (const TimeKind kind : {TimeKind::production, TimeKind::reading, TimeKind::stamp, TimeKind::vehicle})
      QVERIFY(
          std::any_of(picture.rows.begin(), picture.rows.end(), [&](const TimeRow& row) { return row.kind == kind; }));
    double total = 0;
    for (const double p : picture.density.probability) total += p;
    QVERIFY(std::abs(total - 1) < 1e-6);
    for (const TimeRow& row : picture.rows)
      for (const TimeMark& mark : row.marks) QVERIFY(picture.from < mark.from && mark.until < picture.to);
    QVERIFY(shown.page.timeLine().xOf(1968) < shown.page.timeLine().xOf(1981));
    QVERIFY(!shown.page.timeLine().accessibleDescription().isEmpty());

    QTest::keyClick(&shown.page.form().year(), Qt::Key_T, Qt::ControlModifier);
    QVERIFY(shown.page.table().isVisible());
    QVERIFY(!shown.page.timeLine().isVisible());
    QVERIFY(shown.page.table().rowCount() >= 4);
  }

  void theFarHeadWasChanged() {
    Shown shown(demo_, "heads.ini");
    shown.open(demo_.file());
    // common practice, no source: heads more than 60 days apart, one was changed
    shown.typeHead("41204", "C 10 8");
    QVERIFY(shown.page.form().rows().size() >= 2);
    Shown::type(*shown.page.form().rows()[1].number, "41205");
    Shown::type(*shown.page.form().rows()[1].code, "C 12 2");
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_VERIFY(shown.page.meanings().rows().rowCount() > 3);
    QTRY_VERIFY2(shown.page.asText().contains("changed"), qPrintable(shown.page.asText()));
  }

  void aReCutPadWeighsLess() {
    Shown shown(demo_, "pad.ini");
    shown.open(demo_.file());
    shown.typeHead("30418", "H 22 1");
    Shown::type(shown.page.form().stamp(), "0822 71A");
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_VERIFY(shown.page.timeLine().picture().rows.size() >= 3);
    const QString before = shown.page.asText();
    shown.page.form().recut().setFocus();
    QTest::keyClick(&shown.page.form().recut(), Qt::Key_Space);
    QVERIFY(shown.page.form().recut().isChecked());
    QTRY_VERIFY(shown.page.asText() != before);
  }

  void aYearThatIsNoneIsOneClearSentence() {
    Shown shown(demo_, "year.ini");
    shown.open(demo_.file());
    shown.typeHead("30418", "H 22 1");
    Shown::type(shown.page.form().year(), "68");
    QVERIFY(shown.page.form().year().wrong());
    QTRY_VERIFY(!shown.page.showsAnswer());
    QVERIFY(shown.page.sheet().said().contains("Model year"));
    QTest::keyClick(&shown.page.form().year(), Qt::Key_A, Qt::ControlModifier);
    Shown::type(shown.page.form().year(), "1968");
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(!shown.page.form().year().wrong());
  }

  void unknownCastingsNameTheNearest() {
    Shown shown(demo_, "near.ini");
    shown.open(demo_.file());
    shown.typeHead("30481", "H 22 1");
    QTRY_VERIFY2(shown.page.sheet().said().contains("30418"), qPrintable(shown.page.sheet().said()));
  }

  void theExampleIsOneThatHasAnAnswer() {
    Shown shown(demo_, "example.ini");
    shown.open(demo_.file());
    QTRY_VERIFY(shown.page.sheet().example()->isVisible());
    QTest::keyClick(shown.page.sheet().example(), Qt::Key_Space);
    QTRY_VERIFY(shown.page.showsAnswer());
  }

  void withoutACatalogueItSaysHowToGetOne() {
    Shown shown(demo_, "none.ini");
    QSignalSpy refused(&shown.page, &desk::Page::refused);
    shown.page.openCatalogue(demo_.path("nothing-here.ohmkin"));
    QVERIFY(refused.wait(5000));
    QVERIFY(refused.front().at(1).toString().contains("nothing-here.ohmkin"));
    shown.open(demo_.file());
    shown.typeHead("30418", "H 22 1");
    QTRY_VERIFY(shown.page.showsAnswer());
  }

  void aLayoutIsTriedAsItIsTyped() {
    Shown shown(demo_, "try.ini");
    shown.open(demo_.file());
    shown.page.showHalf(DatePage::layouts);
    LayoutBench& bench = shown.page.bench();
    QTRY_VERIFY(bench.list().count() >= 10);
    QTRY_VERIFY(!bench.readings().chips().empty());
    bench.sample().setFocus();
    QTest::keyClick(&bench.sample(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(&bench.sample(), "qq");
    QTRY_VERIFY(bench.readings().chips().empty());
    QVERIFY(!bench.said().isEmpty());
  }

  void anAmbiguousLayoutIsRefusedWithTheReasonAndThenMadeSoundAndKept() {
    const QString file = demo_.copy("keep.ohmkin");
    Shown shown(demo_, "keep.ini");
    shown.open(file);
    shown.page.showHalf(DatePage::layouts);
    LayoutBench& bench = shown.page.bench();
    QTRY_VERIFY(bench.list().count() >= 10);
    bench.name().selectAll();
    QTest::keyClicks(&bench.name(), "month, day, two year digits, own");
    bench.id().selectAll();
    QTest::keyClicks(&bench.id(), "own-head");
    bench.fields().setFields({{dating::FieldKind::monthNumber, "", false},
                              {dating::FieldKind::day, "", false},
                              {dating::FieldKind::yearTwoDigits, "", false}});
    bench.sample().selectAll();
    QTest::keyClicks(&bench.sample(), "112281");
    QTRY_VERIFY2(bench.said().contains("told apart"), qPrintable(bench.said()));
    QTest::keyClick(&bench.saveButton(), Qt::Key_Space);
    QTRY_VERIFY(bench.outcome().startsWith("Not saved"));

    for (const std::size_t field : {std::size_t(0), std::size_t(1)})
      QTest::keyClicks(bench.fields().rows()[field].text, "00");
    QTRY_VERIFY(!bench.readings().chips().empty());
    QTRY_COMPARE(bench.day().text(), QStringLiteral("1981-11-22"));
    QTest::keyClick(&bench.saveButton(), Qt::Key_Space);
    QTRY_VERIFY2(bench.outcome().contains("page"), qPrintable(bench.outcome()));  // nothing without a source
    QTest::keyClicks(&bench.citation(), "as seen on three heads");
    const int before = bench.list().count();
    QTest::keyClick(&bench.saveButton(), Qt::Key_Space);
    QTRY_VERIFY2(bench.outcome().contains("own-head"), qPrintable(bench.outcome()));
    QTRY_COMPARE(bench.list().count(), before + 1);
    const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    const auto kept = catalog::dateLayout(catalogue, catalog::LayoutKey("own-head"));
    QVERIFY(kept.has_value());
    QCOMPARE(kept->source.citation, std::string("as seen on three heads"));

    // A second time the id is taken; replacing has to be asked for.
    QTest::keyClick(&bench.saveButton(), Qt::Key_Space);
    QTRY_VERIFY(bench.replaceTick().isVisible());
    QTest::keyClick(&bench.replaceTick(), Qt::Key_Space);
    QTest::keyClick(&bench.saveButton(), Qt::Key_Space);
    QTRY_VERIFY2(bench.outcome().contains("replaced"), qPrintable(bench.outcome()));
  }

  void fieldsAreMovedAndTakenAwayByKeyboard() {
    LayoutFields fields;
    fields.setFields({{dating::FieldKind::day, "00", false}, {dating::FieldKind::monthLetter, "", false}});
    fields.show();
    QTest::keyClick(fields.rows()[1].up, Qt::Key_Space);
    QVERIFY(fields.fields()[0].kind == dating::FieldKind::monthLetter);
    QTRY_VERIFY(fields.rows()[0].whole->y() < fields.rows()[1].whole->y());
    QTest::keyClick(&fields.addButton(), Qt::Key_Space);
    QCOMPARE(fields.fields().size(), std::size_t(3));
    QTest::keyClick(fields.rows()[0].away, Qt::Key_Space);
    QVERIFY(fields.fields()[0].kind == dating::FieldKind::day);
    QVERIFY(!fields.rows()[0].optional->isVisible());  // a day is always there
  }

  void bothTonesShowADifferentPictureOfTheSameWords() {
    Shown shown(demo_, "tone.ini");
    shown.open(demo_.file());
    shown.typeHead("30418", "H 22 1");
    QTRY_VERIFY(shown.page.showsAnswer());
    const QString words = shown.page.asText();
    const QImage light = shown.page.grab().toImage();
    look::setTone(look::Tone::dark);
    QCoreApplication::processEvents();
    QVERIFY(shown.page.grab().toImage() != light);
    QCOMPARE(shown.page.asText(), words);
    look::setTone(look::Tone::light);
  }

  void usualLagsAreFoldedSaidAndSettable() {
    Shown shown(demo_, "lags.ini");
    shown.open(demo_.file());
    castings::UsualLags& lags = shown.page.lags();
    QVERIFY(!lags.castingToAssembly().isVisible());
    lags.fold().click();
    QVERIFY(lags.castingToAssembly().isVisible());
    shown.page.form().rows()[0].number->setText(QStringLiteral("30418"));
    shown.page.form().rows()[0].code->setText(QStringLiteral("H 22 1"));
    QTRY_VERIFY(shown.page.showsAnswer());
    const QString before = shown.page.headline();
    // Half a year from casting to assembly instead of days: the engine was made later.
    lags.castingToAssembly().setText(QStringLiteral("200"));
    QTRY_VERIFY(shown.page.headline() != before);
    workflow::DateQuestion asked;
    QVERIFY(lags.fill(asked));
    QCOMPARE(asked.beliefs.castingToAssembly.median, 200.0);
    QVERIFY(asked.beliefs.source.find("memory") == std::string::npos);
    // A window that leaves out the day read says so; what is no number is named.
    lags.reset();
    QTRY_COMPARE(shown.page.headline(), before);
    lags.until().setText(QStringLiteral("1970"));
    QTRY_VERIFY(shown.page.headline() != before);
    lags.castingToAssembly().setText(QStringLiteral("soon"));
    QVERIFY(lags.castingToAssembly().wrong());
    QTRY_VERIFY2(shown.page.sheet().said().contains("casting to assembly"), qPrintable(shown.page.sheet().said()));
  }

  void theAnswerIsPreviewedAndPrinted() {
    Shown shown(demo_, "print.ini");
    shown.open(demo_.file());
    QVERIFY(!shown.page.sheets());
    shown.page.form().rows()[0].number->setText(QStringLiteral("30418"));
    shown.page.form().rows()[0].code->setText(QStringLiteral("H 22 1"));
    QTRY_VERIFY(shown.page.showsAnswer());
    const auto sheets = shown.page.sheets();
    QVERIFY(sheets.has_value());
    const QString first = QString::fromStdString(sheets->pages.front());
    for (const char* words : {"ENGINE DATE", "H 22 1", "22 Aug 1981", "TIME LINE", "judgement"})
      QVERIFY2(first.contains(words), words);
    for (const char* words : {"Print preview…", "Print…"}) {
      QAction* action = sheetAction(shown.page.view().print(), QString::fromUtf8(words));
      QVERIFY(action != nullptr);
      QVERIFY2(opensDialog<QDialog>([&] { action->trigger(); }), words);
    }
  }
};

QTEST_MAIN(TestDatePage)
#include "tst_date_page.moc"
