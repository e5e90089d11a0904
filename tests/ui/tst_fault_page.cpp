#include <fault/fault_page.h>
#include <look/palette.h>
#include <QListWidget>
#include <QSignalSpy>
#include <QTest>
#include "shown_page.h"

using namespace ohmkin;
using namespace ohmkin::fault;

class TestFaultPage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  struct Shown : ShownPage<FaultPage> {
    using ShownPage::ShownPage;
    void key(int which) { QTest::keyClick(&page.card(), static_cast<Qt::Key>(Qt::Key_0 + which)); }
    void waitForAnswer() { QTRY_VERIFY_WITH_TIMEOUT(page.showsAnswer() && !page.busy(), 20000); }
    /// By keyboard alone, from where the page puts it: the gauge's name, Return, Return.
    void nameGauge(const QString& gauge) {
      page.takeKeyboard();
      QTest::keyClicks(&page.form().gauge(), gauge);
      QTest::keyClick(&page.form().gauge(), Qt::Key_Return);
      QTest::keyClick(&page.form().sender(), Qt::Key_Return);
      waitForAnswer();
      page.takeKeyboard();
    }
    void answer(int which) {
      key(which);
      waitForAnswer();
    }
    /// The key of an outcome of the card; 0 where it has none of these words.
    [[nodiscard]] int keyOf(const QString& words) const {
      const auto& outcomes = page.card().words().outcomes;
      for (std::size_t i = 0; i < outcomes.size(); ++i)
        if (outcomes[i].words.contains(words)) return static_cast<int>(i) + 1;
      return 0;
    }
    /// Chosen from the list by a click.
    void choose(const QString& title) {
      for (std::size_t i = 0; i < page.tests().rows().size(); ++i) {
        if (!page.tests().rows()[i].title.contains(title)) continue;
        page.tests().scrollToItem(page.tests().item(static_cast<int>(i)));
        QTest::mouseClick(page.tests().viewport(), Qt::LeftButton, {},
                          page.tests().visualItemRect(page.tests().item(static_cast<int>(i))).center());
        break;
      }
      QVERIFY2(page.card().words().title.contains(title), qPrintable(page.card().words().title));
    }
    void saw(const QString& title, const QString& words) {
      choose(title);
      QVERIFY2(keyOf(words) != 0, qPrintable(words));
      answer(keyOf(words));
    }
    [[nodiscard]] double likelihood(const QString& name) const {
      for (const LikelihoodRow& row : page.bars().rows())
        if (row.name.contains(name, Qt::CaseInsensitive)) return row.probability;
      return 0;
    }
  };

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void aGaugeIsNamedAndTheNeedleIsAskedAfter() {
    Shown shown(demo_, "named.ini");
    shown.open(demo_.file());
    QVERIFY(!shown.page.showsAnswer());
    QTRY_VERIFY(shown.page.sheet().said().contains("Which gauge"));
    QVERIFY(shown.page.asText().isEmpty());
    shown.nameGauge("GA-1");
    QCOMPARE(shown.page.card().words().outcomes.size(), askedSymptoms().size());
    QVERIFY(shown.page.answers().rows().empty());
    shown.answer(1);
    QCOMPARE(*shown.page.session().symptom, circuit::Symptom::low);
    QVERIFY(!shown.page.card().words().title.isEmpty());
    QVERIFY(!shown.page.card().words().outcomes.empty());
    QVERIFY(!shown.page.bars().rows().empty());
    QVERIFY(shown.page.bars().accessibleDescription().contains(shown.page.bars().rows().front().name));
  }

  // The issue's own demand: true temperature and coolant level come before any meter when it reads hot.
  void whereItReadsHotTheFirstQuestionIsWhetherItIs() {
    Shown shown(demo_, "hot.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(3);
    QCOMPARE(*shown.page.session().symptom, circuit::Symptom::high);
    QVERIFY2(shown.page.card().words().title.contains("coolant"), qPrintable(shown.page.card().words().title));
    QVERIFY(shown.page.card().words().cautions.join(' ').contains("cold"));
    QVERIFY(shown.page.chain().circuit().at(Place::block).examined);
  }

  // common practice, no source: lead grounded with the key on and the needle not moving: gauge, feed or lead, not the
  // sender
  void theLeadGroundedAndTheNeedleDeadIsNotTheSender() {
    Shown shown(demo_, "dead.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    const double before = shown.page.chain().circuit().at(Place::sender).suspicion;
    QVERIFY(before > 0.1);
    shown.saw("grounded battery post through", "does not move");
    const double after = shown.page.chain().circuit().at(Place::sender).suspicion;
    QVERIFY2(after < 0.05 && after < before / 4, qPrintable(QString::number(after)));
    QVERIFY(shown.page.chain().circuit().at(Place::sender).likelihood.isEmpty());
    QVERIFY(shown.likelihood("sender is open") < 0.05);
    for (const LikelihoodRow& row : shown.page.bars().rows())
      if (row.probability > 0.1) QVERIFY2(!row.name.startsWith("The sender"), qPrintable(row.name));
  }

  void aChangedAnswerChangesTheSuspects() {
    Shown shown(demo_, "changed.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    shown.saw("grounded battery post through", "does not move");
    const auto dead = shown.page.bars().rows();
    QCOMPARE(shown.page.answers().rows().size(), std::size_t(2));
    QTest::mouseClick(shown.page.answers().changeButton(1), Qt::LeftButton);
    QVERIFY(shown.page.card().words().above.contains("Change"));
    const auto& outcomes = shown.page.card().words().outcomes;
    QVERIFY(std::any_of(outcomes.begin(), outcomes.end(), [](const StepOutcome& o) { return o.chosen; }));
    shown.answer(shown.keyOf("past hot"));
    QCOMPARE(shown.page.answers().rows().size(), std::size_t(2));
    QVERIFY(shown.page.answers().rows()[1].answer.contains("past hot"));
    QVERIFY(!(shown.page.bars().rows() == dead));
    // common practice, no source: the needle goes past hot: sender or its ground, not gauge, feed or lead
    const OpenedCircuit& chain = shown.page.chain().circuit();
    QVERIFY(chain.at(Place::sender).suspicion > chain.at(Place::gauge).suspicion);
    QVERIFY(chain.at(Place::sender).suspicion > chain.at(Place::feed).suspicion);
  }

  void notSureGivesNoWeight() {
    Shown shown(demo_, "unsure.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    const auto before = shown.page.bars().rows();
    const QString title = shown.page.card().words().title;
    shown.answer(0);
    QCOMPARE(shown.page.answers().rows().back().answer, QStringLiteral("not sure"));
    QVERIFY(shown.page.bars().rows() == before);
    QVERIFY(shown.page.card().words().title != title);  // it is not asked again
  }

  void takingAllAnswersBackGivesTheFirstState() {
    Shown shown(demo_, "back.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    const auto bars = shown.page.bars().rows();
    const StepWords card = shown.page.card().words();
    const OpenedCircuit chain = shown.page.chain().circuit();
    shown.answer(2);
    shown.answer(1);
    shown.answer(1);
    shown.answer(0);
    QCOMPARE(shown.page.answers().rows().size(), std::size_t(4));
    while (!shown.page.answers().rows().empty()) {
      QTest::mouseClick(shown.page.answers().takeBackButton(shown.page.answers().rows().size() - 1), Qt::LeftButton);
      shown.waitForAnswer();
    }
    QVERIFY(shown.page.bars().rows() == bars);
    QVERIFY(shown.page.card().words() == card);
    QVERIFY(shown.page.chain().circuit() == chain);
    QVERIFY(shown.page.session().seen.empty() && !shown.page.session().symptom);
  }

  void undoTakesBackTheLastAnswerAndRedoGivesItAgain() {
    Shown shown(demo_, "undo.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    const auto before = shown.page.session().seen;
    const StepWords card = shown.page.card().words();
    shown.answer(1);
    const auto after = shown.page.session().seen;
    QVERIFY(after != before);
    QVERIFY(shown.page.undoButton().isEnabled());
    QTest::mouseClick(&shown.page.undoButton(), Qt::LeftButton);
    shown.waitForAnswer();
    QVERIFY(shown.page.session().seen == before);
    QVERIFY(shown.page.card().words() == card);
    shown.page.history().redo();
    shown.waitForAnswer();
    QVERIFY(shown.page.session().seen == after);
  }

  void theSearchGoesIntoADocumentAndComesBack() {
    Shown first(demo_, "kept.ini");
    first.open(demo_.file());
    first.nameGauge("GA-1");
    first.answer(1);
    first.saw("grounded battery post through", "does not move");
    first.answer(0);
    const std::string text = workflow::faultDocument(first.page.session());
    const auto read = workflow::readFaultDocument(text, "job 7");
    QVERIFY2(read, read ? "" : read.error().sentence().c_str());
    Shown second(demo_, "again.ini");
    second.open(demo_.file());
    second.page.goOn(*read);
    second.waitForAnswer();
    QCOMPARE(second.page.form().gauge().text(), QStringLiteral("GA-1"));
    QVERIFY(second.page.answers().rows() == first.page.answers().rows());
    QVERIFY(second.page.bars().rows() == first.page.bars().rows());
    QVERIFY(second.page.card().words() == first.page.card().words());
    QCOMPARE(workflow::faultDocument(second.page.session()), text);
    QCOMPARE(second.page.asText(), first.page.asText());
  }

  void settledItSaysWhatToDoAndAsksWhetherItHelped() {
    Shown shown(demo_, "settled.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    shown.saw("from the sender's terminal to its own hex", "open");
    shown.saw("pull the lead off", "does not move");
    shown.saw("from the sender's terminal to the battery post", "open");
    for (int i = 0; i < 12 && shown.keyOf("Yes, it reads right") == 0; ++i) shown.answer(0);
    QVERIFY2(shown.keyOf("Yes, it reads right") == 1, qPrintable(shown.page.card().words().title));
    QVERIFY2(shown.page.card().words().title.contains("Renew the sender"), qPrintable(shown.page.card().words().title));
    QVERIFY(shown.page.card().words().cautions.join(' ').contains("cold"));
    // It did not help: ruled out, and the search goes on.
    shown.answer(2);
    QCOMPARE(shown.page.session().tried, std::vector<std::string>{"new-sender"});
    QVERIFY(!shown.page.card().words().title.contains("Renew the sender"));
    QCOMPARE(shown.page.answers().rows().back().kind, AnswerRow::Kind::repair);
    QVERIFY(shown.likelihood("sender is open") < 0.5);
    QTest::mouseClick(shown.page.answers().takeBackButton(shown.page.answers().rows().size() - 1), Qt::LeftButton);
    shown.waitForAnswer();
    QVERIFY(shown.page.card().words().title.contains("Renew the sender"));
    // It helped: what it was can be kept.
    shown.answer(1);
    QCOMPARE(shown.page.session().helped, std::string("new-sender"));
    QVERIFY(shown.keyOf("sender is open") != 0);
    shown.answer(shown.keyOf("sender is open"));
    QCOMPARE(shown.page.session().cause, std::string("sender-open"));
    QVERIFY(shown.page.card().words().title.contains("reads right"));
    QVERIFY(shown.page.asText().contains("reads right"));
  }

  void answersThatContradictOneAnotherAreSaid() {
    Shown shown(demo_, "contradiction.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    shown.saw("volts behind the fuse", "no volts");
    shown.saw("supply from the gauge's feed post", "battery volts");
    shown.saw("volts at the feed pin", "battery volts");
    QVERIFY2(shown.page.alarm().contains("does not agree"), qPrintable(shown.page.alarm()));
    const auto& rows = shown.page.answers().rows();
    QVERIFY(std::any_of(rows.begin(), rows.end(), [](const AnswerRow& row) { return row.misfit; }));
  }

  void everyTestCanBeChosenWithItsValueOrWhyItHasNone() {
    Shown shown(demo_, "jump.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    bool weightless = false;
    for (const TestRow& row : shown.page.tests().rows()) {
      QVERIFY(!row.value.isEmpty());
      weightless = weightless || !row.why.isEmpty();
    }
    QVERIFY(weightless);
    // The second of the list by the keyboard.
    const QString second = shown.page.tests().rows()[1].title;
    const QString proposed = shown.page.card().words().title;
    QTest::keyClick(&shown.page.card(), Qt::Key_T, Qt::ControlModifier);
    QTest::keyClick(&shown.page.tests(), Qt::Key_Down);
    QTest::keyClick(&shown.page.tests(), Qt::Key_Return);
    QCOMPARE(shown.page.card().words().title, second);
    QTest::keyClick(&shown.page.card(), Qt::Key_Escape);
    QCOMPARE(shown.page.card().words().title, proposed);
  }

  void aSetUpThatWasMadeCostsNothingMore() {
    Shown shown(demo_, "paid.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    parts::Tick* dash = shown.page.setupTick("dash-out");
    QVERIFY(dash != nullptr && !dash->isChecked());
    const auto minutes = [&](const QString& title) {
      for (const TestRow& row : shown.page.tests().rows())
        if (row.title.contains(title)) return row.value;
      return QString();
    };
    const QString before = minutes("right way up");
    QTest::mouseClick(dash, Qt::LeftButton);
    shown.waitForAnswer();
    QCOMPARE(shown.page.session().paid, std::vector<std::string>{"dash-out"});
    QVERIFY(before.contains("16 minutes"));
    QVERIFY2(minutes("right way up").contains("1 minute"), qPrintable(minutes("right way up")));
  }

  void whatCannotBeMadeIsSaidInASentence() {
    Shown shown(demo_, "refused.ini");
    shown.open(demo_.file());
    QTest::keyClicks(&shown.page.form().gauge(), "GA-77");
    QTRY_VERIFY2(shown.page.sheet().said().contains("GA-77"), qPrintable(shown.page.sheet().said()));
    QVERIFY(shown.page.form().gauge().wrong());
    QVERIFY(!shown.page.showsAnswer());
    shown.page.form().gauge().clear();
    QTRY_VERIFY(shown.page.sheet().said().contains("Which gauge"));
    // A running temperature off the dial: the circuit itself refuses.
    shown.nameGauge("GA-1");
    shown.page.form().fold().click();
    QTest::keyClicks(&shown.page.form().running(), "250");
    QTRY_VERIFY_WITH_TIMEOUT(!shown.page.showsAnswer(), 5000);
    QVERIFY2(shown.page.sheet().said().contains("running temperature", Qt::CaseInsensitive),
             qPrintable(shown.page.sheet().said()));
    QVERIFY(shown.page.form().running().wrong());
    QVERIFY(shown.page.asText().isEmpty());
  }

  void aNewSearchStartsAnewAndCanBeUndone() {
    Shown shown(demo_, "new.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    shown.answer(1);
    const auto seen = shown.page.session().seen;
    QTest::mouseClick(&shown.page.newSearch(), Qt::LeftButton);
    QVERIFY(!shown.page.showsAnswer());
    QVERIFY(shown.page.form().empty() && shown.page.session().seen.empty());
    shown.page.history().undo();
    shown.waitForAnswer();
    QVERIFY(shown.page.session().seen == seen);
    QCOMPARE(shown.page.form().gauge().text(), QStringLiteral("GA-1"));
  }

  void anotherGaugeKeepsTheAnswersItKnows() {
    Shown shown(demo_, "other.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    shown.saw("pull the lead off", "does not move");
    shown.page.form().gauge().setText(QStringLiteral("GC-1"));
    shown.waitForAnswer();
    QTRY_VERIFY(shown.page.chain().circuit().regulated);
    QVERIFY(!shown.page.session().seen.empty());
    QVERIFY(!shown.page.chain().boxOf(Place::regulator).isEmpty());
  }

  void whatIsPressedIsLargeEnoughAndHasAName() {
    Shown shown(demo_, "names.ini");
    shown.open(demo_.file());
    shown.nameGauge("GA-1");
    shown.answer(1);
    shown.answer(1);
    for (const QWidget* each : shown.page.findChildren<QWidget*>()) {
      if (!each->isVisible() || each->focusPolicy() == Qt::NoFocus || qobject_cast<const QLabel*>(each) != nullptr)
        continue;
      if (each->objectName().startsWith("qt_") || qobject_cast<const QAbstractScrollArea*>(each) != nullptr) continue;
      const auto* button = qobject_cast<const QAbstractButton*>(each);
      const QString name =
          each->accessibleName().isEmpty() && button != nullptr ? button->text() : each->accessibleName();
      QVERIFY2(!name.isEmpty(), each->metaObject()->className());
      if (button != nullptr) QVERIFY2(each->width() >= 24 && each->height() >= 24, qPrintable(name));
    }
  }
};

QTEST_MAIN(TestFaultPage)
#include "tst_fault_page.moc"
