#include <pairing/verdict.h>

#include <fmt/format.h>
#include <pairing/standing.h>
#include <algorithm>
#include <array>
#include <cmath>

namespace ohmkin::pairing {
namespace {

constexpr double kBathCelsius = 95;   // a hot reading anyone can take: water kept just short of boiling
constexpr double kWorthSaying = 0.5;  // K; smaller errors are called none

class Judge {
 public:
  Judge(const ErrorTable& table, const std::optional<TrimProposal>& trim, const Limits& limits,
        const Circumstances& about)
      : table_(table), trim_(trim), about_(about), stands_(against(table, limits)) {
    out_.limits = limits;
  }

  Verdict verdict() {
    out_.electrical = decide();
    out_.sentence = sentence();
    if (out_.electrical == Electrical::undecided) out_.takeReadingAt = std::min(celsius(kBathCelsius), hotMark());
    out_.findings.push_back(main());
    addTrim();
    addBoiling();
    addAssumptions();
    std::stable_sort(out_.findings.begin(), out_.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
    return std::move(out_);
  }

 private:
  [[nodiscard]] Electrical decide() const {
    if (table_.backwards) return Electrical::refused;
    if (table_.options.sameFamily && table_.trim.parts() == 0) return Electrical::sameFamily;
    if (!about_.temperaturesStated && table_.hotSign == HotSign::notSettled) return Electrical::undecided;
    if (stands_.within()) return Electrical::withinLimits;
    if (trim_ && trim_->permanent) return Electrical::trimmedWithinLimits;
    if (stands_.late == Standing::beyond || stands_.low == Standing::beyond) return Electrical::refused;
    if (stands_.late == Standing::unclear || stands_.low == Standing::unclear) return Electrical::undecided;
    return Electrical::readsHigh;
  }

  [[nodiscard]] Temperature hotMark() const { return table_.hotMark; }
  [[nodiscard]] std::string amount(TemperatureDifference d) const {
    return printAmount(d < kelvins(0) ? -d : d, about_.units);
  }
  [[nodiscard]] std::string point(Temperature t) const { return print(t, about_.units); }

  /// "reads at worst 7 K low at 96 °C"
  [[nodiscard]] std::string worstInWords() const {
    const Extreme& worst = table_.worst;
    if (std::abs(inKelvin(worst.error)) < kWorthSaying) return "reads true over the band";
    return fmt::format("reads at worst {} {} at {}", amount(worst.error), worst.error < kelvins(0) ? "low" : "high",
                       point(worst.at));
  }

  [[nodiscard]] std::string hotInWords() const {
    if (const auto* reaches = std::get_if<Reaches>(&table_.hot)) {
      if (std::abs(inKelvin(reaches->late)) < kWorthSaying) return "reaches the hot mark on time";
      return fmt::format("reaches the hot mark {} {}", amount(reaches->late),
                         reaches->late > kelvins(0) ? "late" : "early");
    }
    if (const auto* never = std::get_if<NeverReaches>(&table_.hot))
      return "has not reached the hot mark at " + point(never->curveEnds) + ", where the sender's curve ends";
    return "is past the hot mark already at " + point(std::get<PastAlready>(table_.hot).curveBegins);
  }

  [[nodiscard]] std::string sentence() const {
    switch (out_.electrical) {
      case Electrical::sameFamily:
        return table_.movementAssumed || std::abs(inKelvin(table_.worst.error)) < kWorthSaying
                   ? "Right for this gauge."
                   : fmt::format("Right for this gauge; it {}.", worstInWords());
      case Electrical::withinLimits:
        return fmt::format("Another family, but close enough: the needle {} and {}.", worstInWords(), hotInWords());
      case Electrical::trimmedWithinLimits:
        return fmt::format("As it is the needle {} and {}; with {} it stays within the limits.", worstInWords(),
                           hotInWords(), trim_->network.name());
      case Electrical::readsHigh:
        return fmt::format("Safe but wrong: the needle {} and {}. Keep an offset card in the vehicle.", worstInWords(),
                           hotInWords());
      case Electrical::undecided:
        return undecidedInWords();
      case Electrical::refused:
        if (table_.backwards) return "The needle would fall as the engine warms: this sender turns the other way.";
        return fmt::format("Not with this gauge: the needle {} and {}.", worstInWords(), hotInWords());
    }
    return {};
  }

  [[nodiscard]] std::string undecidedInWords() const {
    const std::string reading = point(std::min(celsius(kBathCelsius), hotMark()));
    if (table_.hotSign == HotSign::notSettled)
      return fmt::format(
          "Whether the hot mark comes early or late is not settled: {}. Measure this sender hot, at about {}.",
          about_.temperaturesStated ? "the curves are not known well enough"
                                    : "the temperatures behind the stated ohms are not known",
          reading);
    return fmt::format(
        "The needle {} and {}, but the curves are not known well enough to call that within limits. "
        "Measure this sender hot, at about {}.",
        worstInWords(), hotInWords(), reading);
  }

  [[nodiscard]] Finding main() const {
    struct Named {
      const char* code;
      Severity severity;
    };
    static constexpr std::array<Named, 6> kNamed{{{"same-family", Severity::note},
                                                  {"within-limits", Severity::note},
                                                  {"trimmed-within-limits", Severity::caution},
                                                  {"reads-high", Severity::caution},
                                                  {"hot-sign-not-settled", Severity::warning},
                                                  {"misreads", Severity::refusal}}};
    Named named = kNamed[static_cast<std::size_t>(out_.electrical)];
    if (out_.electrical == Electrical::undecided && table_.hotSign != HotSign::notSettled)
      named.code = "limits-not-settled";
    if (out_.electrical == Electrical::refused) {
      named.code = "reads-low";
      if (stands_.late == Standing::beyond) named.code = "hot-mark-late";
      if (table_.backwards) named.code = "needle-backwards";
    }
    return {named.code, named.severity, out_.sentence, about_.evidence, about_.source};
  }

  void add(const char* code, Severity severity, std::string text, std::string evidence) {
    out_.findings.push_back({code, severity, std::move(text), std::move(evidence), about_.source});
  }

  void addTrim() {
    if (!trim_ || out_.electrical == Electrical::sameFamily || out_.electrical == Electrical::withinLimits) return;
    if (out_.electrical == Electrical::trimmedWithinLimits) {
      add("trim", Severity::caution,
          fmt::format("Needs {}: best of {} networks of preferred values.", trim_->network.name(),
                      trim_->search.networks),
          "trim search over IEC 60063 values");
      return;
    }
    add("trim-refused", Severity::caution,
        fmt::format("{} would bring it closer, but is refused as a permanent repair.", trim_->network.name()),
        trim_->findings.empty() ? std::string() : trim_->findings.front().sentence);
  }

  void addBoiling() {
    if (!about_.boiling) return;
    Temperature needleHot = hotMark();
    if (const auto* reaches = std::get_if<Reaches>(&table_.hot)) needleHot = reaches->at;
    if (const auto* never = std::get_if<NeverReaches>(&table_.hot)) needleHot = never->curveEnds;
    if (*about_.boiling >= needleHot || std::holds_alternative<PastAlready>(table_.hot)) return;
    add("water-boils-first", Severity::warning,
        fmt::format("Plain water under this cap boils at {}, before the needle reaches the hot mark at a true {}.",
                    point(*about_.boiling), point(needleHot)),
        "cap pressure and saturation temperature of water");
  }

  void addAssumptions() {
    const auto* reaches = std::get_if<Reaches>(&table_.hot);
    if (reaches != nullptr && reaches->extrapolated)
      add("curve-continued", Severity::caution,
          fmt::format("The sender's curve had to be continued to {} to say when the hot mark is reached.",
                      point(reaches->at)),
          about_.evidence);
    if (table_.partial())
      add("band-partial", Severity::caution,
          fmt::format("The sender's curve covers only {} to {} of the band.", point(table_.covered.low),
                      point(table_.covered.high)),
          about_.evidence);
    if (table_.movementAssumed)
      add("movement-assumed", Severity::note,
          "The movement is not known: the gauge is taken to be true for its own family.", about_.evidence);
    if (table_.senderToleranceAssumed)
      add("tolerance-assumed", Severity::note,
          fmt::format("No tolerance of the sender is stated: {:.0f} % of its ohms is assumed.",
                      100 * curve::kAssumedTolerance),
          about_.evidence);
    // What every candidate for this gauge shares decides nothing between them, so it is told apart from the verdict.
    add("shared-uncertainty", Severity::note,
        fmt::format(
            "Whatever sender is fitted, gauge and part tolerance, cluster temperature and location leave ±{} (k = 2).",
            amount(table_.worst.uncertainty.shared)),
        "uncertainty budget, JCGM 100");
  }

  const ErrorTable& table_;
  const std::optional<TrimProposal>& trim_;
  const Circumstances& about_;
  Standings stands_;
  Verdict out_;
};

}  // namespace

std::string_view electricalName(Electrical electrical) {
  static constexpr std::array<std::string_view, 6> kNames{"same family", "within limits", "within limits when trimmed",
                                                          "reads high",  "undecided",     "refused"};
  return kNames[static_cast<std::size_t>(electrical)];
}

Verdict judge(const ErrorTable& asItIs, const std::optional<TrimProposal>& trim, const Limits& limits,
              const Circumstances& circumstances) {
  return Judge(asItIs, trim, limits, circumstances).verdict();
}

std::string_view rankName(Rank rank) {
  static constexpr std::array<std::string_view, 8> kNames{"same family",
                                                          "same family, with pigtail",
                                                          "same family, with bushing",
                                                          "other family, within limits",
                                                          "other family, within limits when trimmed",
                                                          "reads high: offset card",
                                                          "undecided",
                                                          "refused"};
  return kNames[static_cast<std::size_t>(rank)];
}

Rank rankOf(Electrical electrical, bool needsPigtail, bool needsBushing) {
  switch (electrical) {
    case Electrical::sameFamily:
      return needsBushing ? Rank::withBushing : needsPigtail ? Rank::withPigtail : Rank::sameFamily;
    case Electrical::withinLimits:
      return Rank::otherFamilyWithinLimits;
    case Electrical::trimmedWithinLimits:
      return Rank::trimmedWithinLimits;
    case Electrical::readsHigh:
      return Rank::readsHigh;
    case Electrical::undecided:
      return Rank::undecided;
    case Electrical::refused:
      break;
  }
  return Rank::refused;
}

}  // namespace ohmkin::pairing
