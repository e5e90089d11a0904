#include <cli/program.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <CLI/CLI.hpp>

namespace ohmkin::cli {
namespace {

/// "--readng" → what was expected, naming the nearest option.
Refusal unknownOption(const CommandSpec& spec, const std::string& given) {
  const std::string name = given.substr(0, given.find('='));
  std::vector<std::string> known;
  known.reserve(spec.options.size());
  for (const OptionSpec& option : spec.options) known.push_back(option.name);
  const auto near = nearMisses(name, known, 1);
  return {"option-unknown", name, "no such option",
          near.empty() ? fmt::format("an option listed by ohmkin {} --help", spec.name)
                       : fmt::format("perhaps {}", near.front())};
}

bool looksLikeOption(const std::string& text) { return text.size() > 2 && text.starts_with("--"); }

/// What is no option, as many as the command takes.
Expected<std::vector<std::string>> wordsOf(const CommandSpec& spec, std::vector<std::string> remaining) {
  for (const std::string& word : remaining)
    if (looksLikeOption(word)) return tl::make_unexpected(unknownOption(spec, word));
  std::erase(remaining, "--");
  if (remaining.size() > spec.mostWords)
    return refuse("word-unexpected", "", fmt::format("'{}'", remaining[spec.mostWords]),
                  spec.mostWords == 0 ? fmt::format("only options, as ohmkin {} --help lists them", spec.name)
                                      : fmt::format("at most {} after {}", spec.words, spec.name));
  if (remaining.size() < spec.fewestWords)
    return refuse("word-missing", fmt::format("ohmkin {}", spec.name), "nothing",
                  fmt::format("{}: {}", spec.words, spec.wordsHelp));
  return remaining;
}

}  // namespace

Expected<Arguments> parseArguments(const CommandSpec& spec, std::vector<std::string> arguments) {
  CLI::App app;
  app.set_help_flag();
  app.allow_extras();
  app.allow_windows_style_options(false);
  std::map<std::string, std::vector<std::string>> given;
  std::map<std::string, bool> switched;
  for (const OptionSpec& option : spec.options) {
    if (option.value.empty()) app.add_flag(option.name, switched[option.name]);
    else
      app.add_option(option.name, given[option.name])
          ->allow_extra_args(false)
          ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  }
  std::reverse(arguments.begin(), arguments.end());  // CLI11 takes them from the back
  try {
    app.parse(arguments);
  } catch (const CLI::ArgumentMismatch& error) {
    for (const OptionSpec& option : spec.options) {
      if (std::string(error.what()).starts_with(option.name))
        return refuse("option-without-value", option.name, "nothing after it",
                      fmt::format("{}: {}", option.value, option.help));
    }
    return refuse("arguments-unreadable", "", error.what(), "");
  } catch (const CLI::ParseError& error) {
    return refuse("arguments-unreadable", "", error.what(), fmt::format("what ohmkin {} --help shows", spec.name));
  }

  Arguments result;
  for (const OptionSpec& option : spec.options) {
    if (option.value.empty()) {
      if (switched[option.name]) result.values[option.name] = {};
      continue;
    }
    auto& values = given[option.name];
    if (values.empty()) continue;
    if (values.size() > 1 && !option.repeatable)
      return refuse("option-repeated", option.name, "it given twice", "one " + option.value);
    result.values[option.name] = std::move(values);
  }
  auto words = wordsOf(spec, app.remaining());
  if (!words) return tl::make_unexpected(words.error());
  result.words = *std::move(words);
  return result;
}

}  // namespace ohmkin::cli
