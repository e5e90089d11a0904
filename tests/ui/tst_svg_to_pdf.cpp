#include <print/lettering.h>
#include <print/print_sheet.h>
#include <print/svg_to_pdf.h>
#include <sheet/lettering.h>
#include <sheet/offset_card.h>
#include <sheet/remarked_dial.h>
#include <sheet/swap_plan.h>

#include <QFontDatabase>
#include <QFontMetricsF>
#include <QImage>
#include <QPrinter>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

using namespace ohmkin;

namespace {

constexpr double kMillimetresPerInch = 25.4;

gauge::Dial dial() {
  return *gauge::Dial::make({{gauge::MarkKind::numbered, "40", celsius(40), {-50}},
                             {gauge::MarkKind::numbered, "80", celsius(80), {0}},
                             {gauge::MarkKind::hot, "H", celsius(110), {40}}},
                            {-60}, {55});
}

QByteArray dialPage() {
  sheet::RemarkedDial made;
  made.heading = {"Cluster", "built for A", "Sender <B> & \"C\"", "B", "22 Aug 1971"};
  made.cautions = {"The gauge is an aid."};
  return QByteArray::fromStdString(sheet::drawRemarkedDial(made, dial(), sheet::Paper::a4)->front());
}

QByteArray planPage() {
  sheet::SwapPlan plan;
  plan.dashes = {"Dash"};
  plan.engines = {"Engine"};
  plan.cells = {{true, true, "Part", {}, "+1 K", "Right.", "later engine", ""}};
  return QByteArray::fromStdString(sheet::drawSwapPlan(plan, sheet::Paper::letter).front());
}

/// A tool of poppler-utils, run to its end; its standard output.
QByteArray ran(const QString& tool, const QStringList& arguments) {
  QProcess process;
  process.start(tool, arguments);
  if (!process.waitForFinished(60000) || process.exitCode() != 0) return {};
  return process.readAllStandardOutput();
}

bool dark(const QImage& picture, int x, int y) { return qGray(picture.pixel(x, y)) < 128; }

/// The longest run of dark pixels in any row, which on a re-marked dial's lower half is the ruler's base line or a rule
/// of the page; and where it is.
struct Run {
  int row = 0;
  int from = 0;
  int length = 0;
};

std::vector<Run> runsOf(const QImage& picture, int atLeast) {
  std::vector<Run> runs;
  for (int y = 0; y < picture.height(); ++y) {
    int from = -1;
    for (int x = 0; x <= picture.width(); ++x) {
      const bool on = x < picture.width() && dark(picture, x, y);
      if (on && from < 0) from = x;
      if (!on && from >= 0) {
        if (x - from >= atLeast) runs.push_back({y, from, x - from});
        from = -1;
      }
    }
  }
  return runs;
}

}  // namespace

class TestSvgToPdf : public QObject {
  Q_OBJECT
 private slots:
  void initTestCase() {
    if (QStandardPaths::findExecutable(QStringLiteral("pdftoppm")).isEmpty()) QSKIP("poppler-utils is not installed");
    QVERIFY(folder_.isValid());
    QVERIFY(printing::svgToPdf({dialPage(), planPage()}, pdf()));
  }

  void the_ruler_is_fifty_millimetres_in_the_picture_of_the_pdf() {
    // An inch is 25.4 mm: at 400 dots to the inch 50 mm are 787.4 dots.
    constexpr int kDots = 400;
    const QImage picture = drawn(1, kDots);
    const double millimetre = kDots / kMillimetresPerInch;
    QVERIFY(std::abs(picture.width() - 210 * millimetre) <= 1.5);
    QVERIFY(std::abs(picture.height() - 297 * millimetre) <= 1.5);
    int found = 0;
    for (const Run& run : runsOf(picture, static_cast<int>(40 * millimetre))) {
      if (run.length > 60 * millimetre) continue;  // the page's own rules
      QVERIFY2(std::abs(run.length / millimetre - 50) < 0.3, qPrintable(QString::number(run.length / millimetre)));
      ++found;
    }
    QVERIFY(found > 0);
  }

