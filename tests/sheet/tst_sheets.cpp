#include <sheet/engine_date.h>
#include <sheet/job_sheet.h>
#include <sheet/lettering.h>
#include <sheet/offset_card.h>
#include <sheet/predictions.h>
#include <sheet/remarked_dial.h>
#include <sheet/shelf_label.h>
#include <sheet/swap_plan.h>
#include <sheet/trim_sheet.h>
#include <sheet/wiring.h>
#include <QRectF>
#include <QTest>

#include "sheet_reader.h"

using namespace ohmkin;
using namespace ohmkin::sheet;
using test::allWords;
using test::readPage;

namespace {

const std::string kHostile = R"(<script>alert("A&B")</script>' ]]> <!-- & -- > &lt;)";
const std::string kLong =
    "Name" + std::string(400, 'W') + " and then " + std::string(300, 'M') + " and so on for ever and ever";

Heading heading(const std::string& name) { return {name, "built for " + name, name, name, "22 Aug 1971"}; }

OffsetCard card(const std::string& name = "Cluster", int lines = 15) {
  OffsetCard made;
  made.heading = heading(name);
  made.driverLine = "Warmed up with the 82 °C thermostat the needle stands at 62 °C.";
  for (int i = 0; i < lines; ++i) {
    const double t = 40 + 5.0 * i;
    made.lines.push_back(
        {std::to_string(40 + 5 * i) + " °C", std::to_string(30 + 5 * i) + " °C", "−10 K", "4 K", i == 8});
    made.points.push_back({t, t - 10, 4, true});
  }
  made.hotMark = 115;
  made.unit = "°C";
  made.cautions = {name, "Never open a hot cooling system."};
  return made;
}

gauge::Dial dial() {
  return *gauge::Dial::make({{gauge::MarkKind::numbered, "40", celsius(40), {-50}},
                             {gauge::MarkKind::numbered, "80", celsius(80), {0}},
                             {gauge::MarkKind::numbered, "82", celsius(82), {2}},
                             {gauge::MarkKind::hot, "H", celsius(110), {40}}},
                            {-60}, {55});
}

RemarkedDial remarked(const std::string& name = "Cluster") {
  RemarkedDial made;
  made.heading = heading(name);
  made.marks = {{"80", "80 °C", "0.0°"}, {"82", "82 °C", "+2.0°"}};
  made.notes = {name};
  made.cautions = {name};
  return made;
}

TrimSheet trim(const std::string& name = "Cluster", int failures = 10) {
  TrimSheet made;
  made.heading = heading(name);
  made.network = name;
  made.summary = {name};
  made.circuit = {"12 Ω", "510 Ω", "", true, name};
  made.parts = {{name, "12 Ω", "0.1 W", "9 W", "25 W"}};
  made.corners = {{"1 %", "−2 K", "+2 K", name}};
  made.rows = {{"80 °C", name, "79 °C", "−1 K", "5 K"}};
  for (int i = 0; i < 20; ++i) {
    made.before.push_back({70.0 + i, -20 + 0.3 * i, 5});
    made.after.push_back({70.0 + i, -2 + 0.1 * i, 5});
  }
  made.unit = "°C";
  made.errorUnit = "K";
  made.findings = {name};
  for (int i = 0; i < failures; ++i)
    made.failures.push_back(
        {"Part-" + std::to_string(i) + " opens", "Shown-" + std::to_string(i) + " low", "104 °C", false, i % 3 == 0});
  made.cautions = {name};
  return made;
}

SwapPlan plan(std::size_t dashes, std::size_t engines, const std::string& name = "") {
  SwapPlan made;
  made.date = "22 Aug 1971";
  for (std::size_t d = 0; d < dashes; ++d) made.dashes.push_back("Dash-" + std::to_string(d) + " " + name);
  for (std::size_t e = 0; e < engines; ++e) made.engines.push_back("Engine-" + std::to_string(e) + " " + name);
  for (std::size_t c = 0; c < dashes * engines; ++c)
    made.cells.push_back({true,
                          c % engines == 0,
                          "Part-" + std::to_string(c),
                          {"AD-12 " + name},
                          "+2.3 K",
                          "Right. " + name,
                          "later engine",
                          name});
  made.partsToBuy = {"Part-0", name};
  made.cautions = {"The gauge is an aid.", name};
  return made;
}

EngineDate engineDate(const std::string& name) {
  return {"22 Aug 1971",
          "1980s " + name,
          "Head cast 13 years after the vehicle. " + name,
          {"Two heads disagree. " + name},
          {{"left head, " + name, "22 Aug 1981", "as it stands", "97 %"}, {"", "22 Aug 1971", name, "3 %"}},
          {{1968, 1969, 0.07}, {1981, 1982, 0.91}},
          {{"Head " + name, 1981.6, 1981.9, "1981"}, {name, 1978, 1988, name}},
          {name},
          "A judgement. " + name};
}

Wiring wiring(const std::string& name, bool regulated = true) {
  const WireLine wire{name,      "from " + name, "to " + name, "20 AWG", "0.52 mm²",
                      "0.5 mm²", "1.5 m",        "0.17 A",     "9 mV",   name};
  Wiring made{heading(name), "1 A", regulated ? "5 V" : "", wire, wire, wire, {name}, {name}, {name}};
  made.feed.name = "feed";
  made.lead.name = "lead";
  made.ground.name = "ground";
  return made;
}

PredictionsSheet predictions(const std::string& name, int faults = 3) {
  PredictionsSheet made;
  made.heading = heading(name);
  PredictedTest test{"Pull the lead off. " + name, "2 min", "it goes cold", {{"it stays", {}}}, name};
  for (int i = 0; i < faults; ++i) test.results[0].points.push_back("Fault-" + std::to_string(i) + " " + name);
  made.setups = {{"NOTHING TO OPEN", {test, test}}, {"HOOD OPEN", {}}};
  made.notes = {name};
  made.cautions = {name};
  return made;
}

JobSheet job(const std::string& name) {
  return {"Job 12",
          name,
          "22 Aug 1971",
          {{"Vehicle", name}, {"What was seen", name}},
          name,
          name,
          {{"80 °C", "74 °C", "−6 K"}, {"90 °C", name, "–"}},
          {name},
          {name},
          {name, "Never open a hot cooling system."}};
}

ShelfLabel label(const std::string& name) { return {name, name, "700 Ω cold, 95 Ω hot", "1/2-14 NPT", name, name}; }

std::vector<std::pair<const char*, Pages>> everySheet(const std::string& name, Paper paper) {
  return {{"offset card", drawOffsetCard(card(name), paper)},
          {"re-marked dial", *drawRemarkedDial(remarked(name), dial(), paper)},
          {"engine date", drawEngineDate(engineDate(name), paper)},
          {"trim sheet", drawTrimSheet(trim(name), paper)},
          {"wiring plan", drawWiring(wiring(name), paper)},
          {"fault table", drawPredictions(predictions(name), paper)},
          {"job sheet", drawJobSheet(job(name), paper)},
          {"swap plan", drawSwapPlan(plan(3, 6, name), paper)}};
}

}  // namespace

