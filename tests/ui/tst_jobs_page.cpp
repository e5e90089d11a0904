#include <catalog/jobs.h>
#include <jobs/jobs_page.h>
#include <workflow/job_work.h>
#include <workflow/match.h>
#include <workflow/question_text.h>
#include <QDropEvent>
#include <QMimeData>
#include <QPrintPreviewDialog>
#include <QSignalSpy>
#include <QTest>
#include "dialogs.h"
#include "shown_page.h"

using namespace ohmkin;
using namespace ohmkin::jobs;

class TestJobsPage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  struct Shown : ShownPage<JobsPage> {
    using ShownPage::ShownPage;
    void key(Qt::Key key) {
      QApplication::setActiveWindow(&page);
      if (QApplication::focusWidget() == nullptr) page.takeKeyboard();
      QTest::keyClick(QApplication::focusWidget(), key, Qt::ControlModifier);
    }
    void settle() {
      QTRY_VERIFY(!page.busy());
      QTest::qWait(150);
    }
    void newJob(const QString& reference, const QString& vehicle) {
      key(Qt::Key_N);
      QTRY_VERIFY(page.job().form() == &page.job().fields());
      QTest::keyClicks(&page.job().fields().reference(), reference);
      QTest::keyClicks(&page.job().fields().vehicle(), vehicle);
      key(Qt::Key_S);
      QTRY_COMPARE(page.job().heading(), reference);
      settle();
    }
    [[nodiscard]] catalog::JobRecord inFile(const QString& file, qint64 id) const {
      const auto catalogue = catalog::Catalogue::openToRead(file.toStdString());
      return catalog::job(catalogue, {id}).value_or(catalog::JobRecord{});
    }
  };

  static QString said(const JobsPage& page) { return page.job().asText(); }

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void withoutACatalogueItSaysHowToGetOne() {
    Shown shown(demo_, "none.ini");
    shown.page.showNoCatalogue();
    QVERIFY(shown.page.sheet().said().contains("catalogue"));
    QVERIFY(!shown.page.ready());
  }

  void anEmptyShopSaysHowToBegin() {
    Shown shown(demo_, "empty.ini");
    shown.open(demo_.copy("empty.ohmkin"));
    QTRY_VERIFY(shown.page.ready());
    QTRY_COMPARE(shown.page.list().jobs().rowCount(), 0);
    QVERIFY(!shown.page.shownJob());
    QVERIFY(shown.page.job().asText().isEmpty());
  }

  void aJobIsBegunWrittenInClosedOpenedAgainAndFound() {
    const QString file = demo_.copy("life.ohmkin");
    Shown shown(demo_, "life.ini");
    shown.open(file);
    shown.newJob("Blue pickup", "1968 ridgeway utility");
    shown.newJob("Second", "another");
    shown.key(Qt::Key_E);
    QTRY_VERIFY(shown.page.job().form() == &shown.page.job().noteForm());
    QTest::keyClicks(&shown.page.job().noteForm().entry(), "wire was loose");
    QTest::keyClick(&shown.page.job().noteForm().entry(), Qt::Key_Return);
    QTRY_VERIFY2(said(shown.page).contains("wire was loose"), qPrintable(said(shown.page)));

    shown.key(Qt::Key_M);
    QTRY_VERIFY(shown.page.job().form() == &shown.page.job().closeForm());
    shown.page.job().closeForm().part().setText("BR-2215");
    shown.page.job().closeForm().cause().setText("nonsense");
    shown.page.job().closeForm().order().click();
    QTRY_VERIFY(shown.page.job().closeForm().refused().contains("nonsense"));
    const auto book = circuit::usualFaults();
    shown.page.job().closeForm().cause().setText(QString::fromStdString(book->faults.front().name));
    shown.page.job().closeForm().order().click();
    QTRY_VERIFY2(shown.page.job().state().startsWith("done"), qPrintable(shown.page.job().state()));
    QCOMPARE(shown.inFile(file, 2).said.cause, book->faults.front().code);
    QCOMPARE(shown.inFile(file, 2).said.part, std::string("BR-2215"));
    // open ones first
    QTRY_COMPARE(shown.page.list().jobs().row(0).id.value, 1);

    shown.key(Qt::Key_M);
    QTRY_VERIFY(shown.page.job().state().startsWith("open"));

    shown.page.search().setText("ridgeway blue");
    QTRY_COMPARE(shown.page.list().jobs().rowCount(), 1);
    QTRY_COMPARE(shown.page.job().heading(), QStringLiteral("Blue pickup"));
    shown.page.search().setText("no such words");
    QTRY_COMPARE(shown.page.list().jobs().rowCount(), 0);
  }

  void whatWasDoneIsUndoneAndDoneAgain() {
    const QString file = demo_.copy("undo.ohmkin");
    Shown shown(demo_, "undo.ini");
    shown.open(file);
    shown.newJob("Undo me", "van");
    shown.key(Qt::Key_E);
    QTest::keyClicks(&shown.page.job().noteForm().entry(), "first");
    QTest::keyClick(&shown.page.job().noteForm().entry(), Qt::Key_Return);
    QTRY_COMPARE(shown.page.history().count(), 2);
    shown.settle();
    shown.page.history().undo();
    QTRY_VERIFY2(shown.page.job().told().contains("note"), qPrintable(shown.page.job().told()));
    QCOMPARE(shown.inFile(file, 1).said.note, std::string());
    shown.settle();
    shown.page.history().redo();
    QTRY_COMPARE(shown.inFile(file, 1).said.note, std::string("first"));
    shown.settle();
    shown.page.history().undo();
    QTRY_COMPARE(shown.inFile(file, 1).said.note, std::string());
    shown.settle();
    shown.page.history().undo();  // begun: put away
    QTRY_COMPARE(shown.page.list().jobs().rowCount(), 0);
    QVERIFY(!shown.inFile(file, 1).said.deleted.empty());
  }

  void anothersChangeIsNotUndone() {
    const QString file = demo_.copy("other.ohmkin");
    Shown shown(demo_, "other.ini");
    shown.open(file);
    shown.newJob("Shared", "van");
    shown.key(Qt::Key_E);
    QTest::keyClicks(&shown.page.job().noteForm().entry(), "mine");
    QTest::keyClick(&shown.page.job().noteForm().entry(), Qt::Key_Return);
    QTRY_COMPARE(shown.page.history().count(), 2);
    shown.settle();
    {
      auto other = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
      QVERIFY(workflow::addNote(other, {1}, "theirs", "Bob").has_value());
    }
    shown.page.history().undo();
    QTRY_VERIFY2(shown.page.job().told().contains("changed"), qPrintable(shown.page.job().told()));
    QVERIFY(shown.inFile(file, 1).said.note.find("theirs") != std::string::npos);
  }

  void aKeptAnswerIsShownAsItWasAndAskedAgain() {
    const QString file = demo_.copy("answer.ohmkin");
    std::string part;
    {
      auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
      const workflow::Vocabulary vocabulary(catalogue);
      const auto answer =
          workflow::match(catalogue, workflow::readQuestion(vocabulary, kSettled.toStdString()).question);
      QVERIFY(answer.has_value());
      catalog::JobFields said;
      said.reference = "Ann";
      const auto job = workflow::openJob(catalogue, said, "Ann");
      QVERIFY(job.has_value());
      const auto kept = workflow::keepMatch(catalogue, job->id, *answer, "Ann");
      QVERIFY(kept.has_value());
      part = kept->part;
    }
    Shown shown(demo_, "answer.ini");
    shown.open(file);
    QTRY_COMPARE(shown.page.job().cards().size(), std::size_t{1});
    const DocumentCard& card = *shown.page.job().cards().front().second;
    QVERIFY2(card.said().contains(QString::fromStdString(part)), qPrintable(card.said()));
    QTRY_COMPARE(shown.page.job().cards().front().second->today(), QStringLiteral("Today's answer is the same."));
    for (const auto& sheets : {shown.page.jobSheet(), shown.page.offsetCard()}) {
      QVERIFY2(sheets.has_value(), sheets ? "" : sheets.error().sentence().c_str());
      QVERIFY(!sheets->pages.empty());
    }
    QAction* preview = sheetAction(shown.page.job().print(), QStringLiteral("Print preview…"));
    QVERIFY(preview != nullptr);
    QVERIFY(opensDialog<QPrintPreviewDialog>([&] { preview->trigger(); }));
  }

  void aDroppedFileIsAttachedAndMissedWhenItGoes() {
    const QString file = demo_.copy("attach.ohmkin");
    const QString photo = demo_.path("dial.png");
    {
      QFile out(photo);
      QVERIFY(out.open(QIODevice::WriteOnly));
      out.write("not really a picture");
    }
    Shown shown(demo_, "attach.ini");
    shown.open(file);
    shown.newJob("Photo", "van");
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(photo)});
    QDragEnterEvent over(QPoint(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&shown.page, &over);
    QVERIFY(over.isAccepted());
    QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&shown.page, &drop);
    QTRY_VERIFY2(said(shown.page).contains("as it was"), qPrintable(said(shown.page)));
    QFile::remove(photo);
    shown.key(Qt::Key_E);
    QTest::keyClicks(&shown.page.job().noteForm().entry(), "x");
    QTest::keyClick(&shown.page.job().noteForm().entry(), Qt::Key_Return);
    QTRY_VERIFY2(said(shown.page).contains("no longer where it was"), qPrintable(said(shown.page)));
  }

  void erasingForGoodWantsTheNumber() {
    const QString file = demo_.copy("erase.ohmkin");
    Shown shown(demo_, "erase.ini");
    shown.open(file);
    shown.newJob("Gone", "van");
    for (QAction* action : shown.page.actions())
      if (action->text().startsWith("Erase")) action->trigger();
    EraseForm& form = shown.page.job().eraseForm();
    QTRY_VERIFY(form.isVisible());
    QVERIFY(!form.order().isEnabled());
    QTest::keyClicks(&form.number(), "2");
    QVERIFY(!form.order().isEnabled());
    form.number().setText("1");
    QVERIFY(form.order().isEnabled());
    form.order().click();
    QTRY_COMPARE(shown.page.list().jobs().rowCount(), 0);
    QVERIFY(!catalog::job(catalog::Catalogue::openToRead(file.toStdString()), {1}).has_value());
    QVERIFY(!shown.page.history().canUndo());
  }

  void aJobWithoutAReferenceIsRefusedWhereItIsTyped() {
    Shown shown(demo_, "refused.ini");
    shown.open(demo_.copy("refused.ohmkin"));
    shown.key(Qt::Key_N);
    QTRY_VERIFY(shown.page.job().fields().isVisible());
    shown.page.job().fields().vehicle().setText("van");
    shown.page.job().fields().order().click();
    QTRY_VERIFY2(shown.page.job().fields().refused().contains("customer's own word"),
                 qPrintable(shown.page.job().fields().refused()));
    QCOMPARE(shown.page.job().fields().vehicle().text(), QStringLiteral("van"));
    QVERIFY(!shown.page.busy());
  }

  void aReadOnlyCatalogueSaysSo() {
    const QString file = demo_.copy("read-only.ohmkin");
    QFile::setPermissions(file, QFile::ReadOwner);
    Shown shown(demo_, "read-only.ini");
    shown.open(file);
    shown.key(Qt::Key_N);
    QTest::keyClicks(&shown.page.job().fields().reference(), "No");
    shown.page.job().fields().order().click();
    if (QFileInfo(file).isWritable()) QSKIP("this person may write everything");
    QTRY_VERIFY(!shown.page.job().fields().refused().isEmpty());
  }
};

QTEST_MAIN(TestJobsPage)
#include "tst_jobs_page.moc"
