#pragma once
#include <finding/refusal.h>
#include <filesystem>

namespace ohmkin::exchange {

/// A file or folder while it is being made, under a name of its own beside the wanted one. Gone unless it was given its
/// name.
class Draft {
 public:
  explicit Draft(std::filesystem::path wanted);
  ~Draft();
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  /// Refuses file-exists where the name was taken meanwhile, file-unwritable.
  Expected<void> name();

 private:
  std::filesystem::path wanted_;
  std::filesystem::path path_;
};

/// Refuses file-exists where something of that name is there, file-unwritable without a folder to lie in.
Expected<void> mayBeMade(const std::filesystem::path& wanted);
tl::unexpected<Refusal> unwritable(const std::filesystem::path& file, int error);

}  // namespace ohmkin::exchange
