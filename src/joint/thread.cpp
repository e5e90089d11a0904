#include <fmt/format.h>
#include <joint/thread.h>
#include <algorithm>
#include <cmath>
#include <vector>

namespace ohmkin::joint {
namespace {

// Tolerances in millimetres. Published pitches are rounded to 0.001 mm; gauge tolerance of a taper thread is a turn
// either way, a sixteenth of a pitch in diameter, 0.1 mm at these sizes.
constexpr double kSamePitch = 0.002;
constexpr double kSameDiameter = 0.1;
// A judgement: a 1/4 to 1/8 pipe bushing, the thinnest in common use, leaves 0.56 mm.
constexpr double kThinnestBushingWall = 0.5;

/// Height of the thread from root to crest as a part of the pitch: ASME B1.20.1 (max. truncation), ISO 7-1, ISO 68-1
/// external.
double heightOf(const Thread& thread) {
  switch (thread.form) {
    case ThreadForm::npt:
      return 0.800;
    case ThreadForm::bspt:
      return 0.640327;
    case ThreadForm::un:
    case ThreadForm::metric:
      return 0.613435;
  }
  return 0.613435;
}

double depthOf(const Thread& thread) { return heightOf(thread) * inMillimetres(thread.pitch); }

/// ISO 7-1 seals a tapered external thread in a parallel internal one as well; no other form does.
bool tapersDisagree(const Thread& port, const Thread& sender) {
  const bool whitworth = port.form == ThreadForm::bspt && sender.form == ThreadForm::bspt;
  return port.tapered != sender.tapered && !(whitworth && sender.tapered);
}

bool startsByHand(const Thread& a, const Thread& b) {
  const double shallower = std::min(depthOf(a), depthOf(b));
  const double finer = std::min(inMillimetres(a.pitch), inMillimetres(b.pitch));
  const double apart = std::abs(inMillimetres(a.diameter) - inMillimetres(b.diameter));
  const double drift = 2 * std::abs(inMillimetres(a.pitch) - inMillimetres(b.pitch));
  return apart <= shallower && drift <= finer / 2;
}

bool roomForBushing(const Thread& port, const Thread& sender) {
  const double bore = inMillimetres(port.diameter) - 2 * depthOf(port);
  return (bore - inMillimetres(sender.diameter)) / 2 >= kThinnestBushingWall;
}

std::string joined(const std::vector<std::string>& reasons) {
  std::string text;
  for (std::size_t i = 0; i < reasons.size(); ++i) {
    if (i > 0) text += i + 1 == reasons.size() ? " and " : ", ";
    text += reasons[i];
  }
  return text;
}

std::vector<std::string> reasons(const Thread& port, const Thread& sender, const ThreadComparison& c) {
  std::vector<std::string> found;
  if (c.flankDifference != 0)
    found.push_back(fmt::format("their flanks stand at {}° and {}°", sender.flankAngle, port.flankAngle));
  if (std::abs(inMillimetres(c.pitchDifference)) > kSamePitch)
    found.push_back(fmt::format("the pitch is {:.2f} mm out after {} threads",
                                std::abs(inMillimetres(c.pitchErrorOver(kEngagedThreads))), kEngagedThreads));
  if (std::abs(inMillimetres(c.diameterDifference)) > kSameDiameter)
    found.push_back(fmt::format("the sender is {:.2f} mm {}", std::abs(inMillimetres(c.diameterDifference)),
                                c.diameterDifference.value() > 0 ? "larger" : "smaller"));
  if (c.taperDiffers) found.emplace_back("one is tapered, the other parallel");
  return found;
}

std::string sourcesOf(const Thread& a, const Thread& b) {
  if (a.source == b.source || b.source.empty()) return a.source;
  return a.source.empty() ? b.source : a.source + "; " + b.source;
}

}  // namespace

ThreadComparison compare(const Thread& port, const Thread& sender) {
  ThreadComparison c;
  c.pitchDifference = sender.pitch - port.pitch;
  c.diameterDifference = sender.diameter - port.diameter;
  c.flankDifference = sender.flankAngle - port.flankAngle;
  c.taperDiffers = tapersDisagree(port, sender);
  const bool same = c.flankDifference == 0 && !c.taperDiffers &&
                    std::abs(inMillimetres(c.pitchDifference)) <= kSamePitch &&
                    std::abs(inMillimetres(c.diameterDifference)) <= kSameDiameter;
  if (same) c.fit = ThreadFit::fits;
  else if (startsByHand(port, sender)) c.fit = ThreadFit::looksAlikeButDoesNot;
  else c.fit = roomForBushing(port, sender) ? ThreadFit::needsBushing : ThreadFit::doesNotFit;
  return c;
}

Finding threadFinding(const Thread& port, const Thread& sender, const std::string& where) {
  const ThreadComparison c = compare(port, sender);
  Finding finding;
  finding.evidence =
      fmt::format("port {}{}{}, sender {}", port.designation, where.empty() ? "" : " at ", where, sender.designation);
  finding.source = sourcesOf(port, sender);
  switch (c.fit) {
    case ThreadFit::fits:
      finding.code = "thread-fits";
      finding.severity = Severity::note;
      finding.sentence = fmt::format("The {} thread screws straight in.", sender.designation);
      break;
    case ThreadFit::needsBushing:
      finding.code = "thread-needs-bushing";
      finding.severity = Severity::caution;
      finding.sentence =
          fmt::format("Thread {} is smaller than port {}: it needs a bushing.", sender.designation, port.designation);
      break;
    case ThreadFit::looksAlikeButDoesNot:
      finding.code = "thread-looks-alike";
      finding.severity = Severity::warning;
      finding.sentence =
          fmt::format("{} and {} seem to screw together, but {}: it leaks or spoils the threads. Do not force it.",
                      sender.designation, port.designation, joined(reasons(port, sender, c)));
      break;
    case ThreadFit::doesNotFit:
      finding.code = "thread-does-not-fit";
      finding.severity = Severity::refusal;
      finding.sentence = fmt::format("Thread {} does not go into port {}: {}.", sender.designation, port.designation,
                                     joined(reasons(port, sender, c)));
      break;
  }
  return finding;
}

}  // namespace ohmkin::joint
