#include <catalog/bench_records.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/import_ahead.h>
#include <workflow/import_readings.h>
#include <workflow/import_runs.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

Refusal cancelled(const std::string& file) {
  return {"import-cancelled", file, "a cancelled import", "nothing; nothing was changed"};
}

/// A curve that was named and is in no row: most likely a slip of the pen.
void sayOfMissing(const ImportAsked& asked, const std::vector<std::string>& titles, std::vector<Finding>& findings) {
  for (const RunSaid& said : asked.runs) {
    if (std::find(titles.begin(), titles.end(), said.title) != titles.end()) continue;
    findings.push_back(
        {"curve-not-in-file", Severity::caution,
         fmt::format("The file names no curve '{}'{}.", said.title, perhaps(nearMisses(said.title, titles))), "",
         "the file"});
  }
}

void sayOfRejected(const exchange::ReadingTally& tally, std::vector<Finding>& findings) {
  if (tally.rejected > 0)
    findings.push_back(
        {"cells-rejected", Severity::caution,
         fmt::format("{} cell{} could not be read; {} left out.", tally.rejected, tally.rejected == 1 ? "" : "s",
                     tally.rejected == 1 ? "its row is" : "their rows are"),
         "", "the file"});
  if (tally.overloads > 0)
    findings.push_back({"overload-in-file", Severity::note,
                        fmt::format("{} reading{} overload: more ohms than the meter shows, not a number.",
                                    tally.overloads, tally.overloads == 1 ? " says" : "s say"),
                        "", "the file"});
}

void keepCurve(catalog::BenchWriter& writer, ImportedRun& run) {
  const auto say = [&](const char* code, std::string sentence) {
    run.seen.findings.push_back({code, Severity::caution, std::move(sentence), "", "the import"});
  };
  if (!run.seen.fit)
    return say("curve-not-fitted", fmt::format("Readings kept, without a curve: {}.",
                                               run.seen.noFit ? run.seen.noFit->sentence() : "none was fitted"));
  if (run.seen.said.part.empty())
    return say("part-not-said", "Readings kept, without a curve in matching: nobody said of which part they are.");
  const auto curve = writer.addCurve(run.run, benchCurveOf(*run.seen.fit, run.seen.points));
  if (curve) run.curve = *curve;
  else say(curve.error().code.c_str(), fmt::format("Readings kept, without a curve: {}.", curve.error().sentence()));
}

Expected<catalog::BenchWriter> writerFor(catalog::Catalogue& catalogue, const ReadingsFile& file,
                                         const Beginning& beginning, const ImportAsked& asked, std::string_view who) {
  // What nobody said is not written down, though something was assumed for it.
  const auto wordsIf = [](const std::string& said, const std::string& words) { return said.empty() ? "" : words; };
  return catalog::BenchWriter::begin(
      catalogue,
      {file.name, beginning.hash, static_cast<std::int64_t>(beginning.size), exchange::planText(beginning.how.plan)},
      {std::string(who), wordsIf(asked.meter, beginning.instruments.meter.words),
       wordsIf(asked.bath, beginning.instruments.thermometer.words)});
}

/// A curve of the file; without a number it is left out.
struct WrittenRun {
  RunSaid said;
  std::optional<catalog::RunNumber> number;
};

Expected<std::vector<WrittenRun>> writeRows(
    ReadAhead& ahead, catalog::BenchWriter& writer, const ReadingsFile& file, const OnProgress& progress,
    const std::function<Expected<RunSaid>(const std::string& title)>& saidOfCurve) {
  std::vector<WrittenRun> runs;
  while (const auto batch = ahead.next()) {
    for (const std::string& title : batch->begun) {
      auto said = saidOfCurve(title);
      if (!said) return tl::make_unexpected(said.error());
      WrittenRun run{*std::move(said), std::nullopt};
      if (!run.said.leaveOut)
        run.number = writer.beginRun({run.said.part, run.said.lot, run.said.family, std::nullopt, title, ""});
      runs.push_back(std::move(run));
    }
    for (const ReadAhead::Row& row : batch->rows)
      if (runs[row.run].number) writer.add(*runs[row.run].number, row.reading);
    if (batch->progress && progress && !progress(*batch->progress)) return tl::make_unexpected(cancelled(file.name));
  }
  return runs;
}

}  // namespace

ReadingsFile readingsFile(const std::filesystem::path& path) { return {path.filename().string(), path, {}}; }

