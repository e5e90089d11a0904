#pragma once
#include <exchange/package.h>
#include <filesystem>
#include <string>
#include <vector>

/// Packages of catalogue rows going out: datapackage.json (profile tabular-data-package, specs.frictionlessdata.io) and
/// one CSV file a table (RFC 4180, UTF-8). The same rows give the same bytes, wherever and whenever they are written.
namespace ohmkin::exchange {

struct WrittenFile {
  std::string name;  ///< without folder
  std::string text;
};

/// datapackage.json first. A text that a spreadsheet would take for a formula (it begins with = + - @ tab or carriage
/// return; OWASP, "CSV Injection") gets an apostrophe before it, which readPackage() takes off again; numbers and lists
/// of numbers stay as they are. All of it is read back before it goes out: complaints name file:line:column of what a
/// reader would refuse (control characters, blanks at an end, a package without rows, a name that readDescriptor() does
/// not take) or read as something else. References are stated where they hold within the package; bounds are the
/// inclusive ones every Table Schema tool knows.
tl::expected<std::vector<WrittenFile>, Complaints> writePackage(const Package& package);

/// Into a folder of its own, made whole under another name first; or as a zip. Neither replaces anything: refuses
/// file-exists, and file-unwritable where the disk does not take it.
Expected<void> writeFolder(const std::vector<WrittenFile>& files, const std::filesystem::path& folder);
Expected<void> writeZip(const std::vector<WrittenFile>& files, const std::filesystem::path& file);

}  // namespace ohmkin::exchange
