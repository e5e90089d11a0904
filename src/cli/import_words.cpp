#include <cli/bench_words.h>
#include <cli/fit_words.h>
#include <cli/import_words.h>
#include <cli/table_text.h>
#include <exchange/reading_plan.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kPointsShown = 60;
constexpr std::size_t kRowsShown = 3;

std::string roleName(const exchange::ColumnPlan& column) {
  switch (column.role) {
    case exchange::Role::temperature:
      return "temperature";
    case exchange::Role::resistance:
      return "ohms";
    case exchange::Role::time:
      return "time";
    case exchange::Role::curve:
      return "curve";
    case exchange::Role::direction:
      return "direction";
    case exchange::Role::ignored:
      break;
  }
  return "not read";
}

std::string runName(const workflow::RunPreview& run) {
  std::string name = run.title.empty() ? "The readings" : fmt::format("'{}'", run.title);
  if (!run.said.part.empty() && run.said.part != run.title) name += fmt::format(" of {}", run.said.part);
  if (!run.said.lot.empty()) name += fmt::format(", lot {}", run.said.lot);
  return name;
}

std::string indented(const std::string& lines) {
  std::string text = "  ";
  for (std::size_t i = 0; i < lines.size(); ++i) {
    text += lines[i];
    if (lines[i] == '\n' && i + 1 < lines.size()) text += "  ";
  }
  return text;
}

std::string runText(const workflow::RunPreview& run, const workflow::BenchFamilies& families, const DisplayUnits& units,
                    bool points) {
  std::string text =
      fmt::format("\n{}: {} reading{}, {} to {}{}\n", runName(run), run.rows, run.rows == 1 ? "" : "s",
                  print(run.span.low, units, 1), print(run.span.high, units, 1), run.said.leaveOut ? ", left out" : "");
  if (!run.reducedBy.empty()) text += wrapped(fmt::format("{} points: {}.", run.points.size(), run.reducedBy), 2, 2);
  if (run.fit) text += indented(fitText(*run.fit, units));
  else if (run.noFit) text += wrapped(fmt::format("No curve: {}.", run.noFit->sentence()), 2, 2);
  if (run.whose) text += wrapped("Whose curve: " + whoseText(*run.whose, families), 4, 2);
  text += findingLines(run.findings, 2);
  if (points && run.fit && run.points.size() <= kPointsShown) text += "\n" + readingsText(*run.fit, run.points, units);
  return text;
}

std::string columnsText(const workflow::ImportPreview& preview) {
  std::string text;
  for (std::size_t i = 0; i < preview.plan.columns.size(); ++i) {
    const auto& reasons = preview.proposal.columns;
    const bool same =
        i < preview.proposal.plan.columns.size() && preview.proposal.plan.columns[i] == preview.plan.columns[i];
    const std::string heading = i < reasons.size() ? reasons[i].heading : "";
    text += wrapped(fmt::format("{} {}: {}; {}", i + 1, heading.empty() ? "(no heading)" : fmt::format("'{}'", heading),
                                roleName(preview.plan.columns[i]),
                                same && i < reasons.size() ? reasons[i].reason : "as you said or put right before"),
                    6, 4);
  }
  return text;
}

Json runJson(const workflow::RunPreview& run, const workflow::BenchFamilies& families) {
  Json out = {{"title", run.title},
              {"part", run.said.part},
              {"lot", run.said.lot},
              {"left_out", run.said.leaveOut},
              {"rows", run.rows},
              {"overloads", run.overloads},
              {"span_c", {inCelsius(run.span.low), inCelsius(run.span.high)}},
              {"log", run.log},
              {"points", run.points.size()},
              {"reduced_by", run.reducedBy.empty() ? Json() : Json(run.reducedBy)},
              {"claimed_family", run.claimed ? Json(families.ids[*run.claimed].text) : Json()}};
  Json fit;
  if (run.fit) putFit(fit, *run.fit, run.points);
  out["fit"] = std::move(fit);
  out["no_fit"] = run.noFit ? json(*run.noFit) : Json();
  out["whose"] = run.whose ? json(*run.whose, families) : Json();
  out["findings"] = json(run.findings);
  return out;
}

Json rejectedJson(const std::vector<exchange::RejectedCell>& rejected) {
  Json all = Json::array();
  for (const auto& cell : rejected)
    all.push_back({{"line", cell.line},
                   {"column", cell.column},
                   {"text", cell.text},
                   {"code", cell.code},
                   {"expected", cell.expected}});
  return all;
}

void putTally(Json& out, const exchange::ReadingTally& tally, const std::vector<exchange::RejectedCell>& rejected) {
  out["rows"] = tally.rows;
  out["lines"] = tally.lines;
  out["overloads"] = tally.overloads;
  out["rejected_cells"] = tally.rejected;
  out["rejected"] = rejectedJson(rejected);
}

}  // namespace

