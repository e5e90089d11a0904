#include <cli/bench_words.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <workflow/person.h>
#include <algorithm>

namespace ohmkin::cli {
namespace {
constexpr std::size_t kFamiliesShown = 4;
constexpr double kWorthShowing = 0.001;
}  // namespace

std::string findingLines(const std::vector<Finding>& findings, std::size_t indent) {
  std::string text;
  for (const Finding& finding : findings)
    text += wrapped(fmt::format("{} {}", finding.severity >= Severity::warning ? "!" : "-", finding.sentence),
                    indent + 2, indent);
  return text;
}

std::string whoseText(const bench::Identification& whose, const workflow::BenchFamilies& families) {
  std::string text;
  for (std::size_t i = 0; i < std::min(kFamiliesShown, whose.suspects.size()); ++i) {
    const bench::Suspect& suspect = whose.suspects[i];
    if (suspect.probability < kWorthShowing) break;
    text += fmt::format("{}{} {:.1f} %", text.empty() ? "" : ", ", families.curves[suspect.family].name,
                        100 * suspect.probability);
  }
  return fmt::format("{}{}none of these {:.1f} %", text, text.empty() ? "" : ", ", 100 * whose.none);
}

Json json(const bench::Identification& whose, const workflow::BenchFamilies& families) {
  Json suspects = Json::array();
  for (const bench::Suspect& suspect : whose.suspects)
    suspects.push_back({{"family", families.ids[suspect.family].text},
                        {"name", families.curves[suspect.family].name},
                        {"probability", suspect.probability},
                        {"part_scale_ln", suspect.partScale},
                        {"readings_answered", suspect.answered}});
  return {{"suspects", std::move(suspects)}, {"none", whose.none}, {"findings", json(whose.findings)}};
}

std::string whoIsAsking(const Arguments& arguments) {
  return arguments.has("--who") ? arguments.one("--who") : workflow::personLoggedIn();
}

Refusal asBenchOption(Refusal refusal) {
  if (refusal.code == "barometer-reduced-question") refusal.expected += "; answer with --reduced yes or --reduced no";
  if (refusal.code == "import-question") refusal.expected += " (--map \"…\", or --as-proposed)";
  if (refusal.where == "correction") refusal.where = "--map";
  if (refusal.where == "altitude" || refusal.where == "barometer" || refusal.where == "part" ||
      refusal.where == "lot" || refusal.where == "family" || refusal.where == "meter" || refusal.where == "bath")
    refusal.where.insert(0, "--");
  return refusal;
}

}  // namespace ohmkin::cli
