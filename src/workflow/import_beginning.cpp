#include <catalog/bench_records.h>
#include <exchange/content_hash.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/import_beginning.h>
#include <fstream>
#include <sstream>

namespace ohmkin::workflow {
namespace {

Expected<std::uint64_t> sizeOf(const ReadingsFile& file) {
  if (file.path.empty()) return file.bytes.size();
  std::error_code failed;
  const auto size = std::filesystem::file_size(file.path, failed);
  if (failed) return refuse("file-missing", file.path.string(), failed.message(), "a file of readings");
  return size;
}

Expected<std::string> hashOf(const ReadingsFile& file) {
  if (!file.path.empty()) return exchange::contentHash(file.path);
  exchange::ContentHash hash;
  hash.add(file.bytes);
  return hash.hex();
}

Expected<std::string> sampleOf(const ReadingsFile& file) {
  const auto in = opened(file);
  std::string sample(exchange::kSampleBytes, '\0');
  in->read(sample.data(), static_cast<std::streamsize>(sample.size()));
  if (in->gcount() == 0 && in->bad())
    return refuse("file-unreadable", file.name, "a file that cannot be read", "a file of readings");
  sample.resize(static_cast<std::size_t>(in->gcount()));
  return sample;
}

Expected<HowRead> howRead(const catalog::Catalogue& catalogue, const ReadingsFile& file, std::uint64_t size,
                          const ImportAsked& asked) {
  const auto sample = sampleOf(file);
  if (!sample) return tl::make_unexpected(sample.error());
  exchange::ProposalHints hints = asked.hints;
  hints.wholeFile = sample->size() == size;
  HowRead how;
  if (auto proposal = exchange::propose(*sample, file.name, hints)) {
    how.proposal = *std::move(proposal);
  } else {
    // A plan typed in whole needs no proposal.
    const auto typed = exchange::parsePlan(asked.correction, {}, "correction");
    if (asked.correction.empty() || !typed || !exchange::checkPlan(*typed))
      return tl::make_unexpected(proposal.error());
  }
  how.plan = how.proposal.plan;
  if (!asked.asProposed && !how.proposal.signature.empty()) {
    if (auto habit = catalog::readingHabit(catalogue, how.proposal.signature)) {
      if (const auto plan = exchange::parsePlan(habit->plan, how.plan, "what is remembered")) {
        how.plan = *plan;
        how.findings.push_back(
            {"read-as-remembered", Severity::note,
             fmt::format("Read as {} put it right for such files on {}.", habit->who, habit->at.substr(0, 10)),
             habit->logger, "remembered of files of this shape"});
        how.remembered = std::move(habit);
      }
    }
  }
  const auto corrected = exchange::parsePlan(asked.correction, how.plan, "correction");
  if (!corrected) return tl::make_unexpected(corrected.error());
  how.plan = *corrected;
  return how;
}

}  // namespace

std::unique_ptr<std::istream> opened(const ReadingsFile& file) {
  if (file.path.empty()) return std::make_unique<std::istringstream>(file.bytes);
  return std::make_unique<std::ifstream>(file.path, std::ios::binary);
}

Expected<Beginning> beginningOf(const catalog::Catalogue& catalogue, const ReadingsFile& file,
                                const ImportAsked& asked) {
  const auto size = sizeOf(file);
  if (!size) return tl::make_unexpected(size.error());
  auto how = howRead(catalogue, file, *size, asked);
  if (!how) return tl::make_unexpected(how.error());
  auto instruments = fileInstruments(catalogue, asked);
  if (!instruments) return tl::make_unexpected(instruments.error());
  auto hash = hashOf(file);
  if (!hash) return tl::make_unexpected(hash.error());
  return Beginning{*size, *std::move(hash), *std::move(how), *std::move(instruments)};
}

std::optional<Refusal> openQuestion(const ReadingsFile& file, const HowRead& how, const ImportAsked& asked) {
  if (!asked.askFirst || asked.asProposed || !asked.correction.empty() || how.remembered) return std::nullopt;
  if (how.proposal.questions.empty()) return std::nullopt;
  std::string asks, answers;
  for (const exchange::PlanQuestion& question : how.proposal.questions) {
    std::string_view sentence = question.sentence;
    if (sentence.ends_with('.')) sentence.remove_suffix(1);
    asks += fmt::format("{}{}", asks.empty() ? "" : "; ", sentence);
    answers += fmt::format("{}'{}'", answers.empty() ? "" : ", and ", fmt::join(question.answers, "' or '"));
  }
  return Refusal{"import-question", file.name, fmt::format("an open question: {}", asks),
                 fmt::format("an answer first, {}; nothing was changed", answers)};
}

}  // namespace ohmkin::workflow
