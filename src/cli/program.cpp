#include <catalog/catalogue.h>
#include <cli/completions.h>
#include <cli/manual.h>
#include <cli/program.h>
#include <cli/version_text.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/missed_backup.h>
#include <algorithm>
#include <ostream>

namespace ohmkin::cli {
namespace {

int complain(const Refusal& refusal, Streams streams) {
  streams.err << "ohmkin: " << refusal.sentence() << "\n";
  return static_cast<int>(Exit::badInput);
}

Refusal unknownCommand(const std::string& name, const Commands& commands) {
  std::vector<std::string> names;
  for (const auto& command : commands) names.push_back(command->spec().name);
  const auto near = nearMisses(name, names, 1);
  return {"command-unknown", "", fmt::format("'{}'", name),
          near.empty() ? "a command; ohmkin --help lists them" : fmt::format("a command, perhaps {}", near.front())};
}

/// --version, and what an installation is made of: the manual page, completion scripts and the names they ask for.
std::optional<int> aboutTheProgram(const std::vector<std::string>& arguments, const Commands& commands,
                                   Streams streams) {
  const std::string& asked = arguments.front();
  if (asked == "--version") streams.out << versionText();
  else if (asked == "--man") streams.out << manualPage(commands);
  else if (asked == "--completion") {
    const auto script = completionScript(commands, arguments.size() > 1 ? arguments[1] : "");
    if (!script) return complain(script.error(), streams);
    streams.out << *script;
  } else if (asked == "--names") {
    try {
      const auto names = namesBeginning({arguments.begin() + 1, arguments.end()});
      if (!names) return complain(names.error(), streams);
      for (const std::string& name : *names) streams.out << name << "\n";
    } catch (const catalog::CatalogueError& error) {
      return complain(error.refusal(), streams);
    }
  } else return std::nullopt;
  return static_cast<int>(Exit::answer);
}

/// Its change went ahead all the same, so its answer and its exit stand.
void tellMissedBackups(Streams streams) {
  for (const Finding& finding : workflow::missedBackups()) streams.err << "ohmkin: " << finding.sentence << "\n";
}

}  // namespace

int runProgram(const std::vector<std::string>& arguments, const Commands& commands, Streams streams) {
  if (arguments.empty() || arguments.front() == "--help" || arguments.front() == "help") {
    (arguments.empty() ? streams.err : streams.out) << helpText(commands);
    return static_cast<int>(arguments.empty() ? Exit::badInput : Exit::answer);
  }
  if (const auto ended = aboutTheProgram(arguments, commands, streams)) return *ended;
  const auto command = std::find_if(commands.begin(), commands.end(),
                                    [&](const auto& c) { return c->spec().name == arguments.front(); });
  if (command == commands.end()) return complain(unknownCommand(arguments.front(), commands), streams);

  const std::vector<std::string> rest(arguments.begin() + 1, arguments.end());
  if (std::find(rest.begin(), rest.end(), "--help") != rest.end()) {
    streams.out << helpText((*command)->spec());
    return static_cast<int>(Exit::answer);
  }
  const auto parsed = parseArguments((*command)->spec(), rest);
  if (!parsed) return complain(parsed.error(), streams);
  try {
    const auto exit = (*command)->run(*parsed, streams);
    tellMissedBackups(streams);
    return exit ? static_cast<int>(*exit) : complain(exit.error(), streams);
  } catch (const catalog::CatalogueError& error) {
    return complain(error.refusal(), streams);
  }
}

}  // namespace ohmkin::cli
