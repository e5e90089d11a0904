#pragma once
#include <finding/refusal.h>

#include <QMenu>
#include <QPushButton>
#include <QString>
#include <functional>
#include <string>
#include <vector>

class QPrinter;

/// Looking at sheets before they are printed, printing them, keeping them as a file.
namespace ohmkin::printing {

/// Sheets to print: every page an SVG document of a size in millimetres.
struct Sheets {
  QString name;  ///< without an ending, as a file would be called: "offset card BR-2215"
  std::vector<std::string> pages;
};

void preview(const Sheets& sheets, QWidget* parent);
void printOut(const Sheets& sheets, QWidget* parent);
void saveAsPdf(const Sheets& sheets, QWidget* parent);
/// Several pages become several files: plan.svg, plan-2.svg …
void saveAsSvg(const Sheets& sheets, QWidget* parent);

/// Without a dialog. Refuses a file that cannot be written; pages written before it stay.
Expected<void> writeSvg(const Sheets& sheets, const QString& file);

/// Makes the sheets when they are wanted; a refusal is shown to the person.
using MakeSheets = std::function<Expected<Sheets>()>;
/// A menu of preview, print, save as PDF and as SVG; the parent owns it.
QMenu* sheetMenu(const QString& title, MakeSheets make, QWidget* parent);

/// A button that opens such a menu under itself.
void sheetButton(QPushButton& button, const QString& title, MakeSheets make);
/// The same with one such menu for each sheet there is.
void sheetButton(QPushButton& button, const std::vector<std::pair<QString, MakeSheets>>& all);

/// Draws all pages on the printer at 1:1, measured from the paper's own corner. Refuses a printer that cannot be begun.
Expected<void> drawOn(QPrinter& printer, const Sheets& sheets);

}  // namespace ohmkin::printing