class TestSheets : public QObject {
  Q_OBJECT
 private slots:
  void pages_are_as_large_as_the_paper() {
    // ISO 216: A4 is 210 mm × 297 mm. ANSI/ASME Y14.1: size A is 8.5 in × 11 in; an inch is 25.4 mm.
    for (const auto& [name, pages] : everySheet("x", Paper::a4)) {
      const auto page = readPage(pages.front());
      const bool lies = qstrcmp(name, "swap plan") == 0;
      QCOMPARE(page.width, lies ? QStringLiteral("297mm") : QStringLiteral("210mm"));
      QCOMPARE(page.height, lies ? QStringLiteral("210mm") : QStringLiteral("297mm"));
      QCOMPARE(page.viewBox, lies ? QStringLiteral("0 0 297 210") : QStringLiteral("0 0 210 297"));
    }
    const auto letter = readPage(drawOffsetCard(card(), Paper::letter).front());
    QCOMPARE(letter.width.chopped(2).toDouble(), 8.5 * 25.4);
    QCOMPARE(letter.height.chopped(2).toDouble(), 11 * 25.4);
  }

  void a_small_label_is_a_page_of_its_own_size_and_a_long_bin_is_not_cut() {
    const auto pages =
        drawSmallLabels({{"BR-2215", "Family A", "700 Ω cold", "M12x1.5", "blade", "window display"}, label("x")});
    QCOMPARE(pages.size(), std::size_t{2});
    const auto page = readPage(pages.front());
    QCOMPARE(page.viewBox, QStringLiteral("0 0 62 29"));
    for (const char* words : {"BR-2215", "window display", "Family A", "700 Ω cold", "M12x1.5 · blade"})
      QVERIFY2(page.all().contains(QString::fromUtf8(words)), words);
    for (const auto& text : page.texts) QVERIFY(text.y > 0 && text.y < 29 - 1);
  }

