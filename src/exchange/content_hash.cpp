#include <exchange/content_hash.h>
#include <fmt/format.h>
#include <nettle/sha2.h>
#include <fstream>
#include <vector>

namespace ohmkin::exchange {

struct ContentHash::State {
  sha256_ctx context;
};

ContentHash::ContentHash() : state_(std::make_unique<State>()) { nettle_sha256_init(&state_->context); }
ContentHash::~ContentHash() = default;

void ContentHash::add(std::string_view bytes) {
  nettle_sha256_update(&state_->context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
}

std::string ContentHash::hex() {
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  nettle_sha256_digest(&state_->context, digest.size(), digest.data());
  return fmt::format("{:02x}", fmt::join(digest, ""));
}

Expected<std::string> contentHash(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  const auto unreadable = [&] {
    return refuse("file-missing", file.string(), "a file that cannot be read", "a file that can be read");
  };
  if (!in) return unreadable();
  ContentHash hash;
  std::vector<char> piece(256U << 10U);
  while (in.read(piece.data(), static_cast<std::streamsize>(piece.size())), in.gcount() > 0)
    hash.add({piece.data(), static_cast<std::size_t>(in.gcount())});
  if (in.bad() || !in.eof()) return unreadable();  // a folder opens and then does not read
  return hash.hex();
}

}  // namespace ohmkin::exchange
