#include <desk/catalogue_thread.h>
#include <fault/presenter.h>
#include <QCoreApplication>
#include <algorithm>

/// What the search says of the parts, laid on the places of the drawing.
namespace ohmkin::fault {
namespace {

using circuit::Part;

constexpr double kWorthAWord = 0.1;  ///< "possible": less is not marked in the drawing

QString tr(const char* text) { return QCoreApplication::translate("Fault", text); }

/// Short enough to stand under a symbol.
QString placeName(Place place, bool regulated) {
  switch (place) {
    case Place::battery:
      return tr("battery");
    case Place::keySwitch:
      return tr("key switch");
    case Place::fuse:
      return tr("fuse");
    case Place::feed:
      return tr("feed wire");
    case Place::feedPin:
      return tr("board, feed pin");
    case Place::regulator:
      return tr("regulator");
    case Place::gauge:
      return regulated ? tr("gauge, heater") : tr("gauge, feed coil");
    case Place::feedShunt:
      return tr("shunt, feed to sender");
    case Place::leadPin:
      return tr("board, lead pin");
    case Place::lead:
      return tr("lead");
    case Place::connector:
      return tr("connector");
    case Place::sender:
      return tr("sender");
    case Place::thread:
      return tr("thread");
    case Place::block:
      return tr("engine, coolant");
    case Place::strap:
      return tr("engine strap");
    case Place::groundCoil:
      return tr("gauge, ground coil");
    case Place::groundShunt:
      return tr("shunt, sender to ground");
    case Place::groundPin:
      return regulated ? tr("housing ground") : tr("board, ground pin");
    case Place::clusterGround:
      return tr("cluster ground");
    case Place::bodyGround:
      return tr("body ground");
    case Place::boardLeak:
      return tr("damp on the board");
    case Place::leadToChassis:
      return tr("lead to chassis");
  }
  return {};
}

/// What is wrong with the coolant is no fault of the sender.
std::optional<Place> placeOf(const circuit::Fault& fault) {
  if (fault.change == circuit::Change::coolant || fault.change == circuit::Change::tip ||
      fault.change == circuit::Change::level)
    return Place::block;
  return fault::placeOf(fault.part);
}

}  // namespace

std::optional<Place> placeOf(Part part) {
  switch (part) {
    case Part::battery:
      return Place::battery;
    case Part::keySwitch:
      return Place::keySwitch;
    case Part::fuse:
      return Place::fuse;
    case Part::feed:
      return Place::feed;
    case Part::feedTrack:
      return Place::feedPin;
    case Part::regulator:
      return Place::regulator;
    case Part::regulatorCase:
    case Part::groundTrack:
      return Place::groundPin;
    case Part::feedCoil:
      return Place::gauge;
    case Part::groundCoil:
      return Place::groundCoil;
    case Part::feedShunt:
      return Place::feedShunt;
    case Part::groundShunt:
      return Place::groundShunt;
    case Part::clusterGround:
      return Place::clusterGround;
    case Part::bodyGround:
      return Place::bodyGround;
    case Part::senderTrack:
      return Place::leadPin;
    case Part::lead:
      return Place::lead;
    case Part::connector:
      return Place::connector;
    case Part::sender:
      return Place::sender;
    case Part::thread:
      return Place::thread;
    case Part::strap:
      return Place::strap;
    case Part::leadToChassis:
      return Place::leadToChassis;
    case Part::boardLeak:
      return Place::boardLeak;
    default:
      return std::nullopt;
  }
}

OpenedCircuit openedOf(const Standing& standing, std::optional<std::size_t> test) {
  const circuit::GaugeCircuit& facts = standing.finder.circuit();
  const std::vector<circuit::Fault>& faults = standing.finder.predictions().faults().faults;
  OpenedCircuit opened;
  opened.regulated = facts.regulated();
  opened.feedShunt = facts.facts().feedShunt.has_value();
  opened.groundShunt = facts.facts().groundShunt.has_value();
  for (std::size_t i = 0; i < kPlaces; ++i) opened.places[i].name = placeName(static_cast<Place>(i), opened.regulated);
  const bool done = !standing.session.helped.empty();
  for (const circuit::Suspect& suspect : standing.answer.posterior.faults)
    if (const auto place = placeOf(faults[suspect.fault]); place && !done)
      opened.at(*place).suspicion += suspect.probability;
  for (PartMark& mark : opened.places) {
    mark.suspicion = std::min(mark.suspicion, 1.0);
    if (mark.suspicion >= kWorthAWord)
      mark.likelihood = desk::plain(std::string(workflow::likelihoodWords(mark.suspicion)));
  }
  if (!test) return opened;
  const circuit::TradeTest& t = standing.finder.predictions().tests().tests[*test];
  for (const circuit::Part part : t.examines)
    if (const auto place = fault::placeOf(part)) opened.at(*place).examined = true;
  // The engine's temperature is no part of the network, and the sender has no fault in it.
  if (t.measure == circuit::Measure::coolant) {
    opened.at(Place::sender).examined = false;
    opened.at(Place::block).examined = true;
  }
  return opened;
}

}  // namespace ohmkin::fault