  void labels_go_on_to_further_pages() {
    QCOMPARE(drawShelfLabels(std::vector<ShelfLabel>(28, label("x")), Paper::a4).size(), std::size_t{2});  // 27 a page
    QVERIFY(drawShelfLabels({}, Paper::a4).empty());
    for (const std::string& name : {kHostile, kLong}) {
      const auto page = readPage(drawShelfLabels({label(name)}, Paper::letter).front());
      QVERIFY(page.wellFormed && !page.names.contains(QStringLiteral("script")));
      QCOMPARE(page.texts.size(), std::size_t{5});  // each line once, cut to its length
    }
  }

  void paper_is_read_in_whatever_case_and_nothing_else() {
    QCOMPARE(*parsePaper("a4"), Paper::a4);
    QCOMPARE(*parsePaper("LETTER"), Paper::letter);
    QCOMPARE(parsePaper("A3", "--paper").error().where, std::string("--paper"));
  }

  void hostile_names_are_printed_and_not_obeyed() {
    for (const auto& [name, pages] : everySheet(kHostile, Paper::a4)) {
      for (const std::string& svg : pages) {
        const auto page = readPage(svg);
        QVERIFY2(page.wellFormed, name);
        QVERIFY2(!page.names.contains(QStringLiteral("script")), name);
      }
      const QString words = allWords(pages).remove(QLatin1Char(' '));
      QVERIFY2(words.contains(QStringLiteral("<script>alert(\"A&B\")</script>'")), name);
      QVERIFY2(words.contains(QStringLiteral("&lt;")), name);
    }
  }

  void broken_bytes_leave_the_page_well_formed() {
    for (const auto& [name, pages] : everySheet("x\xFF\x01\xED\xA0\x80\x1By", Paper::letter))
      for (const std::string& svg : pages) QVERIFY2(readPage(svg).wellFormed, name);
  }