Expected<ImportPreview> previewImport(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                      const ReadingsFile& file, const ImportAsked& asked, const OnProgress& progress) {
  auto beginning = beginningOf(catalogue, file, asked);
  if (!beginning) return tl::make_unexpected(beginning.error());
  const bool log = !beginning->how.plan.with(exchange::Role::time).empty();
  ImportCollector collector(log, beginning->size, progress, {});
  const auto tally = rowsOf(file, beginning->how.plan, collector);
  if (!tally) return tl::make_unexpected(tally.error());
  if (tally->stopped) return tl::make_unexpected(cancelled(file.name));

  ImportPreview preview{file.name,
                        std::move(beginning->how.proposal),
                        std::move(beginning->how.plan),
                        std::move(beginning->how.remembered),
                        *tally,
                        {},
                        collector.takeRejected(),
                        catalog::standingImport(catalogue, beginning->hash),
                        std::move(beginning->how.findings)};
  for (std::size_t i = 0; i < collector.titles().size(); ++i) {
    if (progress && !progress({tally->bytes, beginning->size, tally->rows}))
      return tl::make_unexpected(cancelled(file.name));
    auto said = saidOf(catalogue, families, asked, collector.titles()[i]);
    if (!said) return tl::make_unexpected(said.error());
    preview.runs.push_back(
        previewOf(catalogue, families, asked, beginning->instruments, *std::move(said), collector.rows(i)));
  }
  if (preview.already)
    preview.findings.push_back({"import-again", Severity::caution,
                                fmt::format("This file was imported on {} by {}: importing it again changes nothing.",
                                            preview.already->at.substr(0, 10), preview.already->who),
                                fmt::format("import {}", preview.already->id.value), "content hash"});
  sayOfRejected(*tally, preview.findings);
  sayOfMissing(asked, collector.titles(), preview.findings);
  return preview;
}

Expected<Imported> importFile(catalog::Catalogue& catalogue, const BenchFamilies& families, const ReadingsFile& file,
                              const ImportAsked& asked, std::string_view who, const OnProgress& progress) {
  auto beginning = beginningOf(catalogue, file, asked);
  if (!beginning) return tl::make_unexpected(beginning.error());
  if (auto open = openQuestion(file, beginning->how, asked)) return tl::make_unexpected(*std::move(open));
  auto writer = writerFor(catalogue, file, *beginning, asked, who);
  if (!writer) return tl::make_unexpected(writer.error());

  ReadAhead ahead(file, beginning->how.plan, beginning->size);
  auto runs = writeRows(ahead, *writer, file, progress,
                        [&](const std::string& title) { return saidOf(catalogue, families, asked, title); });
  if (!runs) return tl::make_unexpected(runs.error());
  const auto& tally = ahead.tally();
  ImportCollector& collector = ahead.collector();
  if (!tally) return tl::make_unexpected(tally.error());
  if (tally->bytes != beginning->size)
    return refuse("file-changed", file.name, "a file that was written to while it was read",
                  "one that stands still; nothing was changed");
  if (writer->rows() == 0)
    return refuse("file-without-readings", file.name,
                  fmt::format("no readings in {} lines, {} rejected cells", tally->lines, tally->rejected),
                  "rows of temperature and ohms; nothing was changed");

  Imported imported;
  imported.tally = *tally;
  for (std::size_t i = 0; i < runs->size(); ++i) {
    auto& [said, number] = (*runs)[i];
    if (!number) continue;
    if (progress && !progress({tally->bytes, beginning->size, tally->rows}))
      return tl::make_unexpected(cancelled(file.name));
    imported.runs.push_back(
        {previewOf(catalogue, families, asked, beginning->instruments, std::move(said), collector.rows(i)), *number,
         std::nullopt});
    keepCurve(*writer, imported.runs.back());
  }
  imported.remembers = !asked.correction.empty() && !beginning->how.proposal.signature.empty();
  if (imported.remembers) writer->remember(beginning->how.proposal.signature, file.name);
  imported.record = writer->keep();
  imported.rejected = collector.takeRejected();
  imported.findings = std::move(beginning->how.findings);
  sayOfRejected(*tally, imported.findings);
  sayOfMissing(asked, collector.titles(), imported.findings);
  return imported;
}

std::string Imported::sentence() const {
  std::string text =
      fmt::format("{} reading{} of {} run{} from '{}' are in, as import {}", record.rows, record.rows == 1 ? "" : "s",
                  runs.size(), runs.size() == 1 ? "" : "s", record.file, record.id.value);
  return text + (record.curves == 0 ? "; no curve was made of them."
                 : record.curves == 1
                     ? "; one curve of them is part of matching from now on."
                     : fmt::format("; {} curves of them are part of matching from now on.", record.curves));
}

std::string provenance(const catalog::Catalogue& catalogue, const catalog::CurveKey& curve) {
  const auto run = catalog::runOfCurve(catalogue, curve);
  if (!run) return {};
  std::string text = fmt::format("measured {} by {}", run->at.substr(0, 10), run->who);
  if (!run->meter.empty()) text += fmt::format(" with {}", run->meter);
  if (!run->bath.empty()) text += fmt::format(", {}", run->bath);
  if (run->ofImport) {
    if (const auto import = catalog::importNumbered(catalogue, *run->ofImport))
      text += fmt::format("; file '{}', import {}", import->file, import->id.value);
  }
  return text;
}

}  // namespace ohmkin::workflow
