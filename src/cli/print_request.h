#pragma once
#include <cli/command.h>
#include <quantity/print.h>
#include <workflow/sheets.h>

#include <filesystem>
#include <vector>

/// --svg, --pdf and --paper: an answer's sheets as files. Pages are SVG; a PDF is made of them by the window program,
/// started without a window.
namespace ohmkin::cli {

/// In front of a command's own.
std::vector<OptionSpec> withPrintOptions(std::vector<OptionSpec> own);

struct PrintRequest {
  std::string svg;  ///< empty: none wanted
  std::string pdf;
  workflow::SheetOptions options;  ///< dated today
  [[nodiscard]] bool wanted() const { return !svg.empty() || !pdf.empty(); }
};
Expected<PrintRequest> printRequest(const Arguments& arguments, const DisplayUnits& units);

/// Writes the files and names them on streams.err. Of several pages the second goes to "name-2.svg" and so on. Refuses
/// a place that cannot be written and, for a PDF, a window program that is not there or fails.
Expected<void> deliver(const PrintRequest& request, const sheet::Pages& pages, Streams streams);

/// Where the n-th page goes, counted from 1: "dial.svg", "dial-2.svg".
std::filesystem::path pageFile(const std::filesystem::path& first, std::size_t page);

/// Beside the program that runs, else on PATH; empty where it is on neither.
std::filesystem::path windowProgram();

}  // namespace ohmkin::cli
