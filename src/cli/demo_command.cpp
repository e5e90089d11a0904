#include <cli/common_options.h>
#include <cli/demo_command.h>
#include <embedded/ohmkin_seed_data.h>
#include <exchange/package.h>
#include <fmt/format.h>
#include <workflow/load_pack.h>
#include <ostream>

namespace ohmkin::cli {

const CommandSpec& DemoCommand::spec() const {
  static const CommandSpec spec{
      "demo", "Writes a demo catalogue: invented makes, senders and castings to try everything on.",
      "FILE", "the new catalogue; a file that exists is never replaced",
      1,      1,
      {},     "ohmkin demo demo.ohmkin"};
  return spec;
}

Expected<Exit> DemoCommand::run(const Arguments& arguments, Streams streams) const {
  std::vector<exchange::PackageFile> files;
  for (const auto& file : seed_data::files()) files.push_back({file.name, file.text});
  const std::string& path = arguments.words.front();
  const auto loaded = workflow::createWithPack(path, exchange::PackageSource::memory(std::move(files)), "ohmkin demo");
  if (!loaded) {
    streams.err << loaded.error().text();
    return Exit::badInput;
  }
  streams.out << fmt::format("{}: {}\n", path, loaded->sentence());
  return Exit::answer;
}

}  // namespace ohmkin::cli
