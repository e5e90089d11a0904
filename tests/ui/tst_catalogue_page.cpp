#include <catalog/change_log.h>
#include <workflow/edit_rows.h>
#include <QMenu>
#include "shown_catalogue.h"

using namespace ohmkin;
using namespace ohmkin::shelves;

class TestCataloguePage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  using Shown = ShownCatalogue;

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void aNumberIsFoundHoweverItIsWritten_data() {
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("part");
    QTest::newRow("without punctuation") << "br2215"
                                         << "BR-2215";
    QTest::newRow("a letter off") << "br2217x"
                                  << "BR-2217";
    QTest::newRow("as the bag has it") << "NV 7.140"
                                       << "NV 7.140";
    QTest::newRow("blanks left out") << "nv7140"
                                     << "NV 7.140";
  }
  void aNumberIsFoundHoweverItIsWritten() {
    QFETCH(QString, typed);
    QFETCH(QString, part);
    Shown shown(demo_, "find.ini");
    shown.open(demo_.file());
    QVERIFY(shown.page.query().edit()->hasFocus());
    shown.type(typed);
    QTRY_VERIFY(shown.page.found().rows().rowCount() > 0);
    QTRY_COMPARE(shown.page.found().rows().row(0).number.text, part);
    QVERIFY(!shown.page.found().rows().row(0).why.isEmpty());
    QTRY_COMPARE(shown.page.thing().shownNow().number, part);
  }

  void arrowKeysGoAlongWhatIsFoundWhileTheKeyboardStaysInTheBox() {
    Shown shown(demo_, "arrows.ini");
    shown.open(demo_.file());
    shown.type("br22");
    QTRY_VERIFY(shown.page.found().rows().rowCount() > 3);
    const FoundModel& rows = shown.page.found().rows();
    shown.press(Qt::Key_Down);
    shown.press(Qt::Key_Down);
    QVERIFY(shown.page.query().edit()->hasFocus());
    QCOMPARE(shown.page.found().currentIndex().row(), 2);
    QTRY_COMPARE(shown.page.thing().shownNow().number, rows.row(2).number.text);
    shown.press(Qt::Key_Up);
    QTRY_COMPARE(shown.page.thing().shownNow().number, rows.row(1).number.text);
    shown.press(Qt::Key_Return);
    QTRY_VERIFY(shown.page.thing().isAncestorOf(QApplication::focusWidget()));
  }

  void aSupersededPartLeadsToTheOneSoldToday() {
    Shown shown(demo_, "superseded.ini");
    shown.open(demo_.file());
    shown.opened("br-2201", "BR-2201");
    QVERIFY2(shown.page.found().rows().row(0).leads.contains("BR-2215"),
             qPrintable(shown.page.found().rows().row(0).leads));
    QVERIFY2(shown.page.thing().shownNow().caution.contains("BR-2215"),
             qPrintable(shown.page.thing().shownNow().caution));
    // Followed with the keyboard, and back.
    shown.page.thing().view().takeKeyboard();
    shown.press(Qt::Key_Return);
    QTRY_COMPARE(shown.page.thing().shownNow().number, QStringLiteral("BR-2215"));
    shown.press(Qt::Key_Left, Qt::AltModifier);
    QTRY_COMPARE(shown.page.thing().shownNow().number, QStringLiteral("BR-2201"));
    shown.press(Qt::Key_Right, Qt::AltModifier);
    QTRY_COMPARE(shown.page.thing().shownNow().number, QStringLiteral("BR-2215"));
  }

  void aTorqueIsEditedSavedUndoneAndDoneAgain() {
    const QString file = demo_.copy("torque.ohmkin");
    Shown shown(demo_, "torque.ini");
    shown.open(file);
    shown.opened("br2216", "BR-2216");
    const QString before = shown.fact("Torque, most");
    QVERIFY2(before.startsWith("20"), qPrintable(before));
    shown.formOpened();
    shown.put("torque_high", "22 N·m");
    QVERIFY(shown.page.thing().form().dirty());
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(!shown.page.thing().editing(), qPrintable(shown.page.thing().form().told()));
    QTRY_VERIFY2(shown.fact("Torque, most").startsWith("22"), qPrintable(shown.fact("Torque, most")));
    QVERIFY2(shown.page.thing().told().contains("shop's own"), qPrintable(shown.page.thing().told()));
    QTRY_VERIFY(shown.page.thing().changes().count() >= 1);
    QVERIFY2(shown.page.thing().changes().detail().contains("22"), qPrintable(shown.page.thing().changes().detail()));
    QVERIFY(shown.page.history().canUndo());
    shown.page.history().undo();
    QTRY_COMPARE(shown.fact("Torque, most"), before);
    shown.page.history().redo();
    QTRY_VERIFY(shown.fact("Torque, most").startsWith("22"));
    // Any change of the log can be taken back, and that is a change like any other.
    QTRY_COMPARE(shown.page.thing().changes().count(), 3);  // saved, undone, done again
    const int lines = shown.page.thing().changes().count();
    QTRY_VERIFY(shown.page.thing().changes().revertButton().isEnabled());
    shown.page.thing().changes().revertButton().setFocus();
    shown.press(Qt::Key_Space);
    QTRY_COMPARE(shown.fact("Torque, most"), before);
    QTRY_VERIFY(shown.page.thing().changes().count() > lines);
    shown.page.history().undo();
    QTRY_VERIFY(shown.fact("Torque, most").startsWith("22"));
  }

  void whatIsWrongIsSaidAtTheFieldAsItIsTyped() {
    const QString file = demo_.copy("wrong.ohmkin");
    Shown shown(demo_, "wrong.ini");
    shown.open(file);
    shown.opened("br2216", "BR-2216");
    shown.formOpened();
    ThingForm& form = shown.page.thing().form();
    shown.put("reach", "deep");
    QVERIFY2(form.row("reach")->wrong().contains("deep"), qPrintable(form.row("reach")->wrong()));
    shown.put("reach", "30");
    QVERIFY2(form.row("reach")->wrong().isEmpty(), qPrintable(form.row("reach")->wrong()));
    // What only the catalogue knows, once the keys rest.
    shown.put("family", "no such family");
    QTRY_VERIFY(!form.row("family")->wrong().isEmpty());
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(form.told().startsWith("Not saved"), qPrintable(form.told()));
    QVERIFY(shown.page.thing().editing());
    QTRY_VERIFY(form.row("family")->editor()->hasFocus());
    // Given up only when asked twice.
    shown.press(Qt::Key_Escape);
    QVERIFY(shown.page.thing().editing());
    shown.press(Qt::Key_Escape);
    QTRY_VERIFY(!shown.page.thing().editing());
    QVERIFY(shown.fact("Reach below the hex").startsWith("28"));
    QVERIFY(!shown.page.history().canUndo());
  }

  void namesOfWhatAFieldRefersToAreOffered() {
    Shown shown(demo_, "names.ini");
    shown.open(demo_.copy("names.ohmkin"));
    shown.opened("br2216", "BR-2216");
    shown.formOpened();
    shown.put("thread", "1/2");
    const auto* names = shown.page.thing().form().row("thread")->findChild<parts::Suggestions*>();
    QVERIFY(names != nullptr);
    QTRY_VERIFY(names->offering());
    QWidget* list = QApplication::activePopupWidget();
    QVERIFY(list != nullptr);
    QTest::keyClick(list, Qt::Key_Down);
    QTest::keyClick(list, Qt::Key_Return);
    QTRY_COMPARE(shown.page.thing().form().row("thread")->text(), QStringLiteral("1/2-14 NPT"));
  }

  void aUsedFamilyIsNotDeletedAndItIsSaidByWhatItIsUsed() {
    Shown shown(demo_, "used.ini");
    shown.open(demo_.copy("used.ohmkin"));
    shown.opened("family a", "A");
    shown.page.thing().askRemove();
    QVERIFY(shown.page.thing().sureButton().hasFocus());
    shown.press(Qt::Key_Space);
    QTRY_VERIFY2(shown.page.thing().told().startsWith("Not deleted"), qPrintable(shown.page.thing().told()));
    QVERIFY2(shown.page.thing().told().contains("sender"), qPrintable(shown.page.thing().told()));
    QVERIFY2(shown.page.thing().told().contains("BR-2201"), qPrintable(shown.page.thing().told()));
    QVERIFY(!shown.page.history().canUndo());
  }

  void aNewSenderIsStatedTogetherWithItsSource() {
    const QString file = demo_.copy("new.ohmkin");
    Shown shown(demo_, "new.ini");
    shown.open(file);
    shown.opened("br2216", "BR-2216");
    shown.press(Qt::Key_D, Qt::ControlModifier);
    QTRY_VERIFY(shown.page.thing().editing());
    ThingForm& form = shown.page.thing().form();
    shown.put("id", "OW-77");
    shown.put("name", "own sender");
    // A fact without a source is not kept.
    shown.put("source", " ");
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(!form.row("source")->wrong().isEmpty(), qPrintable(form.told()));
    form.sourceBox().tick().setFocus();
    shown.press(Qt::Key_Space);
    QVERIFY(form.sourceBox().citation().isVisible());
    form.sourceBox().citation().takeKeyboard();
    shown.type("measured on the bench, two pieces");
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(!shown.page.thing().editing(), qPrintable(form.told()));
    QTRY_COMPARE(shown.page.thing().shownNow().number, QStringLiteral("OW-77"));
    const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    const auto kept = workflow::readThing(catalogue, "sender", {"OW-77"});
    QVERIFY(kept.has_value());
    const auto source = workflow::readThing(catalogue, "source", {kept->fields.at("source")});
    QVERIFY(source.has_value());
    QCOMPARE(source->fields.at("citation"), std::string("measured on the bench, two pieces"));
    shown.find("ow77");
    QTRY_VERIFY(shown.page.found().rows().rowCount() > 0);
    QTRY_COMPARE(shown.page.found().rows().row(0).number.text, QStringLiteral("OW-77"));
    shown.page.history().undo();
    QTRY_COMPARE(shown.page.thing().view().thing().number, QString());
    QVERIFY(!workflow::readThing(catalogue, "sender", {"OW-77"}));
  }

  void theLastPieceIsSoldAndOneMoreIsRefused() {
    Shown shown(demo_, "sell.ini");
    shown.open(demo_.copy("sell.ohmkin"));
    shown.opened("os1104", "OS-1104");  // one piece in 6B
    StockPanel& stock = shown.page.thing().stock();
    QTRY_VERIFY2(stock.words().contains("1 on the shelf"), qPrintable(stock.words()));
    shown.press(Qt::Key_F4);
    QTRY_VERIFY2(stock.told().contains("sold 1"), qPrintable(stock.told()));
    shown.press(Qt::Key_F4);
    QTRY_VERIFY2(!stock.told().contains("sold 1"), qPrintable(stock.told()));
    QCOMPARE(shown.page.history().count(), 1);
    shown.page.history().undo();
    QTRY_VERIFY2(stock.words().contains("1 on the shelf"), qPrintable(stock.words()));
    shown.page.history().redo();
    QTRY_VERIFY2(!stock.words().contains("1 on the shelf"), qPrintable(stock.words()));
    // Received into a bin of its own.
    shown.press(Qt::Key_F6);
    QVERIFY(stock.quantity().hasFocus());
    shown.press(Qt::Key_A, Qt::ControlModifier);
    shown.type("3");
    stock.bin().setFocus();
    shown.type("9Z");
    shown.press(Qt::Key_Return);
    QTRY_VERIFY2(stock.words().contains("3"), qPrintable(stock.words()));
    QVERIFY(!stock.asking());
  }

  void twoPagesOnOneFileLoseNoPieceAndNoChange() {
    const QString file = demo_.copy("two.ohmkin");
    Shown one(demo_, "one.ini");
    Shown other(demo_, "other.ini");
    one.open(file);
    one.opened("br6001", "BR-6001");  // eight pieces
    other.open(file);
    QTest::keyClicks(other.page.query().edit(), "br6001");
    QTRY_VERIFY(other.page.found().rows().rowCount() > 0);
    QTest::keyClick(other.page.query().edit(), Qt::Key_Return);
    QTRY_COMPARE(other.page.thing().shownNow().number, QStringLiteral("BR-6001"));
    one.page.thing().stock().sellOne();
    other.page.thing().stock().sellOne();
    QTRY_VERIFY(one.page.thing().stock().told().contains("sold"));
    QTRY_VERIFY(other.page.thing().stock().told().contains("sold"));
    one.page.thing().stock().reload();
    QTRY_VERIFY2(one.page.thing().stock().words().contains("6 on the shelf"),
                 qPrintable(one.page.thing().stock().words()));
    // Both edit the same field: the second is told what it is now.
    for (Shown* each : {&one, &other}) {
      each->page.thing().edit();
      QTRY_VERIFY(each->page.thing().editing());
      QWidget* hex = each->page.thing().form().row("hex")->editor();
      QTest::keyClick(hex, Qt::Key_A, Qt::ControlModifier);
      QTest::keyClicks(hex, each == &one ? "21 mm" : "22 mm");
    }
    one.page.thing().form().save();
    QTRY_VERIFY2(!one.page.thing().editing(), qPrintable(one.page.thing().form().told()));
    other.page.thing().form().save();
    QTRY_VERIFY2(other.page.thing().form().told().startsWith("Not saved"),
                 qPrintable(other.page.thing().form().told()));
    QVERIFY2(other.page.thing().form().told().contains("21"), qPrintable(other.page.thing().form().told()));
  }

  void aCellIsEditedInPlaceAndABadOneIsRefusedThere() {
    const QString file = demo_.copy("table.ohmkin");
    Shown shown(demo_, "table.ini");
    shown.open(file);
    shown.page.showPart(CataloguePage::table);
    TableDesk& table = shown.page.rows();
    QTRY_VERIFY(table.model().rowCount() > 10);
    int hex = -1;
    for (int column = 0; column < table.model().columnCount(); ++column)
      if (table.model().kind()->fields[static_cast<std::size_t>(column)].name == "hex") hex = column;
    QVERIFY(hex > 0);
    const QString part = table.model().index(0, 0).data().toString();
    table.view().setCurrentIndex(table.model().index(0, hex));
    table.view().setFocus();
    QTest::keyClicks(&table.view(), "w");
    auto* editor = table.view().viewport()->findChild<QLineEdit*>();
    QVERIFY(editor != nullptr);
    QTest::keyClicks(editor, "ide");
    QVERIFY2(table.view().complaint().contains("wide"), qPrintable(table.view().complaint()));
    QTest::keyClick(editor, Qt::Key_Return);
    QVERIFY(table.view().viewport()->findChild<QLineEdit*>() == editor);  // it waits to be mended
    QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(editor, "23 mm");
    QVERIFY(table.view().complaint().isEmpty());
    QTest::keyClick(editor, Qt::Key_Return);
    QTRY_VERIFY2(table.told().contains(part), qPrintable(table.told()));
    QTRY_VERIFY(table.model().index(0, hex).data().toString().startsWith("23"));
    QVERIFY(shown.page.history().canUndo());
  }

  void theTableIsFilteredAndSorted() {
    Shown shown(demo_, "sorted.ini");
    shown.open(demo_.file());
    shown.page.showPart(CataloguePage::table);
    TableDesk& table = shown.page.rows();
    QTRY_VERIFY(table.model().rowCount() > 10);
    const int all = table.model().rowCount();
    table.filter().setFocus();
    shown.type("BR-22");
    QTRY_VERIFY(table.model().rowCount() > 0 && table.model().rowCount() < all);
    for (int row = 0; row < table.model().rowCount(); ++row) {
      QString whole;
      for (int column = 0; column < table.model().columnCount(); ++column)
        whole += table.model().index(row, column).data().toString() + QLatin1Char('|');
      QVERIFY2(whole.contains("BR-22"), qPrintable(whole));
    }
    table.showKind("vehicle_line");
    QTRY_VERIFY(table.model().kind() != nullptr && table.model().kind()->name == "vehicle_line");
    QTRY_VERIFY(table.model().complete());
    QTest::keyClick(&table.kindChoice(), Qt::Key_Tab);
    table.view().setFocus();
    shown.press(Qt::Key_Return);  // opens the row's thing
    QTRY_COMPARE(shown.page.thing().shownNow().kind, QStringLiteral("vehicle line"));
  }

  void theShelfIsListedAndWhatRunsOutToo() {
    Shown shown(demo_, "shelf.ini");
    shown.open(demo_.file());
    shown.page.showPart(CataloguePage::shelf);
    ShelfDesk& shelf = shown.page.onShelf();
    QTRY_VERIFY(shelf.count() > 10);
    shelf.showPart(ShelfDesk::low);
    QTRY_COMPARE(shelf.count(), 1);  // BR-2217: none there, the minimum is one
    QCOMPARE(shelf.cell(0, 0), QStringLiteral("BR-2217"));
    shelf.view().setFocus();
    shown.press(Qt::Key_Return);
    QTRY_COMPARE(shown.page.thing().shownNow().number, QStringLiteral("BR-2217"));
  }

  void aFileThatIsOnlyReadSaysSoAndNothingIsLost() {
    const QString file = demo_.copy("read-only.ohmkin");
    Shown shown(demo_, "read-only.ini");
    QFile::setPermissions(file, QFile::ReadOwner | QFile::ReadUser);
    if (QFile(file).open(QIODevice::ReadWrite)) QSKIP("this account may write what it may only read");
    shown.open(file);
    shown.opened("br2216", "BR-2216");
    shown.formOpened();
    shown.put("hex", "22 mm");
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(shown.page.thing().form().told().startsWith("Not saved"),
                 qPrintable(shown.page.thing().form().told()));
    QCOMPARE(shown.page.thing().form().row("hex")->text(), QStringLiteral("22 mm"));
  }

  void anEmptyCatalogueSaysHowToBegin() {
    const QString file = demo_.path("empty.ohmkin");
    (void)catalog::Catalogue::create(file.toStdString());
    Shown shown(demo_, "empty.ini");
    shown.open(file);
    QTRY_VERIFY2(shown.page.hint().contains("empty"), qPrintable(shown.page.hint()));
    shown.press(Qt::Key_N, Qt::ControlModifier);
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    QVERIFY(menu != nullptr);
    QTest::keyClick(menu, Qt::Key_Return);
    QTRY_VERIFY(shown.page.thing().editing());
    shown.put("id", "book");
    shown.put("kind", "common practice");
    shown.put("citation", "the shop's own book");
    shown.put("confidence", "0.9");
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(!shown.page.thing().editing(), qPrintable(shown.page.thing().form().told()));
    QTRY_COMPARE(shown.page.thing().shownNow().number, QStringLiteral("book"));
  }

  void aRefusedFileIsOneSentence() {
    Shown shown(demo_, "refused.ini");
    QSignalSpy refused(&shown.page, &desk::Page::refused);
    shown.page.openCatalogue(demo_.path("nothing-here.ohmkin"));
    QVERIFY(refused.wait(5000));
    QVERIFY(shown.page.sheet().said().contains("nothing-here.ohmkin"));
    shown.open(demo_.file());
    shown.opened("br2215", "BR-2215");
  }

  void everyControlHasANameAndIsLargeEnough() {
    Shown shown(demo_, "names.ini");
    shown.open(demo_.copy("controls.ohmkin"));
    shown.opened("br2216", "BR-2216");
    const auto look = [&] {
      for (QWidget* widget : shown.page.findChildren<QWidget*>()) {
        if (!widget->isVisible() || widget->focusPolicy() == Qt::NoFocus ||
            widget->objectName().startsWith("qt_spinbox"))
          continue;
        const bool named = !widget->accessibleName().isEmpty() || !widget->property("text").toString().isEmpty();
        const bool inner = qobject_cast<QAbstractItemView*>(widget->parentWidget()) != nullptr;
        QVERIFY2(named || inner || widget->focusProxy() != nullptr, widget->metaObject()->className());
        if (qobject_cast<QAbstractButton*>(widget) != nullptr || qobject_cast<QLineEdit*>(widget) != nullptr)
          QVERIFY2(widget->width() >= 24 && widget->height() >= 24, widget->metaObject()->className());
      }
    };
    look();
    shown.formOpened();
    QTest::qWait(50);
    look();
  }

  void unitsAreThoseOfThePersonAndAnUntouchedValueStaysWhatItWas() {
    const QString file = demo_.copy("units.ohmkin");
    Shown shown(demo_, "units.ini");
    shown.settings.setUnits({TemperatureUnit::fahrenheit, TorqueUnit::poundFoot});
    shown.open(file);
    shown.opened("br2216", "BR-2216");
    QVERIFY2(shown.fact("Torque, most").contains("lbf"), qPrintable(shown.fact("Torque, most")));
    shown.formOpened();
    shown.put("hex", "22 mm");
    shown.press(Qt::Key_S, Qt::ControlModifier);
    QTRY_VERIFY2(!shown.page.thing().editing(), qPrintable(shown.page.thing().form().told()));
    const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    const auto lines = catalog::changes(catalogue, {"sender BR-2216", {}, {}, {}, 0, 10});
    QVERIFY(!lines.empty());
    const workflow::ChangeShown change = workflow::shownChange(lines.front());
    QCOMPARE(change.fields.size(), std::size_t(1));
    QCOMPARE(change.fields.front().where, std::string("hex"));
  }
};

QTEST_MAIN(TestCataloguePage)
#include "tst_catalogue_page.moc"
