#include <cli/completions.h>
#include <fmt/format.h>

namespace ohmkin::cli {
namespace {

constexpr std::string_view kFirst = "--help --version";

bool takesFile(const std::string& value) { return value == "FILE"; }
/// "FILE…", or a command whose further words are files.
bool wordsAreFiles(const CommandSpec& spec) { return spec.words.starts_with("FILE") || !spec.wordChoices.empty(); }

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
  return all;
}

std::string optionNames(const CommandSpec& spec) {
  std::string all;
  for (const OptionSpec& option : spec.options) all += option.name + " ";
  return all + "--help";
}

std::string replaced(std::string_view text, char what, std::string_view with) {
  std::string out;
  for (const char c : text) {
    if (c == what) out += with;
    else out += c;
  }
  return out;
}

// ---- bash

std::string bashCase(const CommandSpec& spec) {
  std::string text;
  for (const OptionSpec& option : spec.options) {
    if (option.value.empty()) continue;
    const std::string does = takesFile(option.value)       ? "_ohmkin_files"
                             : !option.choices.empty()     ? fmt::format("_ohmkin_words '{}'", joined(option.choices))
                             : option.names != Names::none ? fmt::format("_ohmkin_names {}", namesCode(option.names))
                                                           : ":";
    text += fmt::format("    '{} {}') {} ;;\n", spec.name, option.name, does);
  }
  return text;
}

constexpr std::string_view kBashHead = R"sh(# bash completion for ohmkin, written by `ohmkin --completion bash`
_ohmkin_words() { mapfile -t COMPREPLY < <(compgen -W "$1" -- "$cur"); }
_ohmkin_files() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -f -- "$cur")
}
_ohmkin_names() {
  local i catalog=()
  for ((i = 1; i < COMP_CWORD; i++)); do
    if [[ ${COMP_WORDS[i]} == --catalog ]]; then
      [[ ${COMP_WORDS[i + 1]} == = ]] && ((i++))
      catalog=(--catalog "${COMP_WORDS[i + 1]}")
    fi
  done
  local names name
  mapfile -t names < <("${COMP_WORDS[0]}" --names "$1" "$cur" "${catalog[@]}" 2>/dev/null)
  for name in "${names[@]}"; do COMPREPLY+=("$(printf '%q' "$name")"); done
}
_ohmkin() {
  local cur="${COMP_WORDS[COMP_CWORD]}" prev="${COMP_WORDS[COMP_CWORD - 1]}" command="${COMP_WORDS[1]}"
  COMPREPLY=()
  if [[ $cur == = ]]; then
    cur=
  elif [[ $prev == = ]]; then
    prev="${COMP_WORDS[COMP_CWORD - 2]}"
  fi
)sh";

std::string bashScript(const Commands& commands) {
  std::string names;
  std::string options;
  std::string values;
  std::string words;
  for (const auto& command : commands) {
    const CommandSpec& spec = command->spec();
    names += spec.name + " ";
    options += fmt::format("    {}) _ohmkin_words '{}' ;;\n", spec.name, optionNames(spec));
    values += bashCase(spec);
    if (!spec.wordChoices.empty())
      words += fmt::format("    {}) if ((COMP_CWORD == 2)); then _ohmkin_words '{}'; else _ohmkin_files; fi ;;\n",
                           spec.name, joined(spec.wordChoices));
    else if (wordsAreFiles(spec)) words += fmt::format("    {}) _ohmkin_files ;;\n", spec.name);
  }
  std::string text(kBashHead);
  text += fmt::format("  if ((COMP_CWORD == 1)); then\n    _ohmkin_words '{}{}'\n    return\n  fi\n", names, kFirst);
  text += "  case \"$command $prev\" in\n" + values + "    *)\n      if [[ $cur == -* ]]; then\n";
  text += "        case \"$command\" in\n" + options + "        esac\n      else\n        case \"$command\" in\n" +
          words + "        esac\n      fi ;;\n  esac\n}\ncomplete -F _ohmkin ohmkin\n";
  return text;
}

// ---- zsh

/// Inside '…', and inside the brackets and colons of _arguments.
std::string zshText(std::string_view text) {
  std::string out;
  for (const char c : replaced(text, '\\', "\\\\")) {
    if (c == '[' || c == ']' || c == ':') out += '\\';
    out += c;
  }
  return replaced(out, '\'', "'\\''");
}

