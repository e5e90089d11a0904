#pragma once
#include <finding/refusal.h>

#include <QMenu>
#include <QString>
#include <functional>
#include <string>
#include <vector>

class QPrinter;

/// Looking at sheets before they are printed, printing them, keeping them as a PDF.
namespace ohmkin::printing {

/// Sheets to print: every page an SVG document of a size in millimetres.
struct Sheets {
  QString name;  ///< without an ending, as a file would be called: "offset card BR-2215"
  std::vector<std::string> pages;
};

void preview(const Sheets& sheets, QWidget* parent);
void printOut(const Sheets& sheets, QWidget* parent);
void saveAsPdf(const Sheets& sheets, QWidget* parent);

/// Makes the sheets when they are wanted; a refusal is shown to the person.
using MakeSheets = std::function<Expected<Sheets>()>;
/// A menu of preview, print and save as PDF; the parent owns it.
QMenu* sheetMenu(const QString& title, MakeSheets make, QWidget* parent);

/// Draws all pages on the printer at 1:1, measured from the paper's own corner. Refuses a printer that cannot be begun.
Expected<void> drawOn(QPrinter& printer, const Sheets& sheets);

/// Letter where the desktop measures in inches after the manner of the United States, otherwise A4.
bool desktopUsesLetter();

}  // namespace ohmkin::printing
