#pragma once
#include <finding/refusal.h>
#include <iosfwd>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What a subcommand is: its name, its arguments and options as data, and one function. Help, parsing, man
/// page and shell completions come from the data, so they cannot disagree.
namespace ohmkin::cli {

/// 0 an answer, 1 no answer, 2 bad input.
enum class Exit { answer = 0, noAnswer = 1, badInput = 2 };

/// Names of the catalogue that a shell may complete an option with.
enum class Names { none, gauges, parts, families, castings };

struct OptionSpec {
  std::string name;   ///< "--vehicle"
  std::string value;  ///< what it takes, as help shows it: "LINE"; "FILE" completes as one; empty for a switch
  std::string help;
  bool repeatable = false;
  std::vector<std::string> choices = {};  ///< the words it takes; empty: others as well
  Names names = Names::none;
};

struct CommandSpec {
  std::string name;
  std::string summary;
  std::string words;  ///< what stands after the options, as help shows it: "FILE", "[TEXT]…"; empty: nothing may
  std::string wordsHelp;
  std::size_t fewestWords = 0;
  std::size_t mostWords = 0;
  std::vector<OptionSpec> options;
  std::string example;                        ///< a whole command line
  std::vector<std::string> wordChoices = {};  ///< what the first word may be, where it is one of a few
};

/// What was given, by option name.
class Arguments {
 public:
  std::map<std::string, std::vector<std::string>, std::less<>> values;
  std::vector<std::string> words;

  [[nodiscard]] bool has(std::string_view option) const { return values.contains(option); }
  [[nodiscard]] std::string one(std::string_view option,
                                const std::string& otherwise = {}) const;  ///< the last one given
  [[nodiscard]] std::vector<std::string> all(std::string_view option) const;
};

/// Results go to out, messages to err.
struct Streams {
  std::ostream& out;
  std::ostream& err;
};

class Command {
 public:
  virtual ~Command() = default;
  [[nodiscard]] virtual const CommandSpec& spec() const = 0;
  /// A refusal is printed as one sentence on err, and ends with Exit::badInput.
  [[nodiscard]] virtual Expected<Exit> run(const Arguments& arguments, Streams streams) const = 0;
};

using Commands = std::vector<std::unique_ptr<Command>>;
Commands allCommands();

}  // namespace ohmkin::cli