  void marks_of_the_ruler_are_a_millimetre_apart() {
    constexpr int kDots = 400;
    const QImage picture = drawn(1, kDots);
    const double millimetre = kDots / kMillimetresPerInch;
    const auto runs = runsOf(picture, static_cast<int>(40 * millimetre));
    const auto base =
        std::find_if(runs.begin(), runs.end(), [&](const Run& run) { return run.length < 60 * millimetre; });
    QVERIFY(base != runs.end());
    const int row = base->row - static_cast<int>(1.2 * millimetre);
    std::vector<double> middles;
    for (int x = base->from - 3; x < base->from + base->length + 3; ++x) {
      if (!dark(picture, x, row) || dark(picture, x - 1, row)) continue;
      int end = x;
      while (dark(picture, end, row)) ++end;
      middles.push_back((x + end - 1) / 2.0);
    }
    QCOMPARE(middles.size(), std::size_t(51));
    QVERIFY(std::abs((middles.back() - middles.front()) / millimetre - 50) < 0.1);
    for (std::size_t i = 1; i < middles.size(); ++i)
      QVERIFY(std::abs((middles[i] - middles[i - 1]) / millimetre - 1) < 0.1);
  }

  void no_page_is_blank() {
    for (const int page : {1, 2}) {
      const QImage picture = drawn(page, 72);
      int black = 0;
      for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x) black += dark(picture, x, y) ? 1 : 0;
      QVERIFY(black > 500);
      QVERIFY(black < picture.width() * picture.height() / 4);
    }
  }

  void every_page_has_the_size_of_its_sheet() {
    const QString info =
        QString::fromUtf8(ran(QStringLiteral("pdfinfo"), {QStringLiteral("-f"), QStringLiteral("1"),
                                                          QStringLiteral("-l"), QStringLiteral("2"), pdf()}));
    const QRegularExpression size(QStringLiteral("Page +(\\d) size: +([\\d.]+) x ([\\d.]+) pts"));
    QList<QSizeF> sizes;
    for (auto all = size.globalMatch(info); all.hasNext();) {
      const auto match = all.next();
      sizes << QSizeF(match.captured(2).toDouble(), match.captured(3).toDouble()) * kMillimetresPerInch / 72;
    }
    QCOMPARE(sizes.size(), 2);
    QVERIFY(std::abs(sizes[0].width() - 210) < 0.2 && std::abs(sizes[0].height() - 297) < 0.2);
    QVERIFY(std::abs(sizes[1].width() - 279.4) < 0.2 && std::abs(sizes[1].height() - 215.9) < 0.2);
  }

  void text_stays_text() {
    const QString words = QString::fromUtf8(ran(QStringLiteral("pdftotext"), {pdf(), QStringLiteral("-")}));
    QVERIFY(words.contains(QStringLiteral("The dial this needle needs")));
    QVERIFY(words.contains(QStringLiteral("Sender <B> & \"C\"")));
    QVERIFY(words.contains(QStringLiteral("Part")));
    QVERIFY(!ran(QStringLiteral("pdffonts"), {pdf()}).split('\n').value(2).isEmpty());
  }

  void the_pdf_holds_no_pictures() {
    QCOMPARE(ran(QStringLiteral("pdfimages"), {QStringLiteral("-list"), pdf()}).trimmed().count('\n'), 1);
  }

  void words_are_as_long_as_the_font_makes_them_data() {
    QTest::addColumn<QString>("words");
    QTest::addColumn<bool>("bold");
    for (const bool bold : {false, true}) {
      const char* weight = bold ? "bold" : "regular";
      QTest::addRow("letters, %s", weight) << QStringLiteral("The quick brown fox jumps over the lazy dog") << bold;
      QTest::addRow("figures, %s", weight) << QStringLiteral("0123456789 +−.,:;()[]/&<>\"'") << bold;
      QTest::addRow("signs, %s", weight) << QStringLiteral("82 °C ± 4 K · 1.2 kΩ ∥ 510 Ω → ≤ ≥ … – “x”") << bold;
      QTest::addRow("accents, %s", weight) << QStringLiteral("ÄÖÜäöüßéèçñøÅŁłŠž") << bold;
    }
  }
  void words_are_as_long_as_the_font_makes_them() {
    QFETCH(QString, words);
    QFETCH(bool, bold);
    if (!QFontDatabase::families().contains(QStringLiteral("DejaVu Sans"))) QSKIP("DejaVu Sans is not installed");
    // Measured by Qt from the font's file: not by our table.
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPixelSize(1000);
    font.setBold(bold);
    font.setKerning(false);
    font.setHintingPreference(QFont::PreferNoHinting);
    const double measured = QFontMetricsF(font).horizontalAdvance(words) / 1000;
    const double ours = sheet::widthOf(words.toStdString(), 1, bold ? sheet::Weight::bold : sheet::Weight::regular);
    // Ligatures ("fi") are a little narrower than their letters.
    QVERIFY2(std::abs(ours / measured - 1) < 0.01, qPrintable(QStringLiteral("%1 against %2").arg(ours).arg(measured)));
  }

  void a_file_that_cannot_be_written_is_refused() {
    const auto done = printing::svgToPdf({dialPage()}, folder_.filePath(QStringLiteral("not/there/x.pdf")));
    QVERIFY(!done);
    QCOMPARE(done.error().code, std::string("pdf-not-saved"));
  }

  void what_is_no_sheet_is_refused_and_the_old_pdf_stays_data() {
    QTest::addColumn<QByteArray>("svg");
    QTest::newRow("nothing") << QByteArray();
    QTest::newRow("text") << QByteArray("hello");
    QTest::newRow("no size") << QByteArray("<svg xmlns='http://www.w3.org/2000/svg'/>");
    QTest::newRow("size in pixels") << QByteArray("<svg xmlns='http://www.w3.org/2000/svg' width='100' height='100'/>");
    QTest::newRow("size past reason") << QByteArray(
        "<svg xmlns='http://www.w3.org/2000/svg' width='1e9mm' height='100mm'/>");
    QTest::newRow("cut short") << dialPage().chopped(200);
  }
  void what_is_no_sheet_is_refused_and_the_old_pdf_stays() {
    QFETCH(QByteArray, svg);
    const QString file = folder_.filePath(QStringLiteral("kept.pdf"));
    QFile kept(file);
    QVERIFY(kept.open(QIODevice::WriteOnly));
    kept.write("as it was");
    kept.close();
    QVERIFY(!printing::svgToPdf({svg}, file));
    QVERIFY(kept.open(QIODevice::ReadOnly));
    QCOMPARE(kept.readAll(), QByteArray("as it was"));
  }

  void the_printer_draws_every_page() {
    const QString file = folder_.filePath(QStringLiteral("printed.pdf"));
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(file);
    printer.setPageSize(QPageSize(QPageSize::A4));
    const std::string page = dialPage().toStdString();
    QVERIFY(printing::drawOn(printer, {QStringLiteral("dial"), {page, page}}));
    QVERIFY(ran(QStringLiteral("pdfinfo"), {file}).contains("Pages:           2"));
  }

  void the_program_makes_a_pdf_without_a_window() {
    const QString svg = folder_.filePath(QStringLiteral("in.svg"));
    const QString out = folder_.filePath(QStringLiteral("out.pdf"));
    QFile file(svg);
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write(dialPage());
    file.close();
    QProcess program;
    // Where nobody is logged in Qt remarks on a missing folder: standard error is for what went wrong.
    QProcessEnvironment nobody = QProcessEnvironment::systemEnvironment();
    nobody.remove(QStringLiteral("XDG_RUNTIME_DIR"));
    program.setProcessEnvironment(nobody);
    program.start(QStringLiteral(OHMKIN_WINDOW_PROGRAM),
                  {QStringLiteral("--print"), svg, svg, QStringLiteral("--pdf"), out});
    QVERIFY(program.waitForFinished(60000));
    QCOMPARE(program.exitCode(), 0);
    QCOMPARE(program.readAllStandardError(), QByteArray());
    QVERIFY(ran(QStringLiteral("pdfinfo"), {out}).contains("Pages:           2"));

    program.start(QStringLiteral(OHMKIN_WINDOW_PROGRAM),
                  {QStringLiteral("--print"), svg + QStringLiteral("x"), QStringLiteral("--pdf"), out});
    QVERIFY(program.waitForFinished(60000));
    QCOMPARE(program.exitCode(), 2);
    QVERIFY(program.readAllStandardError().contains("--print: found"));
  }

 private:
  [[nodiscard]] QString pdf() const { return folder_.filePath(QStringLiteral("sheets.pdf")); }
  [[nodiscard]] QImage drawn(int page, int dots) const {
    const QString stem = folder_.filePath(QStringLiteral("page-%1-%2").arg(page).arg(dots));
    const QString number = QString::number(page);
    ran(QStringLiteral("pdftoppm"),
        {QStringLiteral("-r"), QString::number(dots), QStringLiteral("-f"), number, QStringLiteral("-l"), number,
         QStringLiteral("-gray"), QStringLiteral("-png"), QStringLiteral("-singlefile"), pdf(), stem});
    return QImage(stem + QStringLiteral(".png"));
  }
  QTemporaryDir folder_;
};

QTEST_MAIN(TestSvgToPdf)
#include "tst_svg_to_pdf.moc"
