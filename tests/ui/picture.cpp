/// Not a test: makes the pictures of the pages by the program itself.
///   picture CATALOGUE QUESTION OUT.png [--page match|date|layouts|plan|fault] [--size 1440x900]
///     [--tone dark] [--fahrenheit]
///   match: QUESTION as typed, with [--sender N] [--tab 0|1|2|3] [--branch N] [--refused] [--check] [--list] [--menu]
///   date: "30418 : H 22 1 | 30418 : C 8 3 | stamp : 0822A | line : ridgeway utility | year : 1968"
///   layouts: the layout to show, counted from 0
///   plan: "dash | dash / engine | engine"
///   bench: rows "bath ; ohms ; swapped ; run ; steady ; hex ; stirred | …" with [--part NUMBER] [--family NAME]
///     [--altitude 1600m] [--barometer 1013hPa]; counter: "ohms @ temperature"; file: PATH [--bring-in]; imports
///   jobs: words to search for, with [--do fill|new|close]; fill writes a few into the catalogue first
///   fault: "gauge | sender | symptom's code | TEST=OUTCOME | TEST= (not sure) | -REPAIR (did not help)"
///   any page: [--language de] [--press KEY] [--type WORDS]: a key of the window (F9, F1) and what is typed then
///   catalogue: words to find, with [--do
///   edit|wrong|source|stock|delete|down|new:KIND|table:KIND|cell|shelf|low|movements|changes]
///   backups: nothing, with [--do make|ask|back|save:PATH]: the list over the match page
///   [--preview]: the print preview of the page's first sheet instead
#include <app/language.h>
#include <app/window.h>
#include <catalogue/catalogue_page.h>
#include <date/date_page.h>
#include <fault/fault_page.h>
#include <jobs/jobs_page.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <plan/plan_page.h>
#include <workflow/job_work.h>
#include <workflow/match.h>
#include <workflow/question_text.h>
#include <QApplication>
#include <QCommandLineParser>
#include <QListWidget>
#include <QPrintPreviewDialog>
#include <QTemporaryDir>
#include <QTest>
#include "dialogs.h"

using namespace ohmkin;

