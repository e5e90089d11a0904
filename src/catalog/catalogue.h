#pragma once
#include <catalog/catalogue_error.h>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>

namespace ohmkin::catalog {

enum class Access { readOnly, readWrite };

class Connection;  // what the statements run on; known inside this room only

/// One open catalogue file. Questions to it are the free functions of vehicles.h, gauges.h, engines.h, senders.h,
/// families.h, joints.h, layouts.h and shop.h; packages come in through pack_writer.h.
///
/// One thread at a time: a thread of its own opens a Catalogue of its own. A writer waits a few seconds for another
/// one, then throws catalogue-busy; readers and a writer do not wait for each other (write-ahead log, kept from the
/// first write on).
class Catalogue {
 public:
  /// Written into the file's header; names the format for any tool that looks. "OHMK" in ASCII.
  static constexpr std::uint32_t kApplicationId = 0x4F484D4BU;

  /// Throws CatalogueError. The file may come from anybody: it is looked over before anything of it is used (trust.h),
  /// within a second, whatever is in it. An older catalogue is migrated when opened readWrite (each migration whole or
  /// not at all, after a backup: backup.h) and refused when opened readOnly. One with a write-ahead log, lying in a
  /// folder that takes no files and with nothing left in the log, is read as immutable: no lock, no file beside it; so
  /// it must not be replaced by writing into it while it is open.
  static Catalogue open(const std::filesystem::path& file, Access access);

  /// Opened readOnly, for asking; an older catalogue is brought up to date first, once, and a change that was cut short
  /// taken back, where it may be written. Where it may not, catalogue-older or catalogue-interrupted says what to do.
  static Catalogue openToRead(const std::filesystem::path& file);

  /// Makes a new, empty catalogue and opens it readWrite; `fill`, where given, puts rows in first. It is made under a
  /// temporary name and gets its own only when whole, so that neither a failure nor a throw from `fill` leaves anything
  /// behind. Never replaces a file: throws catalogue-exists.
  static Catalogue create(const std::filesystem::path& file, const std::function<void(Catalogue&)>& fill = {});

  /// The version this program writes: the number of migrations in schema/.
  static int newestVersion();

  Catalogue(Catalogue&&) noexcept;
  Catalogue& operator=(Catalogue&&) noexcept;
  ~Catalogue();

  [[nodiscard]] const std::filesystem::path& file() const;
  [[nodiscard]] Access access() const;
  [[nodiscard]] bool immutable() const;  ///< opened as a file that nobody writes

  [[nodiscard]] Connection& connection() const { return *connection_; }

 private:
  explicit Catalogue(std::unique_ptr<Connection> connection);
  std::unique_ptr<Connection> connection_;
};

}  // namespace ohmkin::catalog
