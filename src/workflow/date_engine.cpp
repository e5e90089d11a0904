#include <catalog/layouts.h>
#include <catalog/vehicles.h>
#include <dating/model_year.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/date_engine.h>
#include <workflow/date_engine_words.h>
#include <workflow/layouts.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using catalog::Catalogue;

dating::FoundOn placeOf(dating::CastingRole role) {
  switch (role) {
    case dating::CastingRole::head:
      return dating::FoundOn::head;
    case dating::CastingRole::block:
      return dating::FoundOn::block;
    case dating::CastingRole::intake:
      return dating::FoundOn::intake;
    case dating::CastingRole::housing:
      return dating::FoundOn::housing;
  }
  return dating::FoundOn::head;
}

std::string_view roleName(dating::CastingRole role) { return dating::text(placeOf(role)); }

Expected<std::vector<dating::Layout>> layoutsNamed(const Catalogue& catalogue, const std::string& id,
                                                   dating::FoundOn place,
                                                   const std::optional<catalog::Casting>& casting) {
  const auto records = catalog::dateLayouts(catalogue);
  std::vector<dating::Layout> found;
  const std::string wanted = !id.empty() ? id : casting && casting->layout ? casting->layout->text : "";
  for (const auto& record : records) {
    if (!wanted.empty() ? folded(record.id.text) == folded(wanted)
                        : dating::text(place) == catalog::text(record.foundOn))
      found.push_back(layoutOf(record));
  }
  if (found.empty() && !wanted.empty()) {
    std::vector<std::string> ids;
    ids.reserve(records.size());
    for (const auto& record : records) ids.push_back(record.id.text);
    return refuse("layout-unknown", "--layout", fmt::format("'{}'", wanted),
                  "a date layout of this catalogue" + perhaps(nearMisses(wanted, ids)));
  }
  return found;
}

CodeRead readCode(std::string name, const std::string& code, const std::vector<dating::Layout>& layouts,
                  const DateSpan& window) {
  CodeRead read{std::move(name), code, std::nullopt, {}, {}};
  std::vector<Finding> reasons;
  for (const dating::Layout& layout : layouts) {
    dating::DecodeOptions options;
    options.window = window;
    auto decoded = dating::decode(layout, code, options);
    if (!decoded) {
      reasons.push_back(
          {decoded.error().code, Severity::caution, decoded.error().sentence(), layout.name, "the code as given"});
      continue;
    }
    reasons.insert(reasons.end(), decoded->findings.begin(), decoded->findings.end());
    for (const dating::Reading& reading : decoded->readings)
      read.meanings.push_back({reading, layout.name, dating::assumptions(*decoded, reading), 0});
  }
  // Reasons matter where nothing reads, or where the one layout it must be written in objects to the plain text.
  if (read.meanings.empty() || layouts.size() == 1) read.findings = std::move(reasons);
  return read;
}

std::vector<dating::Reading> readingsOf(const CodeRead& read) {
  std::vector<dating::Reading> readings;
  readings.reserve(read.meanings.size());
  for (const CodeMeaning& meaning : read.meanings) readings.push_back(meaning.reading);
  return readings;
}

/// Each meaning by the share of the day distribution that falls on it, several assumptions for one day by their
/// weights.
void weigh(CodeRead& read, const dating::DayDistribution& days) {
  double total = 0;
  for (CodeMeaning& meaning : read.meanings) {
    meaning.probability =
        days.empty() ? 0 : meaning.reading.weight * days.within({meaning.reading.from, meaning.reading.until});
    total += meaning.probability;
  }
  if (total > 0) {
    for (CodeMeaning& meaning : read.meanings) meaning.probability /= total;
  }
  std::stable_sort(read.meanings.begin(), read.meanings.end(), [](const CodeMeaning& a, const CodeMeaning& b) {
    return std::pair(-a.probability, -a.reading.weight) < std::pair(-b.probability, -b.reading.weight);
  });
}

class Dater {
 public:
  Dater(const Catalogue& catalogue, const DateQuestion& question) : catalogue_(catalogue), question_(question) {}

  Expected<DateAnswer> run() {
    for (std::size_t i = 0; i < question_.castings.size(); ++i) {
      if (const auto read = casting(question_.castings[i], i); !read) return tl::make_unexpected(read.error());
    }
    if (const auto read = stamp(); !read) return tl::make_unexpected(read.error());
    if (const auto read = vehicle(); !read) return tl::make_unexpected(read.error());
    evidence_.window = question_.window;
    evidence_.beliefs = question_.beliefs;
    auto posterior = dating::posterior(evidence_);
    if (!posterior) return tl::make_unexpected(posterior.error());
    answer_.posterior = std::move(*posterior);
    answer_.beliefs = question_.beliefs;
    answer_.assumptions = assumptionsOf(answer_.beliefs, answer_.posterior.window);
    answer_.findings.insert(answer_.findings.end(), answer_.posterior.findings.begin(),
                            answer_.posterior.findings.end());
    for (std::size_t i = 0; i < answer_.codes.size(); ++i) {
      const bool ofCasting = i < castingOf_.size();
      weigh(answer_.codes[i], ofCasting ? answer_.posterior.castings[castingOf_[i]].days : answer_.posterior.assembly);
    }
    if (answer_.dated()) answer_.summary = dating::eraSummary(answer_.posterior.assembly);
    sayWhoseEngine();
    return std::move(answer_);
  }

