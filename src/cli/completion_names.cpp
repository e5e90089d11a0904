#include <catalog/engines.h>
#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/senders.h>
#include <cli/common_options.h>
#include <cli/completions.h>
#include <algorithm>
#include <array>
#include <cctype>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kMost = 500;  // of more than that a person types further
constexpr std::array kKinds{Names::gauges, Names::parts, Names::families, Names::castings};

bool begins(std::string_view name, std::string_view beginning) {
  const auto same = [](char a, char b) {
    return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
  };
  return name.size() >= beginning.size() && std::equal(beginning.begin(), beginning.end(), name.begin(), same);
}

std::vector<std::string> familyNames(const catalog::Catalogue& catalogue) {
  std::vector<std::string> names;
  for (const catalog::Family& family : catalog::families(catalogue)) names.push_back(family.name);
  return names;
}

/// A gauge may be named by the family it was built for, and so may a sender.
std::vector<std::string> allNames(const catalog::Catalogue& catalogue, Names kind) {
  if (kind == Names::castings) return catalog::castingNumbers(catalogue);
  std::vector<std::string> names = familyNames(catalogue);
  if (kind == Names::parts) {
    const auto parts = catalog::partNumbers(catalogue);
    names.insert(names.end(), parts.begin(), parts.end());
  }
  if (kind == Names::gauges)
    for (const catalog::GaugeRecord& gauge : catalog::gauges(catalogue)) names.push_back(gauge.id.text);
  return names;
}

}  // namespace

std::string_view namesCode(Names names) {
  switch (names) {
    case Names::gauges:
      return "gauges";
    case Names::parts:
      return "parts";
    case Names::families:
      return "families";
    case Names::castings:
      return "castings";
    case Names::none:
      break;
  }
  return {};
}

Expected<std::vector<std::string>> namesBeginning(const std::vector<std::string>& arguments) {
  const std::string code = arguments.empty() ? "" : arguments[0];
  const auto* kind = std::find_if(kKinds.begin(), kKinds.end(), [&](Names k) { return namesCode(k) == code; });
  if (kind == kKinds.end())
    return refuse("names-unknown", "--names", "'" + code + "'", "gauges, parts, families or castings");
  const std::string beginning = arguments.size() > 1 ? arguments[1] : "";
  Arguments given;
  if (arguments.size() > 3 && arguments[2] == "--catalog") given.values["--catalog"] = {arguments[3]};
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  std::vector<std::string> names;
  for (std::string& name : allNames(*catalogue, *kind))
    if (begins(name, beginning)) names.push_back(std::move(name));
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  if (names.size() > kMost) names.resize(kMost);
  return names;
}

}  // namespace ohmkin::cli
