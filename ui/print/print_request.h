#pragma once
#include <QCommandLineParser>

#include <optional>

/// How the terminal has its sheets made into a PDF: ohmkin-window --print IN.svg… --pdf OUT
namespace ohmkin::printing {

void addPrintRequest(QCommandLineParser& arguments);

/// None where nothing is to be printed. Otherwise it is done, one sentence on standard error says what went wrong, and
/// this is what the program ends with: 0 done, 2 bad input.
std::optional<int> servedPrintRequest(const QCommandLineParser& arguments);

}  // namespace ohmkin::printing
