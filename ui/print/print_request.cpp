#include <print/print_request.h>
#include <print/svg_to_pdf.h>

#include <QCoreApplication>
#include <QFile>

#include <cstdio>

namespace ohmkin::printing {
namespace {

constexpr qint64 kLargestSheet = 16 << 20;

const QString& printOption() {
  static const QString name = QStringLiteral("print");
  return name;
}
const QString& pdfOption() {
  static const QString name = QStringLiteral("pdf");
  return name;
}

Expected<QList<QByteArray>> readSheets(const QStringList& files) {
  QList<QByteArray> sheets;
  for (const QString& name : files) {
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly) || file.size() > kLargestSheet)
      return refuse("sheet-unreadable", "--print", "'" + name.toStdString() + "'",
                    "a sheet that can be read, at most 16 MB");
    sheets.push_back(file.readAll());
  }
  return sheets;
}

}  // namespace

void addPrintRequest(QCommandLineParser& arguments) {
  arguments.addOptions(
      {{printOption(), QCoreApplication::translate("print", "make a PDF of the SVG sheets named, and end")},
       {pdfOption(), QCoreApplication::translate("print", "where the PDF goes"), QStringLiteral("OUT")}});
}

std::optional<int> servedPrintRequest(const QCommandLineParser& arguments) {
  if (!arguments.isSet(printOption())) return std::nullopt;
  const auto done = [&]() -> Expected<void> {
    if (arguments.value(pdfOption()).isEmpty())
      return refuse("pdf-not-named", "--pdf", "nothing", "a file for the PDF");
    const auto sheets = readSheets(arguments.positionalArguments());
    if (!sheets) return tl::make_unexpected(sheets.error());
    return svgToPdf(*sheets, arguments.value(pdfOption()));
  }();
  if (done) return 0;
  std::fprintf(stderr, "ohmkin-window: %s\n", done.error().sentence().c_str());
  return 2;
}

}  // namespace ohmkin::printing
