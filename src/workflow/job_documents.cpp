#include <catalog/bench_records.h>
#include <exchange/content_hash.h>
#include <fmt/format.h>
#include <workflow/document_values.h>
#include <workflow/job_attachment.h>
#include <workflow/job_work.h>
#include <workflow/match_document.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using catalog::DocumentKind;
using catalog::JobDocument;
using documents::Json;

/// What a document of the program's own is kept as, by its schema.
constexpr std::pair<std::string_view, DocumentKind> kKinds[] = {
    {"ohmkin.match", DocumentKind::match}, {"ohmkin.pair", DocumentKind::pair},
    {"ohmkin.trim", DocumentKind::trim},   {"ohmkin.dial", DocumentKind::pair},
    {"ohmkin.plan", DocumentKind::plan},   {"ohmkin.plan-answer", DocumentKind::plan},
    {"ohmkin.date", DocumentKind::date},   {"ohmkin.fault-session", DocumentKind::fault},
    {"ohmkin.fault", DocumentKind::fault}};

constexpr std::size_t kLongestTitle = 200;

Expected<JobDocument> keep(catalog::Catalogue& catalogue, catalog::JobNumber id, JobDocument document,
                           std::string_view who) {
  exchange::ContentHash hash;
  hash.add(document.document);
  document.hash = hash.hex();
  document.title = document.title.substr(0, kLongestTitle);
  return catalog::keepDocument(catalogue, id, document, who);
}

/// The part that a match recommends for the likeliest branch.
const Candidate* recommendedIn(const Answer& answer) {
  if (answer.branches.empty()) return nullptr;
  for (const Candidate& candidate : answer.branches.front().ranked)
    if (candidate.recommended()) return &candidate;
  return nullptr;
}

}  // namespace

Expected<JobDocument> keepMatch(catalog::Catalogue& catalogue, catalog::JobNumber id, const Answer& answer,
                                std::string_view who) {
  JobDocument made;
  made.kind = DocumentKind::match;
  const Candidate* best = recommendedIn(answer);
  made.title = best != nullptr ? fmt::format("{}: {}", best->part, best->sentence) : "No sender recommended.";
  if (best != nullptr) made.part = best->part;
  made.question = questionDocument(answer.question);
  made.document = matchDocument(answer);
  return keep(catalogue, id, std::move(made), who);
}

Expected<JobDocument> keepPlan(catalog::Catalogue& catalogue, catalog::JobNumber id, const Plan& plan,
                               std::string_view who) {
  Json out = documents::document("ohmkin.plan-kept", 1);
  out["dashes"] = plan.dashNames;
  out["engines"] = plan.engineNames;
  out["parts_to_buy"] = plan.partsToBuy;
  out["cells"] = Json::array();
  for (const PlanCell& cell : plan.cells)
    out["cells"].push_back(
        {{"dash", cell.dash}, {"engine", cell.engine}, {"part", cell.part}, {"sentence", cell.sentence}});
  JobDocument made;
  made.kind = DocumentKind::plan;
  made.title =
      fmt::format("{} dash{} against {} engine{}", plan.dashNames.size(), plan.dashNames.size() == 1 ? "" : "es",
                  plan.engineNames.size(), plan.engineNames.size() == 1 ? "" : "s");
  made.question = planDocument(plan.question);
  made.document = documents::text(out);
  return keep(catalogue, id, std::move(made), who);
}

Expected<JobDocument> keepJson(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view json,
                               std::string_view title, std::string_view who) {
  const std::string where = fmt::format("job {}", id.value);
  if (json.size() > kLargestJobDocument)
    return refuse("document-too-large", where, fmt::format("{} bytes", json.size()),
                  fmt::format("at most {}", kLargestJobDocument));
  if (documents::depthOf(json) > kDeepestJobDocument)
    return refuse("document-too-deep", where, fmt::format("more than {} levels", kDeepestJobDocument),
                  "a document as --json prints it");
  const Json read = Json::parse(json, nullptr, false);
  const auto schema = read.is_object() && read.contains("schema") && read["schema"].is_string()
                          ? read["schema"].get<std::string>()
                          : std::string();
  if (!schema.starts_with("ohmkin."))
    return refuse("document-unreadable", where, "no document of this program",
                  "\"schema\": \"ohmkin.…\" as --json has it");
  JobDocument made;
  made.kind = DocumentKind::other;
  for (const auto& [name, kind] : kKinds)
    if (schema == name) made.kind = kind;
  made.title = title.empty() ? schema.substr(7) : std::string(title);
  made.document = json;
  return keep(catalogue, id, std::move(made), who);
}

