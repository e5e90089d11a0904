#include <exchange/content_hash.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/job_attachment.h>
#include <workflow/job_work.h>
#include <algorithm>
#include <charconv>
#include <chrono>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kLongestLine = 300;
constexpr std::size_t kLongestText = 20'000;

std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return {};
  return std::string(text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1));
}

Expected<void> checkCause(const std::string& cause) {
  if (cause.empty()) return {};
  const auto book = circuit::usualFaults();
  if (!book) return tl::make_unexpected(book.error());
  if (book->faultWith(cause)) return {};
  std::vector<std::string> codes;
  for (const auto& fault : book->faults) codes.push_back(fault.code);
  return refuse("cause-unknown", "cause", "'" + cause + "'",
                "a fault's code as ohmkin fault names it" + perhaps(nearMisses(cause, codes)));
}

/// Trimmed, within bounds, of words the circuit knows.
Expected<catalog::JobFields> checked(catalog::JobFields said) {
  const std::tuple<const char*, std::string*, std::size_t> fields[] = {
      {"reference", &said.reference, kLongestLine}, {"vehicle", &said.vehicle, kLongestLine},
      {"engine", &said.engine, kLongestLine},       {"seen", &said.seen, kLongestText},
      {"note", &said.note, kLongestText},           {"part", &said.part, kLongestLine},
      {"cause", &said.cause, kLongestLine},         {"symptom", &said.symptom, kLongestLine}};
  for (const auto& [name, field, most] : fields) {
    *field = trimmed(*field);
    if (field->size() > most)
      return refuse("text-too-long", name, fmt::format("{} bytes", field->size()), fmt::format("at most {}", most));
  }
  if (!said.symptom.empty() && !circuit::symptomOf(said.symptom))
    return refuse("symptom-unknown", "symptom", "'" + said.symptom + "'", "low, pegged, high, erratic, lamps or any");
  if (const auto fine = checkCause(said.cause); !fine) return tl::make_unexpected(fine.error());
  return said;
}

/// The job as it stands with `change` made in it.
Expected<catalog::JobRecord> changed(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view what,
                                     std::string_view who, auto change) {
  const auto now = catalog::job(catalogue, id);
  if (!now) return refuse("job-unknown", fmt::format("job {}", id.value), "no such job", "the number of a job");
  catalog::JobFields said = now->said;
  change(said);
  auto fine = checked(std::move(said));
  if (!fine) return tl::make_unexpected(fine.error());
  return catalog::changeJob(catalogue, id, *fine, what, who, now->changed);
}

/// What differs, in the words of the log.
std::string whatChanged(const catalog::JobFields& before, const catalog::JobFields& after) {
  std::string names;
  const auto add = [&](const char* name, const std::string& was, const std::string& is) {
    if (was != is) names += (names.empty() ? "" : ", ") + std::string(name);
  };
  add("reference", before.reference, after.reference);
  add("vehicle", before.vehicle, after.vehicle);
  add("engine", before.engine, after.engine);
  add("what was seen", before.seen, after.seen);
  add("note", before.note, after.note);
  add("part", before.part, after.part);
  add("cause", before.cause, after.cause);
  add("symptom", before.symptom, after.symptom);
  return names.empty() ? "changed" : names + " changed";
}

}  // namespace

Expected<catalog::JobNumber> readJobNumber(std::string_view text, std::string_view where) {
  std::string_view digits = text;
  if (digits.starts_with('#')) digits.remove_prefix(1);
  catalog::JobNumber id;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), id.value);
  if (error != std::errc{} || end != digits.data() + digits.size() || id.value < 1)
    return refuse("job-number", std::string(where), fmt::format("'{}'", text), "the number of a job, 12 or #12");
  return id;
}

std::vector<catalog::JobRecord> findJobs(const catalog::Catalogue& catalogue, const catalog::JobFilter& filter,
                                         int most) {
  return catalog::jobs(catalogue, filter, most);
}

