#include <catalog/layouts.h>
#include <dating/evidence.h>
#include <dating/model_year.h>
#include <fmt/format.h>
#include <workflow/engine_date.h>
#include <workflow/layouts.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

constexpr double kEnds = 0.025;         // the years said hold 95 % of what is thought possible
constexpr double kClearlyOneDay = 0.5;  // below that the decade is said, not the day

int yearOf(Date day) { return static_cast<int>(std::chrono::year_month_day{day}.year()); }

dating::FoundOn placeOf(catalog::CastingRole role) {
  switch (role) {
    case catalog::CastingRole::head:
      return dating::FoundOn::head;
    case catalog::CastingRole::intake:
      return dating::FoundOn::intake;
    case catalog::CastingRole::housing:
      return dating::FoundOn::housing;
    case catalog::CastingRole::block:
      return dating::FoundOn::block;
  }
  return dating::FoundOn::head;
}

/// The casting's own layout; where it is not known, every layout found on such a casting.
std::vector<dating::Layout> layoutsFor(const catalog::Catalogue& catalogue,
                                       const std::optional<catalog::Casting>& casting) {
  std::vector<dating::Layout> layouts;
  if (casting && casting->layout) {
    if (const auto record = catalog::dateLayout(catalogue, *casting->layout)) layouts.push_back(layoutOf(*record));
    return layouts;
  }
  const dating::FoundOn place = casting ? placeOf(casting->role) : dating::FoundOn::head;
  for (const auto& record : catalog::dateLayouts(catalogue)) {
    dating::Layout layout = layoutOf(record);
    if (layout.foundOn == place) layouts.push_back(std::move(layout));
  }
  return layouts;
}

struct CodeReadings {
  std::vector<dating::Reading> readings;
  std::vector<Finding> findings;
};

CodeReadings readCode(const std::vector<dating::Layout>& layouts, const std::string& code, const DateSpan& window) {
  CodeReadings out;
  for (const dating::Layout& layout : layouts) {
    dating::DecodeOptions options;
    options.window = window;
    const auto decoded = dating::decode(layout, code, options);
    if (!decoded) continue;
    out.readings.insert(out.readings.end(), decoded->readings.begin(), decoded->readings.end());
    if (out.findings.empty()) out.findings = decoded->findings;
  }
  return out;
}

std::string castingName(const std::optional<catalog::Casting>& casting) {
  return casting ? std::string(catalog::text(casting->role)) : std::string("head");
}

}  // namespace

DateSpan castingWindow(Date engineBuilt) {
  const dating::Beliefs beliefs;
  return {engineBuilt - std::chrono::days{beliefs.castingToAssembly.longest}, engineBuilt + std::chrono::days{1}};
}

DateSpan castingWindow(ModelYear year) {
  const dating::Beliefs beliefs;
  const DateSpan produced = dating::usualProduction(year);
  return {*produced.from - std::chrono::days{beliefs.earlyCasting}, produced.until};
}

Expected<void> checkCastingDate(const catalog::Catalogue& catalogue, const Question& question) {
  if (question.castingDate.empty()) return {};
  std::optional<catalog::Casting> casting;
  if (!question.casting.empty()) {
    const auto found = catalog::castingsNumbered(catalogue, question.casting);
    if (!found.empty()) casting = found.front();
  }
  const auto layouts = layoutsFor(catalogue, casting);
  const CodeReadings read = readCode(layouts, question.castingDate, {});
  if (!read.readings.empty()) return {};
  std::string expected = layouts.size() == 1 ? fmt::format("a date as {} writes it", layouts.front().name)
                                             : "a date in one of the layouts of this catalogue";
  if (!read.findings.empty()) expected += " (" + read.findings.front().sentence + ")";
  return refuse("casting-date-unreadable", "--casting-date", fmt::format("'{}'", question.castingDate.substr(0, 40)),
                std::move(expected));
}

EngineDate engineDate(const catalog::Catalogue& catalogue, const Question& question,
                      const std::optional<catalog::Casting>& casting) {
  EngineDate made;
  if (question.castingDate.empty() && question.engineBuilt) {
    made.likeliest = question.engineBuilt;
    made.probability = 1;
    made.produced = std::pair(yearOf(*question.engineBuilt), yearOf(*question.engineBuilt));
    made.words = "engine built " + plainDate(*question.engineBuilt);
    return made;
  }
  if (question.castingDate.empty()) {
    if (!casting || !casting->cast.from || !casting->cast.until) return made;
    made.produced = std::pair(yearOf(*casting->cast.from), yearOf(*casting->cast.until - std::chrono::days{1}));
    made.words = fmt::format("{} cast {}–{}", castingName(casting), made.produced->first, made.produced->second);
    return made;
  }

  dating::Evidence evidence;
  dating::DatedCasting dated;
  dated.name = castingName(casting);
  if (casting) dated.produced = casting->cast;
  const CodeReadings read = readCode(layoutsFor(catalogue, casting), question.castingDate, {});
  dated.readings = read.readings;
  evidence.castings.push_back(std::move(dated));
  evidence.vehicle.built = question.built;
  evidence.vehicle.year = question.year;
  if (question.engineBuilt) evidence.stamp = dating::AssemblyStamp{{dating::knownDay(*question.engineBuilt)}, false};
  const auto posterior = dating::posterior(evidence);
  if (!posterior || posterior->castings.empty() || posterior->castings.front().days.empty()) return made;
  const dating::DayDistribution& days = posterior->castings.front().days;
  made.likeliest = days.mostProbable();
  made.probability = days.at(*made.likeliest);
  made.produced = std::pair(yearOf(days.quantile(kEnds)), yearOf(days.quantile(1 - kEnds)));
  if (made.probability >= kClearlyOneDay) {
    made.words =
        fmt::format("{} cast {}, {:.0f} %", castingName(casting), plainDate(*made.likeliest), 100 * made.probability);
  } else if (const auto decades = days.decades(); !decades.empty()) {
    made.words = fmt::format("{} cast in the {}s, {:.0f} %", castingName(casting), decades.front().decade,
                             100 * decades.front().probability);
  }
  made.findings = posterior->findings;
  return made;
}

}  // namespace ohmkin::workflow
