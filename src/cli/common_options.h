#pragma once
#include <catalog/catalogue.h>
#include <cli/command.h>
#include <quantity/print.h>

/// Options every command takes, and reading them.
namespace ohmkin::cli {

/// --catalog, --json, --units.
std::vector<OptionSpec> withCommonOptions(std::vector<OptionSpec> own);

/// --catalog FILE, else the environment's OHMKIN_CATALOG; opened read-only, after an older one was brought up to
/// date. Throws catalog::CatalogueError where the file is not to be used.
Expected<catalog::Catalogue> openCatalogue(const Arguments& arguments);
/// Where that catalogue is, for messages; refuses when neither is given.
Expected<std::string> cataloguePath(const Arguments& arguments);

Expected<DisplayUnits> displayUnits(const Arguments& arguments);

/// The bytes of a file named on the command line; none where it cannot be read.
std::optional<std::string> contentsOf(const std::string& path);

}  // namespace ohmkin::cli