namespace {

constexpr int kPatience = 15000;

QStringList parted(const QString& text, QChar at) {
  QStringList all;
  for (const QString& each : text.split(at)) all << each.trimmed();
  return all;
}

QPushButton* showMatch(match::MatchPage& page, const QString& question, const QCommandLineParser& given) {
  page.query().setText(question);
  if (given.isSet(QStringLiteral("list"))) {
    page.query().takeFocus();
    QTest::qWait(300);
    page.query().edit()->end(false);
    QTest::keyClicks(page.query().edit(), QStringLiteral(" ri"));
  }
  QTest::qWait(1200);
  if (given.isSet(QStringLiteral("refused"))) QTest::keyClick(&page, Qt::Key_R, Qt::ControlModifier);
  page.branches().choose(given.value(QStringLiteral("branch")).toInt());
  for (int i = 0; i < given.value(QStringLiteral("sender")).toInt(); ++i)
    QTest::keyClick(&page.candidates(), Qt::Key_Down);
  if (given.isSet(QStringLiteral("tab")))
    page.details().showTab(static_cast<match::DetailPanel::Tab>(given.value(QStringLiteral("tab")).toInt()));
  if (given.isSet(QStringLiteral("check"))) {
    page.details().errors().check().click();
    while (page.details().errors().checking()) QTest::qWait(50);
  }
  return page.details().tab() == match::DetailPanel::trim ? &page.details().trimTab().print()
                                                          : &page.details().dialTab().print();
}

QPushButton* showDate(castings::DatePage& page, const QString& question) {
  std::size_t row = 0;
  for (const QString& fact : parted(question, QLatin1Char('|'))) {
    const QString name = fact.section(QLatin1Char(':'), 0, 0).trimmed();
    const QString value = fact.section(QLatin1Char(':'), 1).trimmed();
    if (name == QStringLiteral("stamp")) page.form().stamp().setText(value);
    else if (name == QStringLiteral("line")) page.form().line().setText(value);
    else if (name == QStringLiteral("year")) page.form().year().setText(value);
    else if (!fact.isEmpty()) {
      page.form().rows().at(row).number->setText(name);
      page.form().rows().at(row++).code->setText(value);
    }
  }
  if (!question.isEmpty()) (void)QTest::qWaitFor([&] { return page.showsAnswer(); }, 3000);
  return &page.view().print();
}

QPushButton* showPlan(plan::PlanPage& page, const QString& question) {
  const auto lines = [](const QString& side) {
    std::vector<plan::Line> all;
    for (const QString& each : parted(side, QLatin1Char('|')))
      if (!each.isEmpty()) all.push_back({each, std::nullopt});
    return all;
  };
  page.dashes().setLines(lines(question.section(QLatin1Char('/'), 0, 0)));
  page.engines().setLines(lines(question.section(QLatin1Char('/'), 1)));
  if (!question.isEmpty()) (void)QTest::qWaitFor([&] { return page.showsAnswer(); }, kPatience);
  QTest::qWait(600);
  return &page.print();
}

void showBench(measure::BenchPage& page, const QString& question, const QString& part,
               const QCommandLineParser& given) {
  const auto typed = [&given](const char* name) { return given.value(QString::fromLatin1(name)); };
  (void)QTest::qWaitFor([&] { return page.ready(); }, 3000);
  if (part == QStringLiteral("counter")) {
    page.showPart(measure::BenchPage::atCounter);
    page.counter().ohmsEntry().setText(question.section(QLatin1Char('@'), 0, 0).trimmed());
    page.counter().room().setText(question.section(QLatin1Char('@'), 1).trimmed());
  } else if (part == QStringLiteral("file")) {
    page.showPart(measure::BenchPage::fromFile);
    if (!question.isEmpty()) page.takeFile(question);
    (void)QTest::qWaitFor([&] { return question.isEmpty() || !page.file().working(); }, kPatience);
    if (given.isSet(QStringLiteral("bring-in"))) page.file().bringInButton().click();
    (void)QTest::qWaitFor([&] { return !page.file().working(); }, kPatience);
  } else if (part == QStringLiteral("imports")) {
    page.showPart(measure::BenchPage::kept);
  } else {
    std::vector<measure::RowText> rows;
    for (const QString& line : parted(question, QLatin1Char('|'))) {
      measure::RowText row;
      const QStringList cells = parted(line, QLatin1Char(';'));
      for (qsizetype i = 0; i < cells.size() && i < qsizetype{measure::kColumns}; ++i)
        row.cells.at(static_cast<std::size_t>(i)) = cells[i];
      if (!row.empty()) rows.push_back(row);
    }
    page.hand().setUp().altitude().setText(typed("altitude"));
    page.hand().setUp().barometer().setText(typed("barometer"));
    page.hand().keepForm().part().setText(typed("part"));
    page.hand().keepForm().family().setCurrentText(typed("family"));
    if (!rows.empty()) page.hand().table().setRows(rows);
    if (!rows.empty()) page.hand().table().takeKeyboard();
    if (given.isSet(QStringLiteral("bring-in"))) {
      QTest::qWait(800);
      page.hand().keepForm().keep().click();
    }
  }
  QTest::qWait(1200);
}

void showFault(fault::FaultPage& page, const QString& question) {
  workflow::FaultSession session;
  const QStringList words = parted(question, QLatin1Char('|'));
  session.question.gauge = words.value(0).toStdString();
  session.question.sender = words.value(1).toStdString();
  session.symptom = circuit::symptomOf(words.value(2).toStdString());
  for (const QString& each : words.mid(3)) {
    if (each.startsWith(QLatin1Char('-'))) session.tried.push_back(each.mid(1).toStdString());
    else
      session.seen.push_back({each.section(QLatin1Char('='), 0, 0).toStdString(),
                              each.section(QLatin1Char('='), 1).toStdString(), session.tried.size()});
  }
  if (!session.question.gauge.empty()) page.goOn(session);
  (void)QTest::qWaitFor([&] { return !page.busy(); }, kPatience);
  QTest::qWait(1200);
}

void doOnThing(shelves::CataloguePage& page, const QString& what) {
  const auto type = [&page](const char* field, const QString& text) {
    if (shelves::FieldRow* row = page.thing().form().row(field)) {
      row->takeKeyboard();
      QTest::keyClick(row->editor(), Qt::Key_A, Qt::ControlModifier);
      QTest::keyClicks(row->editor(), text);
    }
  };
  if (what == QStringLiteral("delete")) page.thing().askRemove();
  if (what == QStringLiteral("deleted")) {
    page.thing().askRemove();
    page.thing().sureButton().click();
  }
  if (what == QStringLiteral("stock")) page.thing().stock().ask(shelves::StockPanel::Movement::move);
  if (what == QStringLiteral("sold")) page.thing().stock().sellOne();
  if (what.startsWith(QStringLiteral("new:"))) page.thing().create(what.mid(4).toStdString());
  if (!QStringList{QStringLiteral("edit"), QStringLiteral("wrong"), QStringLiteral("source")}.contains(what)) return;
  page.thing().edit();
  QTest::qWait(500);
  if (what == QStringLiteral("wrong")) {
    type("reach", QStringLiteral("deep"));
    type("family", QStringLiteral("no such"));
    QTest::qWait(500);
    page.thing().form().save();
  }
  if (what == QStringLiteral("source")) page.thing().form().sourceBox().tick().click();
}

void showCatalogue(shelves::CataloguePage& page, const QString& question, const QString& what) {
  using shelves::CataloguePage;
  (void)QTest::qWaitFor([&] { return page.ready(); }, 3000);
  if (!question.isEmpty()) QTest::keyClicks(page.query().edit(), question);
  QTest::qWait(900);
  if (what == QStringLiteral("down")) QTest::keyClick(page.query().edit(), Qt::Key_Down);
  else if (!question.isEmpty()) QTest::keyClick(page.query().edit(), Qt::Key_Return);
  QTest::qWait(400);
  doOnThing(page, what);
  if (what.startsWith(QStringLiteral("table:"))) {
    page.showPart(CataloguePage::table);
    page.rows().showKind(what.mid(6).toStdString());
  } else if (what == QStringLiteral("cell")) {
    page.showPart(CataloguePage::table);
    QTest::qWait(500);
    page.rows().view().setCurrentIndex(page.rows().model().index(3, 6));
    QTest::keyClicks(&page.rows().view(), QStringLiteral("d"));
    if (auto* editor = page.rows().view().viewport()->findChild<QLineEdit*>())
      QTest::keyClicks(editor, QStringLiteral("eep"));
  } else if (what == QStringLiteral("changes")) {
    page.showPart(CataloguePage::log);
  } else if (QStringList{QStringLiteral("shelf"), QStringLiteral("low"), QStringLiteral("movements")}.contains(what)) {
    page.showPart(CataloguePage::shelf);
    if (what == QStringLiteral("low")) page.onShelf().showPart(shelves::ShelfDesk::low);
    if (what == QStringLiteral("movements")) page.onShelf().showPart(shelves::ShelfDesk::movements);
  }
  QTest::qWait(900);
}

/// A few jobs to look at, the last with an answer.
void fillJobs(const QString& file) {
  auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
  const workflow::Vocabulary vocabulary(catalogue);
  for (const char* reference :
       {"green wagon", "the one that was towed in from the river crossing on the last day before the holidays",
        "blue pickup"}) {
    catalog::JobFields said;
    said.reference = reference;
    said.vehicle = "1968 ridgeway utility";
    said.engine = "casting 30418";
    said.seen = "needle stays low, fan runs";
    const auto job = workflow::openJob(catalogue, said, "Ann");
    if (!job) continue;
    if (said.reference == "green wagon") (void)workflow::closeJob(catalogue, job->id, {}, "Ann");
    const auto answer = workflow::match(
        catalogue,
        workflow::readQuestion(vocabulary, "1968 ridgeway utility gauge package casting 30418 dated H221").question);
    if (answer) (void)workflow::keepMatch(catalogue, job->id, *answer, "Ann");
    (void)workflow::addNote(catalogue, job->id, "wire at the sender was loose", "Ann");
  }
}

/// The list of backups: one made first, one asked about, gone back to, or what reads of the file saved.
void showBackups(app::Window& window, const QString& file, const QString& what) {
  app::BackupSheet& sheet = window.backupSheet();
  sheet.offer(file);
  QTest::qWait(500);
  const auto rest = [&] {
    (void)QTest::qWaitFor([&] { return !sheet.working(); }, kPatience);
    QTest::qWait(800);
  };
  if (what == QStringLiteral("make")) sheet.makeOne();
  if (what.startsWith(QStringLiteral("save:"))) sheet.salvageInto(what.mid(5));
  rest();
  if (what != QStringLiteral("ask") && what != QStringLiteral("back")) return;
  sheet.askBack(static_cast<int>(sheet.backups().size()) - 1);
  rest();
  if (what == QStringLiteral("back")) sheet.goBack();
  rest();
}

/// Its page chosen and asked; what it prints with.
QPushButton* show(app::Window& window, const QString& question, const QCommandLineParser& given) {
  const QString page = given.value(QStringLiteral("page"));
  const int at = page == QStringLiteral("match")       ? 0
                 : page == QStringLiteral("backups")   ? 0
                 : page == QStringLiteral("plan")      ? 2
                 : page == QStringLiteral("fault")     ? 4
                 : page == QStringLiteral("catalogue") ? 5
                 : page == QStringLiteral("jobs")      ? 6
                 : QStringList{QStringLiteral("bench"), QStringLiteral("counter"), QStringLiteral("file"),
                               QStringLiteral("imports")}
                         .contains(page)
                     ? 3
                     : 1;
  window.findChild<app::Rail*>()->choose(at);
  QTest::qWait(700);
  if (page == QStringLiteral("backups")) {
    showBackups(window, given.positionalArguments().value(0), given.value(QStringLiteral("do")));
    return nullptr;
  }
  if (auto* match = qobject_cast<match::MatchPage*>(&window.page())) return showMatch(*match, question, given);
  if (auto* plan = qobject_cast<plan::PlanPage*>(&window.page())) return showPlan(*plan, question);
  if (auto* bench = qobject_cast<measure::BenchPage*>(&window.page())) {
    showBench(*bench, question, page, given);
    return nullptr;
  }
  if (auto* fault = qobject_cast<fault::FaultPage*>(&window.page())) {
    showFault(*fault, question);
    return nullptr;
  }
  if (auto* catalogue = qobject_cast<shelves::CataloguePage*>(&window.page())) {
    showCatalogue(*catalogue, question, given.value(QStringLiteral("do")));
    return nullptr;
  }
  if (auto* jobs = qobject_cast<jobs::JobsPage*>(&window.page())) {
    if (given.value(QStringLiteral("do")) == QStringLiteral("fill")) fillJobs(given.positionalArguments().value(0));
    if (given.value(QStringLiteral("do")) == QStringLiteral("new"))
      QTest::keyClick(&jobs->search(), Qt::Key_N, Qt::ControlModifier);
    if (given.value(QStringLiteral("do")) == QStringLiteral("close"))
      QTest::keyClick(&jobs->search(), Qt::Key_M, Qt::ControlModifier);
    jobs->search().setText(question);
    QTest::qWait(1500);
    return &jobs->job().print();
  }
  auto* date = qobject_cast<castings::DatePage*>(&window.page());
  if (page == QStringLiteral("date")) return showDate(*date, question);
  date->showHalf(castings::DatePage::layouts);
  QTest::qWait(300);
  if (auto* list = date->bench().findChild<QListWidget*>()) list->setCurrentRow(question.toInt());
  QTest::qWait(1500);
  return nullptr;
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  QCommandLineParser given;
  given.addOptions({{QStringLiteral("page"), QString(), QStringLiteral("page"), QStringLiteral("match")},
                    {QStringLiteral("preview"), QString()},
                    {QStringLiteral("size"), QString(), QStringLiteral("WxH"), QStringLiteral("1440x900")},
                    {QStringLiteral("tone"), QString(), QStringLiteral("tone"), QStringLiteral("light")},
                    {QStringLiteral("sender"), QString(), QStringLiteral("n"), QStringLiteral("0")},
                    {QStringLiteral("tab"), QString(), QStringLiteral("n"), QStringLiteral("0")},
                    {QStringLiteral("branch"), QString(), QStringLiteral("n"), QStringLiteral("0")},
                    {QStringLiteral("points"), QString(), QStringLiteral("n")},
                    {QStringLiteral("refused"), QString()},
                    {QStringLiteral("check"), QString()},
                    {QStringLiteral("list"), QString()},
                    {QStringLiteral("menu"), QString()},
                    {QStringLiteral("language"), QString(), QStringLiteral("code")},
                    {QStringLiteral("press"), QString(), QStringLiteral("key")},
                    {QStringLiteral("type"), QString(), QStringLiteral("words")},
                    {QStringLiteral("part"), QString(), QStringLiteral("number")},
                    {QStringLiteral("family"), QString(), QStringLiteral("name")},
                    {QStringLiteral("altitude"), QString(), QStringLiteral("length")},
                    {QStringLiteral("barometer"), QString(), QStringLiteral("pressure")},
                    {QStringLiteral("bring-in"), QString()},
                    {QStringLiteral("do"), QString(), QStringLiteral("what")},
                    {QStringLiteral("fahrenheit"), QString()}});
  given.process(application);
  const QStringList words = given.positionalArguments();
  if (words.size() != 3) return 2;

  ohmkin::app::speak(
      given.isSet(QStringLiteral("language")) ? given.value(QStringLiteral("language")) : QStringLiteral("en"),
      application);
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

  QPushButton* prints = show(window, words[1], given);
  if (given.isSet(QStringLiteral("preview"))) {
    QAction* preview = prints == nullptr ? nullptr : sheetAction(*prints, QStringLiteral("Print preview…"));
    if (preview == nullptr) return 1;
    return opensDialog<QPrintPreviewDialog>([&] { preview->trigger(); },
                                            [&](QPrintPreviewDialog& dialog) {
                                              dialog.resize(window.size());
                                              QTest::qWait(500);
                                              dialog.grab().save(words[2]);
                                            })
               ? 0
               : 1;
  }
  if (const QKeySequence keys(given.value(QStringLiteral("press"))); !keys.isEmpty()) {
    QApplication::setActiveWindow(&window);
    QTest::keyClick(&window, keys[0].key(), keys[0].keyboardModifiers());
    QTest::keyClicks(QApplication::focusWidget(), given.value(QStringLiteral("type")));
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
