#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/job_command.h>
#include <cli/json_values.h>
#include <cli/print_request.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/job_sheet.h>
#include <workflow/job_work.h>
#include <algorithm>
#include <ostream>

namespace ohmkin::cli {
namespace {

using workflow::JobView;

Json json(const catalog::JobRecord& job) {
  const catalog::JobFields& said = job.said;
  return {{"id", job.id.value},
          {"opened", job.opened},
          {"opened_by", job.openedBy},
          {"changed", job.changed},
          {"state", catalog::text(said.state)},
          {"reference", said.reference},
          {"vehicle", said.vehicle},
          {"engine", said.engine},
          {"seen", said.seen},
          {"note", said.note},
          {"part", said.part},
          {"cause", said.cause},
          {"symptom", said.symptom},
          {"deleted", said.deleted}};
}

Json json(const workflow::KeptDocument& document, bool whole) {
  const catalog::JobDocument& kept = document.kept;
  Json out{{"ordinal", kept.ordinal}, {"kind", catalog::text(kept.kind)},
           {"made", kept.made},       {"made_by", kept.madeBy},
           {"title", kept.title},     {"part", kept.part},
           {"sha256", kept.hash},     {"as_written", document.asWritten}};
  out["file"] =
      document.attachment ? Json(document.attachmentWords.empty() ? "as it was" : document.attachmentWords) : Json();
  if (whole) out["document"] = Json::parse(kept.document, nullptr, false);
  return out;
}

std::string line(const catalog::JobRecord& job) {
  return fmt::format("{} {} {} {}{}{}\n", job.id.value, job.opened.substr(0, 10), catalog::text(job.said.state),
                     job.said.reference, job.said.vehicle.empty() ? "" : " · " + job.said.vehicle,
                     job.said.part.empty() ? "" : " · " + job.said.part);
}

std::string viewText(const JobView& view) {
  const catalog::JobFields& said = view.job.said;
  std::string text = line(view.job);
  const std::pair<const char*, std::string> rows[] = {
      {"engine", said.engine}, {"seen", said.seen}, {"note", said.note}, {"cause", view.causeWords}};
  for (const auto& [name, value] : rows)
    if (!value.empty()) text += wrapped(fmt::format("{}: {}", name, value), 4, 2);
  for (const auto& document : view.documents) {
    text += wrapped(fmt::format("{}. {}, {}: {}{}", document.kept.ordinal, catalog::text(document.kept.kind),
                                document.kept.made.substr(0, 10), document.kept.title,
                                document.asWritten ? "" : " (not as it was written)"),
                    5, 2);
    if (!document.attachmentWords.empty()) text += wrapped(document.attachmentWords, 5, 5);
  }
  if (view.steps.undo) text += fmt::format("  undo would take back: {}\n", view.steps.undo->what);
  return text;
}

Expected<catalog::JobNumber> numberIn(const Arguments& given) {
  if (given.words.size() < 2)
    return refuse("job-number", given.words.front(), "nothing", "the number of a job, as list shows it");
  return workflow::readJobNumber(given.words[1], given.words.front());
}

Exit told(const catalog::JobRecord& job, const char* words, const Arguments& given, Streams streams) {
  Json out = document("ohmkin.job", 1);
  out["job"] = json(job);
  streams.out << (given.has("--json") ? text(out) : fmt::format("Job {} {}.\n", job.id.value, words));
  return Exit::answer;
}

Expected<Exit> list(const Arguments& given, const catalog::Catalogue& catalogue, Streams streams) {
  catalog::JobFilter filter;
  filter.text = fmt::format("{}", fmt::join(given.words.begin() + 1, given.words.end(), " "));
  filter.deleted = given.has("--put-away");
  if (given.has("--open")) filter.state = catalog::JobState::open;
  const auto jobs = workflow::findJobs(catalogue, filter);
  Json out = document("ohmkin.jobs", 1);
  out["jobs"] = Json::array();
  std::string lines;
  for (const auto& job : jobs) {
    out["jobs"].push_back(json(job));
    lines += line(job);
  }
  streams.out << (given.has("--json") ? text(out) : lines.empty() ? std::string("No job.\n") : lines);
  return jobs.empty() ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> show(const Arguments& given, const catalog::Catalogue& catalogue, catalog::JobNumber id,
                    Streams streams) {
  const auto view = workflow::jobView(catalogue, id, true);
  if (!view) return tl::make_unexpected(view.error());
  Json out = document("ohmkin.job", 1);
  out["job"] = json(view->job);
  out["cause_words"] = view->causeWords;
  out["documents"] = Json::array();
  for (const auto& one : view->documents) out["documents"].push_back(json(one, given.has("--whole")));
  streams.out << (given.has("--json") ? text(out) : viewText(*view));
  return Exit::answer;
}

/// The document meant: --document N, else the newest match.
Expected<int> documentMeant(const Arguments& given, const catalog::Catalogue& catalogue, catalog::JobNumber id) {
  if (given.has("--document")) {
    const auto number = workflow::readJobNumber(given.one("--document"), "--document");
    if (!number) return tl::make_unexpected(number.error());
    return static_cast<int>(number->value);
  }
  const auto view = workflow::jobView(catalogue, id);
  if (!view) return tl::make_unexpected(view.error());
  int newest = 0;
  for (const auto& one : view->documents)
    if (one.kept.kind == catalog::DocumentKind::match) newest = one.kept.ordinal;
  if (newest == 0)
    return refuse("document-unknown", fmt::format("job {}", id.value), "no match kept",
                  "one; ohmkin match … --job keeps it");
  return newest;
}

Expected<Exit> again(const Arguments& given, const catalog::Catalogue& catalogue, catalog::JobNumber id,
                     Streams streams) {
  const auto ordinal = documentMeant(given, catalogue, id);
  if (!ordinal) return tl::make_unexpected(ordinal.error());
  const auto units = displayUnits(given);
  if (!units) return tl::make_unexpected(units.error());
  const auto answer = workflow::answerAgain(catalogue, id, *ordinal, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  if (given.has("--json")) {
    Json out = document("ohmkin.job-again", 1);
    out["document"] = *ordinal;
    out["differs"] = answer->differs;
    out["sentence"] = answer->sentence;
    out["differences"] = Json::array();
    for (const auto& one : answer->differences)
      out["differences"].push_back(
          {{"what", one.what}, {"then", one.then}, {"now", one.now}, {"sentence", one.sentence}});
    out["because"] = answer->because;
    streams.out << text(out);
  } else {
    if (!answer->differs) streams.out << answer->sentence << "\n";
    for (const auto& one : answer->differences) streams.out << wrapped(one.sentence, 2, 0);
    if (!answer->because.empty()) streams.out << "Since then:\n";
    for (const auto& one : answer->because) streams.out << wrapped(one, 4, 2);
  }
  return answer->differs ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> print(const Arguments& given, const catalog::Catalogue& catalogue, catalog::JobNumber id,
                     Streams streams) {
  const auto units = displayUnits(given);
  if (!units) return tl::make_unexpected(units.error());
  const auto request = printRequest(given, *units);
  if (!request) return tl::make_unexpected(request.error());
  if (!request->wanted()) return refuse("file-not-named", "--pdf", "nothing", "a FILE to write, --pdf or --svg");
  const auto pages = workflow::jobSheet(catalogue, id, request->options);
  if (!pages) return tl::make_unexpected(pages.error());
  if (const auto written = deliver(*request, *pages, streams); !written) return tl::make_unexpected(written.error());
  return Exit::answer;
}

/// What the options say goes over what the job says.
void take(const Arguments& given, catalog::JobFields& said) {
  const std::pair<const char*, std::string*> options[] = {
      {"--reference", &said.reference}, {"--vehicle", &said.vehicle}, {"--engine", &said.engine},
      {"--seen", &said.seen},           {"--note", &said.note},       {"--part", &said.part},
      {"--cause", &said.cause},         {"--symptom", &said.symptom}};
  for (const auto& [option, field] : options)
    if (given.has(option)) *field = given.one(option);
}

Expected<Exit> opened(const Arguments& given, catalog::Catalogue& catalogue, Streams streams) {
  catalog::JobFields said;
  said.reference = fmt::format("{}", fmt::join(given.words.begin() + 1, given.words.end(), " "));
  take(given, said);
  const auto job = workflow::openJob(catalogue, said, whoIsAsking(given));
  if (!job) return tl::make_unexpected(job.error());
  return told(*job, "opened", given, streams);
}

Expected<Exit> kept(const Expected<catalog::JobDocument>& document, catalog::JobNumber id, const Arguments& given,
                    Streams streams) {
  if (!document) return tl::make_unexpected(document.error());
  if (given.has("--json")) {
    Json out = cli::document("ohmkin.job-kept", 1);
    out["job"] = id.value;
    out["document"] = json(workflow::KeptDocument{*document, true, {}, {}}, false);
    streams.out << text(out);
  } else {
    streams.out << fmt::format("Kept with job {} as document {}.\n", id.value, document->ordinal);
  }
  return Exit::answer;
}

Expected<Exit> keep(const Arguments& given, catalog::Catalogue& catalogue, catalog::JobNumber id, Streams streams) {
  const std::string who = whoIsAsking(given);
  if (given.has("--run")) {
    const auto run = workflow::readJobNumber(given.one("--run"), "--run");
    if (!run) return tl::make_unexpected(run.error());
    return kept(workflow::keepBenchRun(catalogue, id, {run->value}, who), id, given, streams);
  }
  if (given.words.size() != 3)
    return refuse("job-words", "keep", "no FILE", "a FILE that --json wrote, or --run N for a bench run");
  const auto json = contentsOf(given.words[2]);
  if (!json) return refuse("file-unreadable", "keep", "'" + given.words[2] + "'", "a FILE that can be read");
  return kept(workflow::keepJson(catalogue, id, *json, given.one("--title"), who), id, given, streams);
}

Expected<Exit> erased(const Arguments& given, catalog::Catalogue& catalogue, catalog::JobNumber id, Streams streams) {
  if (!given.has("--for-good"))
    return refuse("erase-not-sure", "erase", "nothing that says you are sure",
                  "--for-good; nothing brings an erased job back");
  const auto gone = catalog::eraseJob(catalogue, id, whoIsAsking(given));
  if (!gone) return tl::make_unexpected(gone.error());
  if (given.has("--json")) {
    Json out = document("ohmkin.job-erased", 1);
    out["job"] = id.value;
    out["documents"] = gone->documents;
    out["movements"] = gone->movements;
    out["log_clean"] = gone->logClean;
    streams.out << text(out);
  } else {
    streams.out << fmt::format("Job {} erased, {} documents with it.\n", id.value, gone->documents);
    if (!gone->logClean)
      streams.out << "Another program reads the catalogue; its log holds the old pages until that one ends.\n";
  }
  return Exit::answer;
}

using Change = Expected<catalog::JobRecord> (*)(catalog::Catalogue&, catalog::JobNumber, std::string_view);
struct Plain {
  const char* word;
  const char* done;
  Change change;
};
constexpr Plain kPlain[] = {{"reopen", "opened again", workflow::reopenJob},
                            {"delete", "put away", workflow::deleteJob},
                            {"restore", "brought back", workflow::restoreJob},
                            {"duplicate", "opened, like the other", catalog::duplicateJob}};

Expected<Exit> changed(const Arguments& given, catalog::Catalogue& catalogue, catalog::JobNumber id, Streams streams) {
  const std::string& what = given.words.front();
  const std::string who = whoIsAsking(given);
  const auto tell = [&](const Expected<catalog::JobRecord>& job, const char* words) -> Expected<Exit> {
    if (!job) return tl::make_unexpected(job.error());
    return told(*job, words, given, streams);
  };
  for (const Plain& plain : kPlain)
    if (what == plain.word) return tell(plain.change(catalogue, id, who), plain.done);
  if (what == "note")
    return tell(workflow::addNote(catalogue, id,
                                  fmt::format("{}", fmt::join(given.words.begin() + 2, given.words.end(), " ")), who),
                "noted");
  if (what == "close")
    return tell(
        workflow::closeJob(catalogue, id, {given.one("--part"), given.one("--cause"), given.one("--symptom")}, who),
        "done");
  if (what == "change") {
    const auto now = catalog::job(catalogue, id);
    if (!now) return refuse("job-unknown", fmt::format("job {}", id.value), "no such job", "the number of a job");
    catalog::JobFields said = now->said;
    take(given, said);
    return tell(workflow::changeJob(catalogue, id, said, who, now->changed), "changed");
  }
  const auto step = what == "undo" ? catalog::undoJob(catalogue, id, who) : catalog::redoJob(catalogue, id, who);
  if (!step) return tl::make_unexpected(step.error());
  return told(*catalog::job(catalogue, id), what == "undo" ? "taken a step back" : "taken a step forth again", given,
              streams);
}

const std::vector<std::string> kWords{"new",       "list",         "show",    "note",   "change", "keep",
                                      "attach",    "answer-again", "close",   "reopen", "undo",   "redo",
                                      "duplicate", "delete",       "restore", "erase",  "print"};

}  // namespace

const CommandSpec& JobCommand::spec() const {
  static const CommandSpec spec{
      "job",
      "Jobs: what was asked and answered then, kept as it was; what was fitted and what was the matter.",
      "new REFERENCE | list [TEXT] | show ID | note ID TEXT | change ID | keep ID FILE | attach ID FILE | answer-again "
      "ID | close ID | reopen ID | undo ID | redo ID | duplicate ID | delete ID | restore ID | erase ID | print ID",
      std::string("REFERENCE is ") + workflow::kReferenceHelp,
      1,
      64,
      withCommonOptions(withPrintOptions(
          {{"--reference", "TEXT", workflow::kReferenceHelp},
           {"--vehicle", "TEXT", "the vehicle, as it is called"},
           {"--engine", "TEXT", "the engine"},
           {"--seen", "TEXT", "what was seen"},
           {"--note", "TEXT", "a note"},
           {"--part", "PART", "what was fitted"},
           {"--cause", "FAULT",
            "what was the matter, as ohmkin fault names it: it moves the likelihoods of later searches"},
           {"--symptom", "WORD", "what was complained of: low, pegged, high, erratic or lamps"},
           {"--document", "N", "which document of the job; otherwise the newest match"},
           {"--run", "N", "keep: a run of the bench, by its number"},
           {"--title", "TEXT", "keep, attach: what it is called"},
           {"--open", "", "list: only jobs that are open"},
           {"--put-away", "", "list: those that were put away"},
           {"--whole", "", "show --json: with what the documents say"},
           {"--for-good", "", "erase: yes, for good"},
           {"--who", "NAME", "who it is, for the record; otherwise the name you are logged in by"}})),
      "ohmkin job new blue pickup --vehicle \"Ridgeway utility\" --catalog demo.ohmkin",
      kWords};
  return spec;
}

Expected<Exit> JobCommand::run(const Arguments& arguments, Streams streams) const {
  const std::string& what = arguments.words.front();
  if (std::find(kWords.begin(), kWords.end(), what) == kWords.end())
    return refuse("job-words", "", "'" + what + "'", fmt::format("{}", fmt::join(kWords, ", ")));
  const bool asks = what == "list" || what == "show" || what == "answer-again" || what == "print";
  if (what != "list" && what != "new") {
    if (const auto id = numberIn(arguments); !id) return tl::make_unexpected(id.error());
  }
  if (asks) {
    const auto catalogue = openCatalogue(arguments);
    if (!catalogue) return tl::make_unexpected(catalogue.error());
    if (what == "list") return list(arguments, *catalogue, streams);
    const auto id = *numberIn(arguments);
    if (what == "show") return show(arguments, *catalogue, id, streams);
    return what == "print" ? print(arguments, *catalogue, id, streams) : again(arguments, *catalogue, id, streams);
  }
  const auto path = cataloguePath(arguments);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  if (what == "new") return opened(arguments, catalogue, streams);
  const auto id = *numberIn(arguments);
  if (what == "keep") return keep(arguments, catalogue, id, streams);
  if (what == "erase") return erased(arguments, catalogue, id, streams);
  if (what == "attach") {
    if (arguments.words.size() != 3) return refuse("job-words", "attach", "no FILE", "the FILE to refer to");
    return kept(
        workflow::attachFile(catalogue, id, arguments.words[2], arguments.one("--title"), whoIsAsking(arguments)), id,
        arguments, streams);
  }
  return changed(arguments, catalogue, id, streams);
}

}  // namespace ohmkin::cli