Expected<JobView> jobView(const catalog::Catalogue& catalogue, catalog::JobNumber id, bool lookAtFiles) {
  const auto job = catalog::job(catalogue, id);
  if (!job) return refuse("job-unknown", fmt::format("job {}", id.value), "no such job", "the number of a job");
  JobView view{*job, {}, catalog::movementsOfJob(catalogue, id), catalog::steps(catalogue, id), {}};
  exchange::ContentHash hash;
  for (catalog::JobDocument& document : catalog::documents(catalogue, id)) {
    if (document.removed) continue;
    KeptDocument kept{std::move(document), true, {}, {}};
    hash.add(kept.kept.document);
    const std::string now = hash.hex();
    kept.asWritten = kept.kept.hash.empty() || kept.kept.hash == now;
    if (lookAtFiles && kept.kept.kind == catalog::DocumentKind::attachment) {
      const AttachmentLook look = lookAtAttachment(kept.kept.document);
      kept.attachment = look.state;
      kept.attachmentWords = look.words;
    }
    view.documents.push_back(std::move(kept));
  }
  if (!job->said.cause.empty()) {
    if (const auto book = circuit::usualFaults())
      if (const auto at = book->faultWith(job->said.cause)) view.causeWords = book->faults[*at].name;
  }
  return view;
}

Expected<catalog::JobRecord> openJob(catalog::Catalogue& catalogue, const catalog::JobFields& said,
                                     std::string_view who) {
  const auto fine = checked(said);
  if (!fine) return tl::make_unexpected(fine.error());
  return catalog::openJob(catalogue, *fine, who);
}

Expected<catalog::JobRecord> changeJob(catalog::Catalogue& catalogue, catalog::JobNumber id,
                                       const catalog::JobFields& said, std::string_view who, std::string_view seen) {
  const auto now = catalog::job(catalogue, id);
  if (!now) return refuse("job-unknown", fmt::format("job {}", id.value), "no such job", "the number of a job");
  const auto fine = checked(said);
  if (!fine) return tl::make_unexpected(fine.error());
  return catalog::changeJob(catalogue, id, *fine, whatChanged(now->said, *fine), who,
                            seen.empty() ? std::string_view(now->changed) : seen);
}

Expected<catalog::JobRecord> addNote(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view note,
                                     std::string_view who) {
  const std::string line = trimmed(note);
  if (line.empty()) return refuse("note-empty", "note", "nothing", "a note");
  return changed(catalogue, id, "note added", who,
                 [&](catalog::JobFields& said) { said.note += (said.note.empty() ? "" : "\n") + line; });
}

Expected<catalog::JobRecord> closeJob(catalog::Catalogue& catalogue, catalog::JobNumber id, const JobClosing& closing,
                                      std::string_view who) {
  return changed(catalogue, id, "closed", who, [&](catalog::JobFields& said) {
    said.state = catalog::JobState::done;
    if (!closing.part.empty()) said.part = closing.part;
    if (!closing.cause.empty()) said.cause = closing.cause;
    if (!closing.symptom.empty()) said.symptom = closing.symptom;
  });
}

Expected<catalog::JobRecord> reopenJob(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who) {
  return changed(catalogue, id, "opened again", who,
                 [](catalog::JobFields& said) { said.state = catalog::JobState::open; });
}

Expected<catalog::JobRecord> deleteJob(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who) {
  const std::string now =
      fmt::format("{}T00:00:00Z", isoDate(std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now())));
  return changed(catalogue, id, "put away", who, [&](catalog::JobFields& said) { said.deleted = now; });
}

Expected<catalog::JobRecord> restoreJob(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who) {
  return changed(catalogue, id, "brought back", who, [](catalog::JobFields& said) { said.deleted.clear(); });
}

std::vector<circuit::JobCount> shopJobs(const catalog::Catalogue& catalogue) {
  std::vector<circuit::JobCount> counts;
  const auto book = circuit::usualFaults();
  if (!book) return counts;
  for (const catalog::CauseCount& found : catalog::causesFound(catalogue)) {
    if (!book->faultWith(found.cause)) continue;
    const auto symptom = circuit::symptomOf(found.symptom.empty() ? "any" : found.symptom);
    counts.push_back({found.cause, symptom.value_or(circuit::Symptom::any), static_cast<double>(found.jobs)});
  }
  return counts;
}

}  // namespace ohmkin::workflow
