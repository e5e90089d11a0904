#include <print/print_sheet.h>
#include <print/svg_to_pdf.h>

#include <QCoreApplication>
#include <QFileDialog>
#include <QLocale>
#include <QMessageBox>
#include <QPainter>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QStandardPaths>

namespace ohmkin::printing {
namespace {

constexpr double kMillimetresPerInch = 25.4;

QString tr(const char* text) { return QCoreApplication::translate("print", text); }

QByteArray bytesOf(const std::string& page) { return QByteArray::fromStdString(page); }

void complain(const Refusal& refusal, QWidget* parent) {
  QMessageBox box(QMessageBox::Warning, tr("Nothing was printed"), QString(), QMessageBox::Ok, parent);
  box.setTextFormat(Qt::PlainText);
  box.setText(QString::fromStdString(refusal.sentence()));
  box.exec();
}

void prepare(QPrinter& printer, const Sheets& sheets) {
  printer.setDocName(sheets.name);
  printer.setFullPage(true);
  if (sheets.pages.empty()) return;
  const QSizeF size = sheetSize(bytesOf(sheets.pages.front()));
  const bool lies = size.width() > size.height();
  printer.setPageSize(QPageSize(lies ? size.transposed() : size, QPageSize::Millimeter));
  printer.setPageOrientation(lies ? QPageLayout::Landscape : QPageLayout::Portrait);
}

}  // namespace

Expected<void> drawOn(QPrinter& printer, const Sheets& sheets) {
  // Without this the drawing would begin at the printable area's corner and the cut marks would be off.
  printer.setFullPage(true);
  QPainter painter;
  if (!painter.begin(&printer))
    return refuse("printer-not-ready", "printer", printer.printerName().toStdString(), "a printer that answers");
  const double scale = printer.resolution() / kMillimetresPerInch;
  for (std::size_t i = 0; i < sheets.pages.size(); ++i) {
    if (i > 0) printer.newPage();
    drawSheet(painter, bytesOf(sheets.pages[i]), scale);
  }
  return {};
}

void preview(const Sheets& sheets, QWidget* parent) {
  QPrinter printer(QPrinter::HighResolution);
  prepare(printer, sheets);
  QPrintPreviewDialog dialog(&printer, parent);
  dialog.setWindowTitle(sheets.name);
  QObject::connect(&dialog, &QPrintPreviewDialog::paintRequested, &dialog, [&](QPrinter* to) {
    if (const auto drawn = drawOn(*to, sheets); !drawn) complain(drawn.error(), &dialog);
  });
  dialog.exec();
}

void printOut(const Sheets& sheets, QWidget* parent) {
  QPrinter printer(QPrinter::HighResolution);
  prepare(printer, sheets);
  QPrintDialog dialog(&printer, parent);
  if (dialog.exec() != QDialog::Accepted) return;
  if (const auto drawn = drawOn(printer, sheets); !drawn) complain(drawn.error(), parent);
}

void saveAsPdf(const Sheets& sheets, QWidget* parent) {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  QString name = sheets.name;
  name.replace(QLatin1Char('/'), QLatin1Char('-'));
  QString file = QFileDialog::getSaveFileName(
      parent, tr("Save as PDF"), folder + QLatin1Char('/') + name + QStringLiteral(".pdf"), tr("PDF (*.pdf)"));
  if (file.isEmpty()) return;
  if (!file.endsWith(QStringLiteral(".pdf"), Qt::CaseInsensitive)) file += QStringLiteral(".pdf");
  QList<QByteArray> pages;
  for (const std::string& page : sheets.pages) pages.push_back(bytesOf(page));
  if (const auto saved = svgToPdf(pages, file); !saved) complain(saved.error(), parent);
}

QMenu* sheetMenu(const QString& title, MakeSheets make, QWidget* parent) {
  auto* menu = new QMenu(title, parent);
  const auto add = [&](const QString& words, void (*act)(const Sheets&, QWidget*)) {
    menu->addAction(words, parent, [make, act, parent] {
      if (const auto sheets = make(); sheets) act(*sheets, parent);
      else complain(sheets.error(), parent);
    });
  };
  add(tr("Print preview…"), preview);
  add(tr("Print…"), printOut);
  add(tr("Save as PDF…"), saveAsPdf);
  return menu;
}

bool desktopUsesLetter() { return QLocale::system().measurementSystem() == QLocale::ImperialUSSystem; }

}  // namespace ohmkin::printing