 private:
  Expected<void> casting(const CastingRead& asked, std::size_t index) {
    std::optional<catalog::Casting> record;
    if (!asked.number.empty()) {
      auto found = catalog::castingsNumbered(catalogue_, asked.number);
      if (found.empty())
        return refuse("casting-unknown", std::string("--") + std::string(roleName(asked.role)),
                      fmt::format("'{}'", asked.number),
                      "a casting number of this catalogue" +
                          perhaps(nearMisses(asked.number, catalog::castingNumbers(catalogue_))));
      record = std::move(found.front());
    }
    const std::string name = nameOf(asked, index, record);
    dating::DatedCasting dated{name, asked.role, {}, {}};
    if (record) {
      dated.produced = record->cast;
      answer_.timeLine.push_back(
          {fmt::format("{}: casting {} was made", name, record->id.text), record->cast, "casting"});
    }
    if (!asked.code.empty()) {
      const auto layouts = layoutsNamed(catalogue_, asked.layout, placeOf(asked.role), record);
      if (!layouts) return tl::make_unexpected(layouts.error());
      CodeRead read = readCode(name, asked.code, *layouts, question_.window);
      read.casting = record;
      dated.readings = readingsOf(read);
      tell(read);
      answer_.codes.push_back(std::move(read));
      castingOf_.push_back(evidence_.castings.size());
    }
    evidence_.castings.push_back(std::move(dated));
    return {};
  }

  /// "head" where there is one; "left head" where its number says which; else "head A", "head B", in the order given.
  std::string nameOf(const CastingRead& asked, std::size_t index, const std::optional<catalog::Casting>& record) const {
    if (!asked.name.empty()) return asked.name;
    const auto same = std::count_if(question_.castings.begin(), question_.castings.end(),
                                    [&](const auto& c) { return c.role == asked.role; });
    if (same < 2) return std::string(roleName(asked.role));
    if (record && (record->side == catalog::CastingSide::left || record->side == catalog::CastingSide::right)) {
      // Two that both say left have to be told apart by letters.
      const auto alike = std::count_if(question_.castings.begin(), question_.castings.end(), [&](const auto& c) {
        return c.role == asked.role && folded(c.number) == folded(asked.number);
      });
      if (alike == 1) return fmt::format("{} {}", catalog::text(record->side), roleName(asked.role));
    }
    const auto before =
        std::count_if(question_.castings.begin(), question_.castings.begin() + static_cast<std::ptrdiff_t>(index),
                      [&](const auto& c) { return c.role == asked.role; });
    return before < 26 ? fmt::format("{} {}", roleName(asked.role), static_cast<char>('A' + before))
                       : fmt::format("{} {}", roleName(asked.role), before + 1);
  }

  Expected<void> stamp() {
    if (question_.stamp.empty()) return {};
    const auto layouts = layoutsNamed(catalogue_, question_.stampLayout, dating::FoundOn::assemblyStamp, std::nullopt);
    if (!layouts) return tl::make_unexpected(layouts.error());
    CodeRead read = readCode("assembly stamp", question_.stamp, *layouts, question_.window);
    tell(read);
    if (!read.meanings.empty()) evidence_.stamp = dating::AssemblyStamp{readingsOf(read), question_.padRecut};
    answer_.codes.push_back(std::move(read));
    return {};
  }

  /// What is wrong with a code, with its name where there are several.
  void tell(const CodeRead& read) {
    const bool several = question_.castings.size() + (question_.stamp.empty() ? 0 : 1) > 1;
    for (Finding finding : read.findings) {
      if (several) finding.sentence = fmt::format("{}, {}: {}", read.name, read.code, finding.sentence);
      answer_.findings.push_back(std::move(finding));
    }
  }

  Expected<void> vehicle() {
    evidence_.vehicle.built = question_.built;
    evidence_.vehicle.year = question_.year;
    if (question_.built)
      answer_.timeLine.push_back(
          {"vehicle built", {*question_.built, *question_.built + std::chrono::days{1}}, "vehicle"});
    else if (question_.year)
      answer_.timeLine.push_back({fmt::format("model year {} was built", question_.year->value),
                                  dating::usualProduction(*question_.year), "vehicle"});
    if (question_.line.empty()) return {};
    const auto lines = catalog::linesNamed(catalogue_, question_.line);
    if (lines.empty()) {
      std::vector<std::string> names;
      for (auto& name : catalog::lineNames(catalogue_)) names.push_back(std::move(name.name));
      return refuse("line-unknown", "--vehicle", fmt::format("'{}'", question_.line),
                    "a vehicle line of this catalogue" + perhaps(nearMisses(question_.line, names)));
    }
    for (const auto& cluster : catalog::clusters(catalogue_, lines.front().id)) {
      if (cluster.built.from)
        answer_.timeLine.push_back({"cluster changes: " + cluster.option,
                                    {cluster.built.from, *cluster.built.from + std::chrono::days{1}},
                                    "cluster"});
    }
    return {};
  }

  /// The posterior's own words about whose engine it is, and which castings its findings repeat, are shown apart.
  void sayWhoseEngine() {
    for (const Finding& finding : answer_.findings) {
      if (finding.code.ends_with("-engine")) answer_.engineWords = finding.sentence;
    }
  }

  const Catalogue& catalogue_;
  const DateQuestion& question_;
  dating::Evidence evidence_;
  std::vector<std::size_t> castingOf_;  ///< for each code read off a casting, which of the evidence's castings
  DateAnswer answer_;
};

}  // namespace

Expected<DateAnswer> dateEngine(const Catalogue& catalogue, const DateQuestion& question) {
  return Dater(catalogue, question).run();
}

Expected<dating::Decoded> tryLayout(const dating::Layout& layout, const std::string& text, const DateSpan& window) {
  auto checked = dating::checkedLayout(layout);
  if (!checked) return tl::make_unexpected(checked.error());
  dating::DecodeOptions options;
  options.window = window;
  return dating::decode(*checked, text, options);
}

}  // namespace ohmkin::workflow
