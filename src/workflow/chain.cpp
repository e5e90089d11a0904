#include <fmt/format.h>
#include <quantity/capitalised.h>
#include <workflow/chain.h>
#include <cstdlib>

namespace ohmkin::workflow {
namespace {

constexpr int kSameEngineYears = 1;  // a head cast the year before the model year is the usual thing

int yearOf(Date day) { return static_cast<int>(std::chrono::year_month_day{day}.year()); }

std::string years(int count) { return fmt::format("{} year{}", count, count == 1 ? "" : "s"); }

}  // namespace

Link gaugeLink(const DashChoice& dash, const std::string& familyName, const gauge::Gauge* gauge,
               const DisplayUnits& units) {
  Link link{"Dash gauge", "not known", "", "look at the dash", Basis::notSeen};
  if (dash.cluster && !dash.gauge)
    return {"Dash gauge", "warning lamp", "no gauge in this cluster", "known from the cluster", dash.basis};
  if (!dash.gauge) return link;
  link.headline = familyName;
  link.detail = dash.gauge->movement == catalog::MovementKind::unknown
                    ? "movement not known"
                    : std::string(catalog::text(dash.gauge->movement));
  if (gauge != nullptr) {
    const TemperatureSpan marks = gauge->dial().marked();
    link.detail += fmt::format(" · {:.0f}–{}", inUnit(marks.low, units.temperature), print(marks.high, units));
  }
  link.basis = dash.basis;
  link.basisText = dash.basis == Basis::seen    ? "as you named it"
                   : dash.basis == Basis::known ? "known from the cluster"
                                                : "one of several clusters";
  return link;
}

Link leadLink(const DashChoice& dash, const std::string& wireEnd, bool seen) {
  Link link{"Lead", "wire", "", "", Basis::notSeen};
  if (dash.cluster && dash.cluster->leadAwg) {
    link.headline = fmt::format("{} AWG", *dash.cluster->leadAwg);
    if (dash.cluster->leadLength) link.headline += ", " + print(*dash.cluster->leadLength);
  }
  if (wireEnd.empty()) {
    link.detail = "terminal not known";
    link.basisText = "not seen: look at the wire end";
    return link;
  }
  link.detail = wireEnd;
  link.basis = seen ? Basis::seen : Basis::inferred;
  link.basisText = seen ? "as you saw it" : "as it left the works; look";
  return link;
}

Link portLink(const PortChoice& port) {
  Link link{"Head port", "not known", "", "look at the casting number", Basis::notSeen};
  if (port.casting && port.casting->role != catalog::CastingRole::head)
    link.title = capitalised(std::string(catalog::text(port.casting->role))) + " port";
  if (!port.thread) return link;
  link.headline = port.thread->text;
  if (port.port) link.detail = port.port->location;
  link.basis = port.portBasis;
  switch (port.portBasis) {
    case Basis::seen:
      link.basisText = "as you saw it";
      break;
    case Basis::conflict:
      link.basisText = "not what the casting has";
      break;
    default:
      link.basisText = port.casting ? "casting " + port.casting->id.text : "from the engine family";
      break;
  }
  return link;
}

Link engineLink(const PortChoice& port) {
  Link link{"Engine", "not known", "", "look at the casting", Basis::notSeen};
  if (!port.engine) return link;
  link.headline = port.engine->name;
  link.detail = port.made.words.empty() ? port.engine->makeName : port.made.words;
  link.basis = port.engineBasis;
  link.basisText = port.engineBasis == Basis::known ? "from the casting" : "as fitted new to this line";
  return link;
}

Joint eraJoint(const PortChoice& port, const Question& question) {
  Joint joint{JointState::look, "date not known", port.made.findings};
  const std::optional<int> vehicle = question.built  ? std::optional(yearOf(*question.built))
                                     : question.year ? std::optional(question.year->value)
                                                     : std::nullopt;
  if (!vehicle || !port.made.produced) return joint;
  const auto& [first, last] = *port.made.produced;
  // A span of years says so much as its nearer end does.
  const int younger = first > *vehicle ? first - *vehicle : last < *vehicle ? last - *vehicle : 0;
  const bool exact = first == last;
  const std::string atLeast = exact ? "" : "at least ";
  joint.state = JointState::fits;
  if (std::abs(younger) <= kSameEngineYears) {
    joint.words =
        first == last || last - first <= kSameEngineYears ? "of the vehicle's time" : "may be the vehicle's first";
    return joint;
  }
  const std::string_view comparison = younger > 0 ? "younger" : "older";
  // Short, since it stands on a joint: "later engine, 13+ years"; the finding says it in full.
  const int apart = std::abs(younger);
  joint.words = fmt::format("{} engine, {}", younger > 0 ? "later" : "earlier",
                            exact ? years(apart) : fmt::format("{}+ years", apart));
  joint.findings.push_back({younger > 0 ? "engine-later" : "engine-earlier", Severity::note,
                            fmt::format("The engine is {}{} {} than the vehicle: the head decides thread and place, "
                                        "the dash decides the resistance.",
                                        atLeast, years(std::abs(younger)), comparison),
                            port.made.words, kCommonPractice});
  return joint;
}

}  // namespace ohmkin::workflow
