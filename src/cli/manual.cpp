#include <cli/manual.h>
#include <cli/version_text.h>
#include <fmt/format.h>

namespace ohmkin::cli {
namespace {

/// Text as roff prints it: a backslash is no command, nor is a line's first period or apostrophe.
std::string plain(std::string_view text) {
  std::string out;
  if (text.starts_with('.') || text.starts_with('\'')) out += "\\&";
  for (const char c : text) {
    if (c == '\\') out += "\\e";
    else if (c == '-') out += "\\-";
    else if (c == '\'') out += "\\(aq";
    else if (c == '\n') out += ' ';
    else out += c;
  }
  return out;
}

std::string optionText(const OptionSpec& option) {
  std::string text = fmt::format(".TP\n\\fB{}\\fR", plain(option.name));
  if (!option.value.empty()) text += fmt::format(" \\fI{}\\fR", plain(option.value));
  text += "\n" + plain(option.help);
  if (option.repeatable) text += " (may be given again)";
  return text + ".\n";
}

std::string commandText(const CommandSpec& spec) {
  std::string text =
      fmt::format(".SS {}\n{}\n.PP\n\\fBohmkin {}\\fR", plain(spec.name), plain(spec.summary), spec.name);
  if (!spec.options.empty()) text += " [\\fIOPTION\\fR]…";
  if (!spec.words.empty()) text += fmt::format(" \\fI{}\\fR", plain(spec.words));
  text += "\n";
  if (!spec.words.empty()) text += fmt::format(".TP\n\\fI{}\\fR\n{}.\n", plain(spec.words), plain(spec.wordsHelp));
  for (const OptionSpec& option : spec.options) text += optionText(option);
  if (!spec.example.empty()) text += fmt::format(".PP\nExample:\n.PP\n.EX\n    {}\n.EE\n", plain(spec.example));
  return text;
}

constexpr std::string_view kEnd = R"(.SH ENVIRONMENT
.TP
.B OHMKIN_CATALOG
The catalogue to use where \fB\-\-catalog\fR is not given.
.SH EXIT STATUS
0 an answer, 1 no answer, 2 bad input. Results go to standard output, messages to standard error.
.SH CAUTIONS
A gauge is an aid. Never open a hot cooling system: it is under pressure. Take the battery's ground off before working
on wiring. Local codes and licensed practice come first.
.SH SEE ALSO
.BR ohmkin\-window (1)
)";

}  // namespace

std::string manualPage(const Commands& commands) {
  std::string text = fmt::format(
      ".TH OHMKIN 1 \"\" \"Ohmkin {}\" \"User Commands\"\n"
      ".SH NAME\nohmkin \\- which temperature sender joins this dash gauge to that engine\n"
      ".SH SYNOPSIS\n\\fBohmkin\\fR \\fICOMMAND\\fR [\\fIOPTION\\fR]…\n.PP\n"
      "\\fBohmkin\\fR [\\fICOMMAND\\fR] \\fB\\-\\-help\\fR\n.PP\n\\fBohmkin \\-\\-version\\fR\n"
      ".SH DESCRIPTION\nOhmkin tells which temperature sender joins a dash gauge to an engine, and by how much the\n"
      "needle lies when none does. Its commands work on a catalogue, one file of gauges, senders, castings and\n"
      "resistance families; \\fBohmkin demo\\fR writes one to try.\n.SH COMMANDS\n",
      version());
  for (const auto& command : commands) text += commandText(command->spec());
  return text + std::string(kEnd);
}

}  // namespace ohmkin::cli
