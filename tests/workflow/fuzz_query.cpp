#include <catalog/catalogue.h>
#include <embedded/ohmkin_seed_data.h>
#include <unistd.h>
#include <workflow/load_pack.h>
#include <workflow/question_text.h>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <string>

using namespace ohmkin;

namespace {

void hold(bool so) {
  if (!so) std::abort();
}

workflow::Vocabulary demoWords() {
  const auto file = std::filesystem::temp_directory_path() / ("fuzz-query-" + std::to_string(getpid()) + ".ohmkin");
  std::vector<exchange::PackageFile> files;
  for (const auto& one : seed_data::files()) files.push_back({one.name, one.text});
  hold(workflow::createWithPack(file, exchange::PackageSource::memory(std::move(files)), "fuzz").has_value());
  workflow::Vocabulary words(catalog::Catalogue::openToRead(file));
  std::filesystem::remove(file);
  return words;
}

}  // namespace

/// What is typed into the box of the match page: never refused, every piece of it accounted for.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const workflow::Vocabulary words = demoWords();
  if (size > 300) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto reading = workflow::readQuestion(words, text);
  std::size_t at = 0;
  for (const auto& piece : reading.pieces) {
    hold(piece.from >= at && piece.from + piece.length <= text.size());
    at = piece.from;
    hold(piece.field.empty() == !workflow::complaint(piece, text).empty());
  }
  for (const auto& one : workflow::completions(words, text)) hold(one.from <= text.size() && !one.insert.empty());
  return 0;
}
