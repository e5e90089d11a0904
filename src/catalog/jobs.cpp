#include <catalog/jobs_rows.h>
#include <array>

namespace ohmkin::catalog {
namespace {

/// The words of a search, empty ones behind them: every text holds those.
std::array<std::string, kSearchWords> wordsOf(std::string_view text) {
  std::array<std::string, kSearchWords> words;
  const std::string folded = foldedForSearch(text);
  std::size_t count = 0;
  std::size_t from = 0;
  while (count < words.size() && (from = folded.find_first_not_of(" \t\r\n", from)) != std::string::npos) {
    const auto until = std::min(folded.find_first_of(" \t\r\n", from), folded.size());
    words[count++] = folded.substr(from, until - from);
    from = until;
  }
  return words;
}

bool isSign(char c) { return c == '-' || c == '.' || c == '/'; }

/// A word with signs in it once more without them: BR-2215 is found by br2215.
void addPlain(std::string& words) {
  std::string plain;
  std::size_t from = 0;
  while ((from = words.find_first_not_of(' ', from)) != std::string::npos) {
    const auto until = std::min(words.find(' ', from), words.size());
    std::string bare;
    for (std::size_t at = from; at < until; ++at)
      if (!isSign(words[at])) bare += words[at];
    if (!bare.empty() && bare.size() < until - from) plain += " " + bare;
    from = until;
  }
  words += plain;
}

}  // namespace

std::string_view text(JobState state) { return wordFor(kJobStates, state); }
std::string_view text(DocumentKind kind) { return wordFor(kDocumentKinds, kind); }
std::string foldedForSearch(std::string_view text) {
  std::string out(text);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const auto byte = static_cast<unsigned char>(out[i]);
    const auto before = i == 0 ? 0U : static_cast<unsigned char>(out[i - 1]);
    const bool ascii = byte >= 'A' && byte <= 'Z';
    const bool latin = before == 0xC3U && byte >= 0x80U && byte <= 0x9EU && byte != 0x97U;  // À … Þ but ×
    if (ascii || latin) out[i] = static_cast<char>(byte + 0x20U);
    else if (byte < 0x20U) out[i] = ' ';
  }
  return out;
}

std::string searchWords(const JobFields& said, const std::vector<JobDocument>& documents) {
  std::string words;
  for (const std::string* field : {&said.reference, &said.vehicle, &said.engine, &said.part, &said.seen, &said.note})
    if (!field->empty()) words += *field + " ";
  for (const JobDocument& document : documents)
    if (!document.removed && !document.part.empty()) words += document.part + " ";
  words = foldedForSearch(words);
  addPlain(words);
  return words;
}

JobFields fieldsOf(Row& row) {
  JobFields said;
  said.state = row.oneOf(kJobStates);
  for (std::string* field : {&said.reference, &said.vehicle, &said.engine, &said.seen, &said.note, &said.part,
                             &said.cause, &said.symptom, &said.deleted})
    *field = row.text();
  return said;
}

JobRecord jobOf(Row& row) {
  JobRecord job;
  job.id.value = row.longWhole();
  job.opened = row.text();
  job.openedBy = row.text();
  job.changed = row.text();
  job.said = fieldsOf(row);
  return job;
}

std::vector<JobRecord> jobs(const Catalogue& catalogue, const JobFilter& filter, int most) {
  const std::string state = filter.state ? std::string(text(*filter.state)) : std::string();
  const int deleted = filter.deleted ? 1 : 0;
  const auto w = wordsOf(filter.text);
  if (w.front().empty())
    return ask(catalogue,
               "SELECT " OHMKIN_JOB_COLUMNS
               " FROM job WHERE (deleted IS NOT NULL) = ? AND (?2 = '' OR state = ?2) ORDER BY id DESC LIMIT ?",
               jobOf, deleted, state, most);
  // From the newest through the short rows; the job itself is fetched only where all words are there.
  return ask(catalogue,
             "SELECT " OHMKIN_JOB_COLUMNS
             " FROM job_search s CROSS JOIN job j ON j.id = s.job "
             "WHERE instr(s.words, ?) AND instr(s.words, ?) AND instr(s.words, ?) AND instr(s.words, ?) "
             "AND instr(s.words, ?) AND instr(s.words, ?) AND instr(s.words, ?) AND instr(s.words, ?) "
             "AND (j.deleted IS NOT NULL) = ? AND (?10 = '' OR j.state = ?10) ORDER BY s.job DESC LIMIT ?",
             jobOf, w[0], w[1], w[2], w[3], w[4], w[5], w[6], w[7], deleted, state, most);
}

std::int64_t jobCount(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT count(*) FROM job WHERE deleted IS NULL", [](Row& row) { return row.longWhole(); })
      .front();
}

std::optional<JobRecord> job(const Catalogue& catalogue, JobNumber id) {
  return first(ask(catalogue, "SELECT " OHMKIN_JOB_COLUMNS " FROM job WHERE id = ?", jobOf, id.value));
}

std::vector<JobDocument> documents(const Catalogue& catalogue, JobNumber id) {
  const auto read = [](Row& row) {
    JobDocument d;
    d.ordinal = row.whole();
    d.kind = row.oneOf(kDocumentKinds);
    for (std::string* field : {&d.made, &d.madeBy, &d.title, &d.part, &d.question, &d.document, &d.hash})
      *field = row.text();
    d.removed = row.flag();
    d.logLine = row.longWhole();
    return d;
  };
  return ask(catalogue,
             "SELECT ordinal, kind, made, made_by, title, part, question, document, hash, removed, log_line "
             "FROM job_document WHERE job = ? ORDER BY ordinal",
             read, id.value);
}

JobSteps steps(const Catalogue& catalogue, JobNumber id) {
  const auto read = [](Row& row) {
    JobStep step;
    step.at = row.text();
    step.who = row.text();
    step.what = row.text();
    return step;
  };
  return {
      first(ask(catalogue, "SELECT at, who, what FROM job_step WHERE job = ? AND undone = 0 ORDER BY id DESC LIMIT 1",
                read, id.value)),
      first(ask(catalogue, "SELECT at, who, what FROM job_step WHERE job = ? AND undone = 1 ORDER BY id LIMIT 1", read,
                id.value))};
}

std::vector<CauseCount> causesFound(const Catalogue& catalogue) {
  const auto read = [](Row& row) {
    CauseCount count;
    count.cause = row.text();
    count.symptom = row.text();
    count.jobs = row.longWhole();
    return count;
  };
  return ask(catalogue,
             "SELECT cause, symptom, count(*) FROM job WHERE cause <> '' AND deleted IS NULL "
             "GROUP BY cause, symptom ORDER BY cause, symptom",
             read);
}

}  // namespace ohmkin::catalog
