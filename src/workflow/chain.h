#pragma once
#include <workflow/answer.h>
#include <workflow/resolve_dash.h>
#include <workflow/resolve_port.h>

/// The links of the chain that do not depend on the sender chosen, in words.
namespace ohmkin::workflow {

Link gaugeLink(const DashChoice& dash, const std::string& familyName, const gauge::Gauge* gauge,
               const DisplayUnits& units);
Link leadLink(const DashChoice& dash, const std::string& wireEnd, bool seen);
Link portLink(const PortChoice& port);
Link engineLink(const PortChoice& port);

/// Port – engine: the vehicle's first engine, or a later one.
Joint eraJoint(const PortChoice& port, const Question& question);

}  // namespace ohmkin::workflow
