#pragma once
#include <finding/refusal.h>
#include <array>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

namespace ohmkin::exchange {

/// SHA-256 (FIPS 180-4) of bytes as they come: tells a file that has been imported before.
class ContentHash {
 public:
  ContentHash();
  ~ContentHash();
  ContentHash(const ContentHash&) = delete;
  ContentHash& operator=(const ContentHash&) = delete;

  void add(std::string_view bytes);
  /// 64 hexadecimal digits, lower case; begins anew.
  std::string hex();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

/// Of a file, in pieces. Refuses one that cannot be read.
Expected<std::string> contentHash(const std::filesystem::path& file);

}  // namespace ohmkin::exchange