std::string rejectedText(const std::vector<exchange::RejectedCell>& rejected, const exchange::ReadingTally& tally,
                         const std::string& file) {
  std::string text;
  for (const auto& cell : rejected) text += cell.refusal(file).sentence() + "\n";
  if (tally.rejected > rejected.size())
    text += fmt::format("{}: {} more rejected cells\n", file, tally.rejected - rejected.size());
  return text;
}

std::string previewText(const workflow::ImportPreview& preview, const workflow::BenchFamilies& families,
                        const DisplayUnits& units) {
  std::string text =
      fmt::format("{}: {} readings in {} line{}, {} run{}\n", preview.file, preview.tally.rows, preview.tally.lines,
                  preview.tally.lines == 1 ? "" : "s", preview.runs.size(), preview.runs.size() == 1 ? "" : "s");
  text += findingLines(preview.findings, 2);
  text += "  Read as\n" + columnsText(preview);
  text += wrapped("--map \"" + exchange::planText(preview.plan) + "\"", 6, 4);
  for (const auto& question : preview.proposal.questions)
    text += wrapped(
        fmt::format("? {} Answer with --map \"{}\".", question.sentence, fmt::join(question.answers, "\" or \"")), 4,
        2);
  for (std::size_t i = 0; i < std::min(kRowsShown, preview.proposal.firstRows.size()); ++i)
    text += fmt::format("    {}\n", fmt::join(preview.proposal.firstRows[i], " | "));
  for (const auto& run : preview.runs) text += runText(run, families, units, true);
  return text + "\nNothing was written.\n";
}

std::string importedText(const workflow::Imported& imported, const workflow::BenchFamilies& families,
                         const DisplayUnits& units) {
  std::string text = wrapped(imported.sentence(), 0, 0);
  text += findingLines(imported.findings, 2);
  for (const auto& run : imported.runs) text += runText(run.seen, families, units, false);
  if (imported.remembers) text += "\nFiles of this shape are read so from now on.\n";
  return text + wrapped(fmt::format("\nohmkin import --undo {} takes it out again.", imported.record.id.value), 0, 0);
}

Json json(const workflow::ImportPreview& preview, const workflow::BenchFamilies& families) {
  Json out = {{"file", preview.file}, {"imported", false}};
  out["map"] = exchange::planText(preview.plan);
  out["remembered"] = preview.remembered.has_value();
  Json columns = Json::array();
  for (std::size_t i = 0; i < preview.proposal.columns.size(); ++i)
    columns.push_back({{"heading", preview.proposal.columns[i].heading},
                       {"role", i < preview.plan.columns.size() ? roleName(preview.plan.columns[i]) : "not read"},
                       {"reason", preview.proposal.columns[i].reason},
                       {"confidence", preview.proposal.columns[i].confidence}});
  out["columns"] = std::move(columns);
  Json questions = Json::array();
  for (const auto& question : preview.proposal.questions)
    questions.push_back({{"code", question.code}, {"sentence", question.sentence}, {"answers", question.answers}});
  out["questions"] = std::move(questions);
  putTally(out, preview.tally, preview.rejected);
  out["already"] = preview.already ? json(*preview.already) : Json();
  Json runs = Json::array();
  for (const auto& run : preview.runs) runs.push_back(runJson(run, families));
  out["runs"] = std::move(runs);
  out["findings"] = json(preview.findings);
  return out;
}

Json json(const workflow::Imported& imported, const workflow::BenchFamilies& families) {
  Json out = json(imported.record);
  out["imported"] = true;
  out["remembers"] = imported.remembers;
  putTally(out, imported.tally, imported.rejected);
  Json runs = Json::array();
  for (const auto& run : imported.runs) {
    Json one = runJson(run.seen, families);
    one["run"] = run.run.value;
    one["curve"] = run.curve ? Json(run.curve->text) : Json();
    runs.push_back(std::move(one));
  }
  out["runs"] = std::move(runs);
  out["findings"] = json(imported.findings);
  return out;
}

Json json(const catalog::ImportRecord& record) {
  return {{"import", record.id.value},
          {"file", record.file},
          {"sha256", record.hash},
          {"at", record.at},
          {"who", record.who},
          {"meter", record.meter},
          {"bath", record.bath},
          {"map", record.plan},
          {"rows", record.rows},
          {"curves", record.curves},
          {"undone", record.undone.empty() ? Json() : Json(record.undone)},
          {"undone_by", record.undoneBy.empty() ? Json() : Json(record.undoneBy)}};
}

}  // namespace ohmkin::cli
