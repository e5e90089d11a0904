#include <print/lettering.h>
#include <print/print_sheet.h>
#include <print/svg_to_pdf.h>

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPainter>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSaveFile>
#include <QStandardPaths>

namespace ohmkin::printing {
namespace {

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

/// Where to; empty: nowhere after all.
QString chosenFile(const Sheets& sheets, QWidget* parent, const QString& title, const QString& ending,
                   const QString& kinds) {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  QString name = sheets.name;
  name.replace(QLatin1Char('/'), QLatin1Char('-'));
  const QString file = QFileDialog::getSaveFileName(parent, title, folder + QLatin1Char('/') + name + ending, kinds);
  return file.isEmpty() || file.endsWith(ending, Qt::CaseInsensitive) ? file : file + ending;
}

void openUnder(QPushButton& button, QMenu* menu) {
  QObject::connect(&button, &QPushButton::clicked, menu, [&button, menu] {
    menu->popup(button.mapToGlobal(QPoint(0, button.height())));
    if (!menu->actions().isEmpty()) menu->setActiveAction(menu->actions().front());
  });
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
  const QString file = chosenFile(sheets, parent, tr("Save as PDF"), QStringLiteral(".pdf"), tr("PDF (*.pdf)"));
  if (file.isEmpty()) return;
  QList<QByteArray> pages;
  for (const std::string& page : sheets.pages) pages.push_back(bytesOf(page));
  if (const auto saved = svgToPdf(pages, file); !saved) complain(saved.error(), parent);
}

void saveAsSvg(const Sheets& sheets, QWidget* parent) {
  const QString file = chosenFile(sheets, parent, tr("Save as SVG"), QStringLiteral(".svg"), tr("Drawings (*.svg)"));
  if (file.isEmpty()) return;
  if (const auto saved = writeSvg(sheets, file); !saved) complain(saved.error(), parent);
}

Expected<void> writeSvg(const Sheets& sheets, const QString& file) {
  const QFileInfo first(file);
  for (std::size_t i = 0; i < sheets.pages.size(); ++i) {
    const QString name =
        i == 0 ? file
               : first.dir().filePath(QStringLiteral("%1-%2.%3")
                                          .arg(first.completeBaseName())
                                          .arg(i + 1)
                                          .arg(first.suffix().isEmpty() ? QStringLiteral("svg") : first.suffix()));
    const QByteArray bytes = bytesOf(sheets.pages[i]);
    QSaveFile out(name);
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit())
      return refuse("svg-not-saved", QFileInfo(name).fileName().toStdString(), out.errorString().toStdString(),
                    "a place that can be written");
  }
  return {};
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
  add(tr("Save as SVG…"), saveAsSvg);
  return menu;
}

void sheetButton(QPushButton& button, const QString& title, MakeSheets make) {
  openUnder(button, sheetMenu(title, std::move(make), &button));
}

void sheetButton(QPushButton& button, const std::vector<std::pair<QString, MakeSheets>>& all) {
  auto* menu = new QMenu(&button);
  for (const auto& [title, make] : all) menu->addMenu(sheetMenu(title, make, menu));
  openUnder(button, menu);
}

}  // namespace ohmkin::printing
