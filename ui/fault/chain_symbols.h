#pragma once
#include <fault/opened_chain.h>
#include <QPainter>

/// The symbols of the opened chain (after IEC 60617 where it has one), each on a wire from left to right.
namespace ohmkin::fault {

/// Half the length a symbol takes on its wire.
double symbolHalf(Place place);
/// The symbol alone, centred; what is suspected is drawn heavier, in the warning's ink on its wash.
void drawSymbol(QPainter& painter, const QPointF& centre, Place place, bool heater, double suspicion);
/// Chassis: three lines under a wire that comes from above.
void drawChassis(QPainter& painter, const QPointF& at);
/// How likely, as a disc filled from the top like a clock, so that it is told without colour.
void drawLikelihood(QPainter& painter, const QPointF& centre, double radius, double probability);
double wireWidth();

}  // namespace ohmkin::fault