Expected<JobDocument> keepBenchRun(catalog::Catalogue& catalogue, catalog::JobNumber id, catalog::RunNumber run,
                                   std::string_view who) {
  const auto found = catalog::run(catalogue, run);
  if (!found) return refuse("run-unknown", fmt::format("run {}", run.value), "no such run", "a run of the bench");
  Json out = documents::document("ohmkin.job-bench-run", 1);
  out["run"] = run.value;
  out["part"] = found->said.part;
  out["lot"] = found->said.lot;
  out["rows"] = found->rows;
  out["at"] = found->at;
  JobDocument made;
  made.kind = DocumentKind::benchRun;
  made.title = fmt::format("run {}{}{}, {} readings", run.value, found->said.part.empty() ? "" : " of ",
                           found->said.part, found->rows);
  made.part = found->said.part;
  made.document = documents::text(out);
  return keep(catalogue, id, std::move(made), who);
}

Expected<JobDocument> attachFile(catalog::Catalogue& catalogue, catalog::JobNumber id,
                                 const std::filesystem::path& file, std::string_view title, std::string_view who) {
  std::error_code failed;
  const auto whole = std::filesystem::absolute(file, failed);
  const auto bytes = failed || !std::filesystem::is_regular_file(whole, failed)
                         ? std::uintmax_t{0}
                         : std::filesystem::file_size(whole, failed);
  if (failed || !std::filesystem::is_regular_file(whole, failed))
    return refuse("attachment-unreadable", file.string(), "no file that can be read", "a photo or another file");
  const auto hash = exchange::contentHash(whole);
  if (!hash) return tl::make_unexpected(hash.error());
  Json out = documents::document("ohmkin.job-attachment", 1);
  out["path"] = whole.string();
  out["sha256"] = *hash;
  out["bytes"] = bytes;
  JobDocument made;
  made.kind = DocumentKind::attachment;
  made.title = title.empty() ? whole.filename().string() : std::string(title);
  made.document = documents::text(out);
  return keep(catalogue, id, std::move(made), who);
}

AttachmentLook lookAtAttachment(std::string_view document) {
  const Json read = Json::parse(document, nullptr, false);
  if (!read.is_object() || !read.value("path", Json()).is_string() || !read.value("sha256", Json()).is_string() ||
      !read.value("bytes", Json()).is_number_unsigned())
    return {AttachmentState::unreadable, "What this job refers to cannot be read."};
  const std::filesystem::path file(read["path"].get<std::string>());
  const std::string name = file.filename().string();
  std::error_code failed;
  if (!std::filesystem::is_regular_file(file, failed))
    return {AttachmentState::missing, fmt::format("{} is no longer where it was: {}.", name, file.string())};
  const auto size = std::filesystem::file_size(file, failed);
  if (failed) return {AttachmentState::unreadable, fmt::format("{} cannot be read.", name)};
  const auto changed = [&] {
    return AttachmentLook{AttachmentState::changed,
                          fmt::format("{} is no longer the file it was: its bytes differ.", name)};
  };
  if (size != read["bytes"].get<std::uintmax_t>()) return changed();
  const auto hash = exchange::contentHash(file);
  if (!hash) return {AttachmentState::unreadable, fmt::format("{} cannot be read.", name)};
  if (*hash != read["sha256"].get<std::string>()) return changed();
  return {AttachmentState::asKept, {}};
}

}  // namespace ohmkin::workflow