  void no_text_leaves_the_page_data() {
    QTest::addColumn<QByteArray>("name");
    QTest::newRow("usual") << QByteArray("Ridgeway early cluster, C to H");
    QTest::newRow("very long") << QByteArray::fromStdString(kLong);
    QTest::newRow("hostile") << QByteArray::fromStdString(kHostile);
    QTest::newRow("wide letters") << QByteArray("漢字").repeated(120);
  }
  void no_text_leaves_the_page() {
    QFETCH(QByteArray, name);
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      for (const auto& [sheet, pages] : everySheet(name.toStdString(), paper)) {
        for (const std::string& svg : pages) {
          const auto page = readPage(svg);
          const double width = page.width.chopped(2).toDouble();
          const double height = page.height.chopped(2).toDouble();
          for (const auto& text : page.texts) {
            if (text.moved) continue;
            const double length =
                widthOf(text.words.toStdString(), text.size, text.bold ? Weight::bold : Weight::regular);
            const double from = text.anchor == QStringLiteral("end")      ? text.x - length
                                : text.anchor == QStringLiteral("middle") ? text.x - length / 2
                                                                          : text.x;
            const QByteArray where = QByteArray(sheet) + ": " + text.words.toUtf8();
            QVERIFY2(from >= 10 && from + length <= width - 10, where.constData());
            QVERIFY2(text.y - text.size >= 5 && text.y <= height - 5, where.constData());
          }
        }
      }
    }
  }

  void every_wire_stands_in_the_drawing_and_in_the_table_with_its_figures() {
    for (const bool regulated : {false, true}) {
      const auto page = readPage(drawWiring(wiring("Cluster", regulated), Paper::a4).front());
      QCOMPARE(page.all().count(QStringLiteral("20 AWG")), 6);
      QCOMPARE(page.all().count(QStringLiteral("colour")), 3);
      QVERIFY(page.all().contains(QStringLiteral("1 A fuse")));
      QCOMPARE(page.all().contains(QStringLiteral("5 V")), regulated);
      QCOMPARE(page.all().contains(QStringLiteral("housing")), regulated);
    }
  }

  void no_words_of_the_wiring_plan_lie_on_one_another() {
    for (const bool regulated : {false, true}) {
      for (const Paper paper : {Paper::a4, Paper::letter}) {
        const auto page = readPage(drawWiring(wiring("Family C", regulated), paper).front());
        std::vector<QRectF> taken;
        for (const auto& text : page.texts) {
          const double length =
              widthOf(text.words.toStdString(), text.size, text.bold ? Weight::bold : Weight::regular);
          const double from = text.anchor == QStringLiteral("end")      ? text.x - length
                              : text.anchor == QStringLiteral("middle") ? text.x - length / 2
                                                                        : text.x;
          const QRectF box(from, text.y - 0.75 * text.size, length, 0.75 * text.size);
          for (const QRectF& other : taken) QVERIFY2(!box.intersects(other), text.words.toUtf8().constData());
          taken.push_back(box);
        }
      }
    }
  }

  void every_fault_of_the_table_is_printed() {
    for (const int count : {1, 12, 13, 60}) {
      const QString words = allWords(drawPredictions(predictions("x", count), Paper::letter));
      for (int i = 0; i < count; ++i) QVERIFY(words.contains(QStringLiteral("Fault-%1 x").arg(i)));
      QVERIFY(!words.contains(QStringLiteral("HOOD OPEN")));
    }
  }

  void every_failure_is_on_the_sheet() {
    for (const int count : {0, 1, 6, 14, 120}) {
      const Pages pages = drawTrimSheet(trim("Cluster", count), Paper::letter);
      const QString words = allWords(pages);
      for (int i = 0; i < count; ++i) {
        QVERIFY(words.contains(QStringLiteral("Part-%1 opens").arg(i)));
        QVERIFY(words.contains(QStringLiteral("Shown-%1 low").arg(i)));
      }
      if (count == 120) QVERIFY(pages.size() >= 4);
    }
  }

  void a_sheet_of_several_pages_counts_them_and_repeats_the_columns() {
    const Pages pages = drawTrimSheet(trim("Cluster", 120), Paper::a4);
    for (std::size_t i = 0; i < pages.size(); ++i)
      QVERIFY(readPage(pages[i]).all().contains(QStringLiteral("page %1 of %2").arg(i + 1).arg(pages.size())));
    int headed = 0;
    for (const std::string& page : pages) headed += readPage(page).all().contains(QStringLiteral("WHAT FAILS")) ? 1 : 0;
    QVERIFY(headed >= 3);
  }

  void every_cell_of_a_large_plan_is_on_it() {
    // The largest the workflow takes.
    const Pages pages = drawSwapPlan(plan(20, 50), Paper::letter);
    QSet<QString> words;
    for (const std::string& page : pages)
      for (const auto& text : readPage(page).texts) words << text.words;
    for (int c = 0; c < 20 * 50; ++c) QVERIFY(words.contains(QStringLiteral("Part-%1").arg(c)));
  }

  void the_card_keeps_the_line_for_the_thermostat_however_many_there_are() {
    for (const int lines : {1, 5, 20, 40, 90}) {
      OffsetCard crowded = card("Cluster", std::max(lines, 9));
      crowded.lines[8].truth = "82 °C warm";
      QVERIFY(allWords(drawOffsetCard(crowded, Paper::letter)).contains(QStringLiteral("82 °C")));
    }
  }

  void the_card_has_cut_marks_outside_its_corners_twice() {
    const auto page = readPage(drawOffsetCard(card(), Paper::a4).front());
    QCOMPARE(page.all().count(QStringLiteral("OFFSET CARD")), 2);
    QVERIFY(page.names.count(QStringLiteral("line")) >= 16);
  }

  void a_needle_off_the_marks_throughout_is_said() {
    OffsetCard off = card();
    for (CardPoint& point : off.points) point.onTheMarks = false;
    QVERIFY(allWords(drawOffsetCard(off, Paper::a4)).contains(QStringLiteral("off the marks throughout")));
  }

  void figures_that_would_collide_are_left_to_the_table_and_the_hot_mark_stays() {
    const auto page = readPage(drawRemarkedDial(remarked(), dial(), Paper::a4)->front());
    QStringList figures;
    for (const auto& text : page.texts)
      if (text.moved) figures << text.words;
    QVERIFY(figures.contains(QStringLiteral("H")));
    QCOMPARE(figures.count(QStringLiteral("80")) + figures.count(QStringLiteral("82")), 1);
    QVERIFY(page.all().contains(QStringLiteral("82 °C")));
  }

  void a_dial_larger_than_the_paper_is_refused() {
    RemarkedDial large = remarked();
    large.radius = 190;
    const auto drawn = drawRemarkedDial(large, dial(), Paper::a4);
    QVERIFY(!drawn);
    QCOMPARE(drawn.error().code, std::string("dial-larger-than-paper"));
  }
};

QTEST_APPLESS_MAIN(TestSheets)
#include "tst_sheets.moc"
