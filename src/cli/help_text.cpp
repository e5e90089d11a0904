#include <cli/program.h>
#include <cli/table_text.h>
#include <fmt/format.h>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kHelpColumn = 26;

std::string line(const std::string& left, const std::string& right) {
  const std::string explained = wrapped(right, 2 + kHelpColumn, 2 + kHelpColumn);
  if (left.size() + 2 > kHelpColumn) return fmt::format("  {}\n{}", left, explained);
  return fmt::format("  {:{}}{}", left, kHelpColumn, explained.substr(2 + kHelpColumn));
}

}  // namespace

std::string helpText(const CommandSpec& spec) {
  std::string text = fmt::format("{}\nUsage: ohmkin {}{}{}\n", wrapped(spec.summary, 0, 0), spec.name,
                                 spec.options.empty() ? "" : " [OPTION]…", spec.words.empty() ? "" : " " + spec.words);
  if (!spec.words.empty()) text += "\n" + line(spec.words, spec.wordsHelp);
  if (!spec.options.empty()) text += "\nOptions:\n";
  for (const OptionSpec& option : spec.options) {
    text += line(option.value.empty() ? option.name : option.name + " " + option.value,
                 option.repeatable ? option.help + " (may be given again)" : option.help);
  }
  text += line("--help", "this text");
  if (!spec.example.empty()) text += fmt::format("\nExample:\n  {}\n", spec.example);
  text += "\nExit: 0 an answer, 1 no answer, 2 bad input. Results on standard output, messages on standard error.\n";
  return text;
}

std::string helpText(const Commands& commands) {
  std::string text =
      wrapped(
          "Ohmkin tells which temperature sender joins this dash gauge to that engine, and by how much the needle "
          "lies when none does.",
          0, 0) +
      "\nUsage: ohmkin COMMAND [OPTION]…\n\nCommands:\n";
  for (const auto& command : commands) text += line(command->spec().name, command->spec().summary);
  text +=
      "\nohmkin COMMAND --help shows a command's options and an example. The window is ohmkin-window.\n"
      "ohmkin --man prints the manual page, ohmkin --completion bash, zsh or fish what completes its words there.\n";
  return text;
}

}  // namespace ohmkin::cli
