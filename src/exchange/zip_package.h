#pragma once
#include <exchange/package.h>
#include <filesystem>
#include <map>
#include <optional>
#include <string>

namespace ohmkin::exchange {

/// The files of a zip, unpacked in memory. Nothing is ever written where a name in it says. A zip is hostile until
/// read: it may hold plain files and one folder around all of them, no two of one name, no links, no names that lead
/// elsewhere, nothing locked, and no more than the limits say.
class ZipPackage {
 public:
  struct Limits {
    std::size_t packedBytes = 256U << 20U;  ///< the zip itself
    std::size_t totalBytes = 512U << 20U;   ///< all of it unpacked
    std::size_t fileBytes = 64U << 20U;     ///< one file unpacked
    std::size_t files = 200;
    double ratio = 200;  ///< unpacked to packed, once a megabyte is unpacked; sheets of numbers pack 3 to 20 times
  };

  /// Refuses zip-unreadable, zip-name, zip-link, zip-twice, zip-too-large, zip-too-dense, zip-locked, file-missing.
  static Expected<ZipPackage> open(const std::filesystem::path& file, const Limits& limits);
  static Expected<ZipPackage> open(const std::filesystem::path& file) { return open(file, Limits{}); }

  /// Lives no longer than this.
  [[nodiscard]] PackageSource source() const;
  [[nodiscard]] const std::map<std::string, std::string, std::less<>>& files() const { return files_; }

 private:
  std::map<std::string, std::string, std::less<>> files_;
};

/// A package where somebody keeps it: a folder, or a zip, which is unpacked in memory.
class PackageAt {
 public:
  static Expected<PackageAt> open(const std::filesystem::path& path);
  [[nodiscard]] PackageSource source() const { return zip_ ? zip_->source() : PackageSource::folder(folder_); }

 private:
  std::filesystem::path folder_;
  std::optional<ZipPackage> zip_;
};

/// True for a name that ends in .zip, or a file that begins as one does.
bool isZip(const std::filesystem::path& file);

}  // namespace ohmkin::exchange
