#include <fmt/format.h>
#include <quantity/capitalised.h>
#include <sheet/engine_date.h>
#include <workflow/sheets.h>

#include <algorithm>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kMeaningsPrinted = 4;  // of one code: further ones are unlikely
constexpr double kWorthPrinting = 0.005;

std::string chance(double probability) {
  if (probability > 0.99 && probability < 1) return "over 99 %";
  if (probability > 0 && probability < 0.01) return "under 1 %";
  return fmt::format("{:.0f} %", probability * 100);
}

int yearOf(Date day) { return static_cast<int>(std::chrono::year_month_day{day}.year()); }

double yearsOf(Date day) {
  const std::chrono::year_month_day parts{day};
  const Date first = date(static_cast<int>(parts.year()), 1, 1);
  return static_cast<int>(parts.year()) +
         static_cast<double>((day - first).count()) / (parts.year().is_leap() ? 366.0 : 365.0);
}

std::string spanWords(Date from, Date until) {
  const Date last = until - std::chrono::days{1};
  return last <= from ? plainDate(from) : plainDate(from) + " to " + plainDate(last);
}

void addMeanings(const CodeRead& code, std::vector<sheet::DateMeaning>& all) {
  const std::string name = capitalised(code.name) + ", " + code.code;
  if (code.meanings.empty()) all.push_back({name, "No date reads so", "", ""});
  for (std::size_t i = 0; i < std::min(code.meanings.size(), kMeaningsPrinted); ++i) {
    const CodeMeaning& meaning = code.meanings[i];
    if (i > 0 && meaning.probability < kWorthPrinting) break;
    std::string how;
    for (const std::string& each : meaning.assumed) how += (how.empty() ? "" : ", ") + each;
    all.push_back({i == 0 ? name : "", dating::plainReading(meaning.reading), how.empty() ? "as it stands" : how,
                   chance(meaning.probability)});
  }
}

std::vector<sheet::DateChance> chancesOf(const dating::DayDistribution& days) {
  std::vector<sheet::DateChance> chances;
  if (days.empty()) return chances;
  const int last = yearOf(days.quantile(1));
  for (int year = yearOf(days.first); year <= last; ++year) {
    const double probability = days.within({date(year, 1, 1), date(year + 1, 1, 1)});
    if (probability >= kWorthPrinting)
      chances.push_back({static_cast<double>(year), static_cast<double>(year + 1), probability});
  }
  return chances;
}

std::vector<sheet::DateBar> barsOf(const DateAnswer& answer) {
  std::vector<sheet::DateBar> bars;
  for (const CodeRead& code : answer.codes) {
    if (code.meanings.empty()) continue;
    const dating::Reading& reading = code.meanings.front().reading;
    bars.push_back({capitalised(code.name) + " read as", yearsOf(reading.from), yearsOf(reading.until),
                    spanWords(reading.from, reading.until)});
  }
  for (const TimeSpan& span : answer.timeLine) {
    // An end that is not known has no place on paper.
    if (span.kind == "reading" || !span.span.from || !span.span.until) continue;
    bars.push_back({capitalised(span.name), yearsOf(*span.span.from), yearsOf(*span.span.until),
                    spanWords(*span.span.from, *span.span.until)});
  }
  return bars;
}

}  // namespace

sheet::Pages dateSheet(const DateAnswer& answer, const SheetOptions& options) {
  sheet::EngineDate made;
  made.date = plainDate(options.day);
  made.summary = answer.dated() ? capitalised(answer.summary) : "The engine cannot be dated from this";
  made.engine = answer.engineWords;
  for (const Finding& finding : answer.findings) {
    if (finding.sentence == answer.engineWords) continue;
    auto& into = finding.severity >= Severity::warning ? made.alarms : made.reasons;
    if (std::find(into.begin(), into.end(), finding.sentence) == into.end()) into.push_back(finding.sentence);
  }
  for (const CodeRead& code : answer.codes) {
    addMeanings(code, made.meanings);
    for (const Finding& finding : code.findings) made.reasons.push_back(finding.sentence);
  }
  made.chances = chancesOf(answer.posterior.assembly);
  made.bars = barsOf(answer);
  made.judgement =
      "Chances rest on the usual lags from casting to assembly to vehicle, which are a judgement. A date is evidence "
      "of "
      "what was cast and stamped, not proof of what is fitted.";
  return sheet::drawEngineDate(made, options.paper);
}

}  // namespace ohmkin::workflow
