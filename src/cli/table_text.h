#pragma once
#include <pairing/error_table.h>
#include <quantity/print.h>
#include <string>
#include <string_view>

/// Plain text for a terminal: wrapped sentences and the indicated-against-true table.
namespace ohmkin::cli {

inline constexpr std::size_t kColumns = 96;

/// Wrapped at blanks to kColumns, every line indented; a character counts one column however many bytes it has.
std::string wrapped(std::string_view text, std::size_t indent, std::size_t firstIndent);

/// One row every few kelvins: true, indicated, error, uncertainty.
std::string errorTableText(const pairing::ErrorTable& table, const DisplayUnits& units, std::size_t mostRows = 13);

/// "3 K late", "early by 2 K", "never, the sender's curve ends first"
std::string hotWarningText(const pairing::HotWarning& hot, const DisplayUnits& units);

}  // namespace ohmkin::cli