std::string zshValue(const OptionSpec& option) {
  if (option.value.empty()) return {};
  const std::string name = zshText(option.value);
  if (takesFile(option.value)) return fmt::format(":{}:_files", name);
  if (!option.choices.empty()) return fmt::format(":{}:({})", name, joined(option.choices));
  if (option.names != Names::none) return fmt::format(":{}:{{_ohmkin_names {}}}", name, namesCode(option.names));
  return fmt::format(":{}: ", name);
}

std::string zshScript(const Commands& commands) {
  std::string described;
  std::string cases;
  for (const auto& command : commands) {
    const CommandSpec& spec = command->spec();
    described += fmt::format("      '{}:{}'\n", spec.name, zshText(spec.summary));
    cases += fmt::format("    {})\n      _arguments", spec.name);
    for (const OptionSpec& option : spec.options)
      cases += fmt::format(" \\\n        '{}{}[{}]{}'", option.repeatable ? "*" : "", option.name, zshText(option.help),
                           zshValue(option));
    cases += " \\\n        '--help[its options]'";
    if (!spec.wordChoices.empty()) cases += fmt::format(" \\\n        '1:word:({})'", joined(spec.wordChoices));
    if (wordsAreFiles(spec)) cases += " \\\n        '*:file:_files'";
    cases += "\n      ;;\n";
  }
  return fmt::format(R"sh(#compdef ohmkin
# zsh completion for ohmkin, written by `ohmkin --completion zsh`
_ohmkin_names() {{
  local -a names catalog
  local at=${{words[(ie)--catalog]}}
  (( at < ${{#words}} )) && catalog=(--catalog "${{(Q)words[at + 1]}}")
  names=(${{(f)"$(ohmkin --names $1 "${{(Q)PREFIX}}" $catalog 2>/dev/null)"}})
  compadd -a names
}}
_ohmkin() {{
  local curcontext="$curcontext" state line
  typeset -A opt_args
  if (( CURRENT == 2 )); then
    local -a commands
    commands=(
{}      '--help:the commands'
      '--version:version of the program and its libraries'
    )
    _describe command commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
{}  esac
}}
_ohmkin "$@"
)sh",
                     described, cases);
}

// ---- fish

std::string fishText(std::string_view text) { return replaced(replaced(text, '\\', "\\\\"), '\'', "\\'"); }

std::string fishOption(const CommandSpec& spec, const OptionSpec& option) {
  std::string line = fmt::format("complete -c ohmkin -n '__fish_seen_subcommand_from {}' -l {} -d '{}'", spec.name,
                                 option.name.substr(2), fishText(option.help));
  if (takesFile(option.value)) line += " -r -F";
  else if (!option.choices.empty()) line += fmt::format(" -x -a '{}'", joined(option.choices));
  else if (option.names != Names::none) line += fmt::format(" -x -a '(__ohmkin_names {})'", namesCode(option.names));
  else if (!option.value.empty()) line += " -x";
  return line + "\n";
}

std::string fishScript(const Commands& commands) {
  std::string text = R"sh(# fish completion for ohmkin, written by `ohmkin --completion fish`
function __ohmkin_names
    set -l words (commandline -opc)
    set -l catalog
    if set -l at (contains -i -- --catalog $words)
        set catalog --catalog $words[(math $at + 1)]
    end
    ohmkin --names $argv[1] (string replace -r '^--[^=]*=' '' -- (commandline -ct)) $catalog 2>/dev/null
end
complete -c ohmkin -f
complete -c ohmkin -n __fish_use_subcommand -l help -d 'the commands'
complete -c ohmkin -n __fish_use_subcommand -l version -d 'version of the program and its libraries'
)sh";
  for (const auto& command : commands) {
    const CommandSpec& spec = command->spec();
    text +=
        fmt::format("complete -c ohmkin -n __fish_use_subcommand -a {} -d '{}'\n", spec.name, fishText(spec.summary));
    for (const OptionSpec& option : spec.options) text += fishOption(spec, option);
    const std::string when = fmt::format("complete -c ohmkin -n '__fish_seen_subcommand_from {}'", spec.name);
    if (!spec.wordChoices.empty()) text += fmt::format("{} -a '{}'\n", when, joined(spec.wordChoices));
    if (wordsAreFiles(spec)) text += when + " -F\n";
  }
  return text;
}

}  // namespace

Expected<std::string> completionScript(const Commands& commands, const std::string& shell) {
  if (shell == "bash") return bashScript(commands);
  if (shell == "zsh") return zshScript(commands);
  if (shell == "fish") return fishScript(commands);
  return refuse("shell-unknown", "--completion", "'" + shell + "'", "bash, zsh or fish");
}

}  // namespace ohmkin::cli
