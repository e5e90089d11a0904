#include <fmt/format.h>
#include <joint/port.h>
#include <algorithm>

namespace ohmkin::joint {
namespace {

// "20 lbf·ft (27.1 N·m) is too much for a small brass taper thread" is the trade's word; what counts as small is our
// judgement: up to the 1/4 inch pipe size.
constexpr double kTooMuchForSmallTaper = 27.0;  // N·m
constexpr double kSmallTaper = 14.0;            // mm

Finding screwFinding(std::string code, Severity severity, std::string sentence, const Port& port,
                     const SenderBody& sender, std::string source) {
  return {std::move(code), severity, std::move(sentence), fmt::format("{}, sender {}", port.where, sender.part),
          std::move(source)};
}

const Bushing* bushingFor(const Thread& port, const Thread& sender, std::span<const Bushing> bushings) {
  const Bushing* best = nullptr;
  for (const Bushing& bushing : bushings) {
    if (bushing.port != port.designation || bushing.sender != sender.designation) continue;
    if (best == nullptr || bushing.immersionLost < best->immersionLost) best = &bushing;
  }
  return best;
}

void takeBushing(ScrewJudgement& judgement, const Port& port, const SenderBody& sender, const Bushing& bushing) {
  judgement.fit = ScrewFit::withBushing;
  judgement.bushing = bushing.id;
  judgement.immersionLost = bushing.immersionLost;
  judgement.findings.push_back(screwFinding(
      "thread-with-bushing", Severity::caution,
      fmt::format("Thread {} in port {}: add bushing {}; the tip sits {} further out.", sender.thread->designation,
                  port.thread->designation, bushing.id, print(bushing.immersionLost)),
      port, sender, bushing.source));
}

void judgeThread(ScrewJudgement& judgement, const Port& port, const SenderBody& sender,
                 std::span<const Bushing> bushings) {
  if (!port.thread || !sender.thread) {
    judgement.findings.push_back(screwFinding(
        "thread-not-seen", Severity::note,
        port.thread ? "The thread of this sender is not known: hold it against a gauge."
                    : "The thread of the port is not known: look at the sender that comes out, or at the port.",
        port, sender, port.thread ? sender.source : port.source));
    return;
  }
  const ThreadFit fit = compare(*port.thread, *sender.thread).fit;
  const Bushing* bushing = fit == ThreadFit::fits ? nullptr : bushingFor(*port.thread, *sender.thread, bushings);
  if (fit == ThreadFit::looksAlikeButDoesNot || bushing == nullptr)
    judgement.findings.push_back(threadFinding(*port.thread, *sender.thread, port.where));
  if (bushing != nullptr) {
    takeBushing(judgement, port, sender, *bushing);
    return;
  }
  judgement.fit = fit == ThreadFit::fits                   ? ScrewFit::fits
                  : fit == ThreadFit::looksAlikeButDoesNot ? ScrewFit::looksAlike
                                                           : ScrewFit::doesNotFit;
  if (fit == ThreadFit::needsBushing)
    judgement.findings.push_back(screwFinding("bushing-not-known", Severity::refusal,
                                              fmt::format("No bushing is known from port {} to thread {}.",
                                                          port.thread->designation, sender.thread->designation),
                                              port, sender, port.source));
}

void judgeReach(ScrewJudgement& judgement, const Port& port, const SenderBody& sender) {
  if (!sender.reach) return;
  const auto refuse = [&](std::string code, std::string sentence) {
    judgement.fit = ScrewFit::doesNotFit;
    judgement.findings.push_back(
        screwFinding(std::move(code), Severity::refusal, std::move(sentence), port, sender, port.source));
  };
  const Length lost = judgement.immersionLost.value_or(millimetres(0));
  const Length inside = *sender.reach - lost;
  if (port.longestReach && inside > *port.longestReach)
    refuse("reach-too-long",
           fmt::format("It reaches {} in, {} more than this port allows: it would strike the casting.", print(inside),
                       print(inside - *port.longestReach)));
  if (const auto wet = immersion(port, sender, lost); wet && wet->value() <= 0)
    refuse(
        "reach-too-short",
        fmt::format("Its tip stays {} inside the boss, out of the coolant: the needle would read low.", print(-*wet)));
}

void judgeSeal(ScrewJudgement& judgement, const Port& port, const SenderBody& sender) {
  if (!sender.thread) return;
  judgement.findings.push_back(
      sender.thread->tapered
          ? screwFinding("seals-on-thread", Severity::note, "A tapered thread seals on itself.", port, sender,
                         sender.thread->source)
          : screwFinding("needs-washer", Severity::caution,
                         "A parallel thread does not seal by itself: use a new washer on a clean seat.", port, sender,
                         sender.thread->source));
}

void judgeGround(ScrewJudgement& judgement, const Port& port, const SenderBody& sender) {
  if (!sender.groundsThroughCase) {
    judgement.findings.push_back(screwFinding("ground-by-wire", Severity::note,
                                              "This sender grounds by its own wire, not by its thread.", port, sender,
                                              sender.source));
    return;
  }
  judgement.findings.push_back(screwFinding("sealant-on-ground", Severity::caution,
                                            judgement.fit == ScrewFit::withBushing
                                                ? "It grounds through its thread and the bushing's: spare with "
                                                  "sealant, no tape, and measure hex to battery ground; ohms there "
                                                  "read cold."
                                                : "It grounds through its thread: spare with sealant, no tape, and "
                                                  "measure hex to battery ground; ohms there read cold.",
                                            port, sender, kCommonPractice));
}

void judgeTightening(ScrewJudgement& judgement, const Port& port, const SenderBody& sender, const DisplayUnits& units) {
  if (sender.hex)
    judgement.findings.push_back(
        screwFinding("hex", Severity::note,
                     fmt::format("Hex {} across flats; turn it by the hex, never by the body.", print(*sender.hex)),
                     port, sender, sender.source));
  if (!sender.thread || !sender.torqueHigh) return;
  const Torque low = sender.torqueLow.value_or(*sender.torqueHigh);
  judgement.findings.push_back(torqueFinding(*sender.thread, {low, *sender.torqueHigh, sender.source}, units));
}

}  // namespace

ScrewJudgement judgeScrew(const Port& port, const SenderBody& sender, std::span<const Bushing> bushings,
                          const DisplayUnits& units) {
  ScrewJudgement judgement;
  judgeThread(judgement, port, sender, bushings);
  if (judgement.fit == ScrewFit::doesNotFit || judgement.fit == ScrewFit::looksAlike) return judgement;
  judgeReach(judgement, port, sender);
  if (judgement.fit == ScrewFit::doesNotFit) return judgement;
  judgeSeal(judgement, port, sender);
  judgeGround(judgement, port, sender);
  judgeTightening(judgement, port, sender, units);
  return judgement;
}

std::optional<Length> immersion(const Port& port, const SenderBody& sender, Length immersionLost) {
  if (!port.depth || !sender.reach) return std::nullopt;
  return *sender.reach - immersionLost - *port.depth;
}

Finding torqueFinding(const Thread& thread, const TorqueRange& range, const DisplayUnits& units) {
  const bool smallTaper = thread.tapered && inMillimetres(thread.diameter) <= kSmallTaper;
  if (smallTaper && inNewtonMetres(range.high) >= kTooMuchForSmallTaper)
    return {"torque-too-much", Severity::warning,
            fmt::format("{} is too much for a small brass taper thread: it shears or cracks the boss.",
                        print(range.high, units)),
            fmt::format("thread {}, figure from {}", thread.designation, range.source.empty() ? "you" : range.source),
            kCommonPractice};
  const std::string span = print(range.low, units) == print(range.high, units)
                               ? print(range.high, units)
                               : fmt::format("{} to {}", print(range.low, units), print(range.high, units));
  return {"torque", Severity::note,
          thread.tapered ? fmt::format("Tighten until it seals, at most {}.", print(range.high, units))
                         : fmt::format("Tighten to {}.", span),
          fmt::format("thread {}, {}", thread.designation, span), range.source};
}

}  // namespace ohmkin::joint
