#include <catalog/engines.h>
#include <catalog/layouts.h>
#include <date/presenter.h>
#include <desk/catalogue_thread.h>
#include <algorithm>

namespace ohmkin::castings {
namespace {

using desk::shown;
using workflow::CodeMeaning;
using workflow::CodeRead;
using workflow::DateAnswer;

constexpr int kAlarms = 2;  // more are a list, which stands below
constexpr std::size_t kMeaningsShown = 4;
constexpr double kWorthNaming = 0.03;
constexpr int kDecadesNamed = 3;  // in the headline
constexpr double kWorthShowing = 0.005;
constexpr double kWorthDrawing = 0.01;
constexpr double kTails = 0.02;  // the axis holds what is thought possible, not the last doubt
constexpr double kDaysInYear = 365.2425;

QString tr(const char* text) { return MeaningList::tr(text); }

QString capital(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

double yearsOf(Date day) {
  const std::chrono::year_month_day parts{day};
  const Date first = date(static_cast<int>(parts.year()), 1, 1);
  return static_cast<int>(parts.year()) +
         static_cast<double>((day - first).count()) / (parts.year().is_leap() ? 366.0 : 365.0);
}

QString lastDay(Date until) { return shown(plainDate(until - std::chrono::days{1})); }

TimeKind kindOf(const std::string& kind) {
  if (kind == "vehicle") return TimeKind::vehicle;
  if (kind == "cluster") return TimeKind::clusterChange;
  return TimeKind::production;
}

TimeRow rowOf(const CodeRead& code, bool stamp) {
  TimeRow row{tr("%1 read '%2'").arg(capital(shown(code.name)), shown(code.code)),
              stamp ? TimeKind::stamp : TimeKind::reading,
              {}};
  for (const CodeMeaning& meaning : code.meanings)
    if (meaning.probability >= kWorthDrawing)
      row.marks.push_back({yearsOf(meaning.reading.from), yearsOf(meaning.reading.until), meaning.probability});
  if (row.marks.empty())  // nothing fits together: the plain readings show how far apart they are
    for (const CodeMeaning& meaning : code.meanings)
      if (meaning.reading.plain())
        row.marks.push_back({yearsOf(meaning.reading.from), yearsOf(meaning.reading.until), 0.2});
  return row;
}

bool isStamp(const CodeRead& code) { return code.name == "assembly stamp"; }

/// Spans of one name are one row: a cluster that changes several times.
void add(std::vector<TimeRow>& rows, const workflow::TimeSpan& span) {
  const double from = span.span.from ? yearsOf(*span.span.from) : 1900;
  const double until = span.span.until ? yearsOf(*span.span.until) : 2030;
  const QString name = capital(shown(span.name));
  if (!rows.empty() && rows.back().name == name) rows.back().marks.push_back({from, until, 1});
  else rows.push_back({name, kindOf(span.kind), {{from, until, 1}}});
}

void fitAxis(TimeLinePicture& picture, const dating::DayDistribution& days) {
  double from = 1e9;
  double to = -1e9;
  const auto include = [&](double year) {
    from = std::min(from, year);
    to = std::max(to, year);
  };
  for (const TimeRow& row : picture.rows)
    for (const TimeMark& mark : row.marks) {
      include(mark.from);
      include(mark.until);
    }
  if (!days.empty()) {
    include(yearsOf(days.quantile(kTails)));
    include(yearsOf(days.quantile(1 - kTails)));
  }
  if (from > to) return;
  const double margin = std::max(1.0, (to - from) * 0.05);
  picture.from = from - margin;
  picture.to = to + margin;
}

}  // namespace

QString headlineOf(const DateAnswer& answer) {
  const auto& decades = answer.posterior.decades;
  const auto worth = std::count_if(decades.begin(), decades.end(),
                                   [](const auto& share) { return share.probability >= kWorthNaming; });
  if (worth > kDecadesNamed) return tr("Not settled: %1 decades are possible").arg(worth);
  if (answer.dated()) return capital(shown(answer.summary));
  return answer.posterior.conflict ? tr("No date fits all of this") : tr("No date is known from this yet");
}

QString engineWordsOf(const DateAnswer& answer) {
  QStringList words;
  if (!answer.engineWords.empty()) words << shown(answer.engineWords);
  if (answer.posterior.firstEngine && answer.engineWords.find('%') == std::string::npos)
    words << tr("Chance that it is the vehicle's first: %1.").arg(chanceWords(*answer.posterior.firstEngine));
  return words.join(QLatin1Char(' '));
}

QString alarmOf(const DateAnswer& answer) {
  QStringList sentences;
  for (const Finding& finding : answer.findings)
    if (finding.severity >= Severity::warning && finding.sentence != answer.engineWords)
      sentences << shown(finding.sentence);
  sentences.removeDuplicates();
  return sentences.mid(0, kAlarms).join(QLatin1Char(' '));
}

QString decadesInWords(const DateAnswer& answer) {
  QStringList shares;
  for (const auto& share : answer.posterior.decades) {
    if (share.probability < kWorthShowing) break;
    shares << tr("%1s %2").arg(share.decade).arg(chanceWords(share.probability));
  }
  return shares.join(QStringLiteral(" · "));
}

std::vector<MeaningRow> meaningsOf(const DateAnswer& answer) {
  std::vector<MeaningRow> rows;
  for (const CodeRead& code : answer.codes) {
    rows.push_back({true, QStringLiteral("%1 · %2").arg(capital(shown(code.name)), shown(code.code)),
                    code.casting ? tr("casting %1").arg(shown(code.casting->id.text)) : QString(), -1});
    std::size_t told = 0;
    for (const CodeMeaning& meaning : code.meanings) {
      if (told == kMeaningsShown || (told > 0 && meaning.probability < kWorthShowing)) break;
      ++told;
      QStringList assumed;
      for (const std::string& each : meaning.assumed) assumed << shown(each);
      QString how = assumed.isEmpty() ? tr("as it stands") : assumed.join(QStringLiteral(", "));
      // The layout is said once where there is only one.
      if (told == 1 || meaning.layout != code.meanings.front().layout)
        how += QStringLiteral(" · ") + shown(meaning.layout);
      rows.push_back({false, shown(dating::plainReading(meaning.reading)), how, meaning.probability});
    }
    const std::size_t more = code.meanings.size() - told;
    if (code.meanings.empty()) rows.push_back({false, tr("No date reads so"), {}, -1});
    else if (more > 0) rows.push_back({false, tr("%1 more ways to read it, less likely here").arg(more), {}, -1});
  }
  return rows;
}

std::vector<parts::FindingWords> findingsOf(const DateAnswer& answer) {
  std::vector<parts::FindingWords> all;
  for (const Finding& finding : answer.findings) {
    parts::FindingWords words{{},
                              shown(finding.sentence),
                              shown(finding.evidence),
                              shown(finding.source),
                              static_cast<parts::Weight>(finding.severity)};
    const bool there =
        std::any_of(all.begin(), all.end(), [&](const auto& other) { return other.sentence == words.sentence; });
    if (!there) all.push_back(std::move(words));
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.weight > b.weight; });
  return all;
}

TimeLinePicture timeLineOf(const DateAnswer& answer) {
  TimeLinePicture picture;
  std::vector<const CodeRead*> left;
  left.reserve(answer.codes.size());
  for (const CodeRead& code : answer.codes) left.push_back(&code);
  for (const workflow::TimeSpan& span : answer.timeLine) {
    if (kindOf(span.kind) != TimeKind::production) continue;
    add(picture.rows, span);
    // The code cast beside the number goes under the number's span.
    const auto own = std::find_if(left.begin(), left.end(),
                                  [&](const CodeRead* code) { return span.name.starts_with(code->name + ":"); });
    if (own == left.end()) continue;
    picture.rows.push_back(rowOf(**own, false));
    left.erase(own);
  }
  for (const CodeRead* code : left) picture.rows.push_back(rowOf(*code, isStamp(*code)));
  for (const workflow::TimeSpan& span : answer.timeLine)
    if (kindOf(span.kind) != TimeKind::production) add(picture.rows, span);
  const dating::DayDistribution& days = answer.posterior.assembly;
  fitAxis(picture, days);
  picture.densityName = days.empty() ? tr("When assembled: nothing fits") : tr("Engine assembled, chance");
  if (!days.empty()) picture.density = {yearsOf(days.first), 1 / kDaysInYear, days.probability};
  QStringList summary{headlineOf(answer), decadesInWords(answer)};
  for (const TimeTableRow& row : tableOf(answer))
    summary << QStringLiteral("%1: %2 – %3").arg(row.what, row.from, row.until);
  picture.summary = summary.join(QStringLiteral(". "));
  return picture;
}

std::vector<TimeTableRow> tableOf(const DateAnswer& answer) {
  std::vector<TimeTableRow> rows;
  const dating::DayDistribution& days = answer.posterior.assembly;
  if (!days.empty())
    rows.push_back({tr("Engine assembled, 9 in 10"), shown(plainDate(days.quantile(0.05))),
                    shown(plainDate(days.quantile(0.95))), tr("90 %")});
  for (const auto& share : answer.posterior.decades)
    if (share.probability >= kWorthShowing)
      rows.push_back({tr("Engine assembled in the %1s").arg(share.decade), shown(plainDate(date(share.decade, 1, 1))),
                      shown(plainDate(date(share.decade + 9, 12, 31))), chanceWords(share.probability)});
  for (const CodeRead& code : answer.codes)
    for (const CodeMeaning& meaning : code.meanings)
      if (meaning.probability >= kWorthDrawing)
        rows.push_back({tr("%1 '%2'").arg(capital(shown(code.name)), shown(code.code)),
                        shown(plainDate(meaning.reading.from)), lastDay(meaning.reading.until),
                        chanceWords(meaning.probability)});
  for (const workflow::TimeSpan& span : answer.timeLine)
    rows.push_back({capital(shown(span.name)),
                    span.span.from ? shown(plainDate(*span.span.from)) : tr("not known"),
                    span.span.until ? lastDay(*span.span.until) : tr("not known"),
                    {}});
  return rows;
}

QString answerAsText(const DateAnswer& answer) {
  QStringList lines{headlineOf(answer)};
  for (const QString& line : {engineWordsOf(answer), decadesInWords(answer)})
    if (!line.isEmpty()) lines << line;
  lines << QString();
  for (const MeaningRow& row : meaningsOf(answer)) {
    QStringList cells{row.words};
    if (row.chance >= 0) cells << chanceWords(row.chance);
    if (!row.aside.isEmpty()) cells << row.aside;
    lines << (row.heading ? QString() : QStringLiteral("  ")) + cells.join(QStringLiteral(", "));
  }
  lines << QString();
  for (const parts::FindingWords& finding : findingsOf(answer)) lines << QStringLiteral("- ") + finding.sentence;
  lines << tr("Lags and weights are judgement from memory, no source; the codes are your readings.");
  return lines.join(QLatin1Char('\n'));
}

std::optional<workflow::DateQuestion> exampleOf(const catalog::Catalogue& catalogue) {
  constexpr int kYearsBefore = 13;
  const auto layouts = catalog::dateLayouts(catalogue);
  for (const std::string& number : catalog::castingNumbers(catalogue)) {
    for (const catalog::Casting& casting : catalog::castingsNumbered(catalogue, number)) {
      if (casting.role != catalog::CastingRole::head || !casting.layout) continue;
      const auto layout =
          std::find_if(layouts.begin(), layouts.end(), [&](const auto& each) { return each.id == *casting.layout; });
      if (layout == layouts.end() || !casting.cast.holds(layout->exampleDate)) continue;
      workflow::DateQuestion question;
      question.castings.push_back({"", dating::CastingRole::head, casting.id.text, layout->example, ""});
      question.year =
          ModelYear{static_cast<int>(std::chrono::year_month_day{layout->exampleDate}.year()) - kYearsBefore};
      return question;
    }
  }
  return {};
}

QString exampleInWords(const workflow::DateQuestion& question) {
  const workflow::CastingRead& head = question.castings.front();
  return tr("Try: head %1 with %2, model year %3").arg(shown(head.number), shown(head.code)).arg(question.year->value);
}

}  // namespace ohmkin::castings
