#include <desk/catalogue_thread.h>
#include <match/wording.h>
#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace ohmkin::match {
namespace {

using workflow::Branch;
using workflow::Candidate;
using workflow::JointState;

}  // namespace

QString tr(const char* text) { return QCoreApplication::translate("Match", text); }

QString plain(const std::string& text) { return desk::shown(text); }

bool recommendedTrim(const Candidate& candidate) {
  return candidate.rank == pairing::Rank::trimmedWithinLimits && candidate.trim != nullptr;
}

bool misreads(const Candidate& candidate) {
  return candidate.electrical.state == JointState::cut && !recommendedTrim(candidate);
}

QString nameOf(const Candidate& candidate) {
  QString name = plain(candidate.part);
  if (!candidate.lot.empty()) name += tr(", lot %1").arg(plain(candidate.lot));
  if (!recommendedTrim(candidate)) return name;
  const pairing::TrimNetwork& network = candidate.trim->network;
  if (network.hasSeries()) name += QStringLiteral(" + ") + plain(printNominal(network.seriesOhms()));
  if (network.hasParallel()) name += QStringLiteral(" ∥ ") + plain(printNominal(network.parallelOhms()));
  if (network.topology() == pairing::Topology::feedToSender)
    name += QStringLiteral(" + ") + plain(printNominal(network.feedOhms()));
  return name;
}

const Candidate* fittedNow(const Branch& branch) {
  const auto found =
      std::find_if(branch.ranked.begin(), branch.ranked.end(), [](const Candidate& c) { return c.fittedNow; });
  return found == branch.ranked.end() ? nullptr : &*found;
}

const pairing::ErrorTable* fittedErrors(const Candidate& candidate) {
  if (recommendedTrim(candidate)) return &candidate.trim->after;
  return candidate.errors ? &*candidate.errors : nullptr;
}

QString hotWords(const pairing::HotWarning& hot, const DisplayUnits& units) {
  if (const auto* reaches = std::get_if<pairing::Reaches>(&hot)) {
    const double late = inKelvin(reaches->late);
    const QString amount = plain(printAmount(reaches->late, units));
    if (std::abs(late) < 0.5) return tr("The hot mark comes on time.");
    return late > 0 ? tr("The hot mark comes %1 late.").arg(amount) : tr("The hot mark comes %1 early.").arg(amount);
  }
  if (const auto* never = std::get_if<pairing::NeverReaches>(&hot))
    return tr("The needle is still below the hot mark at %1, where the sender's curve ends.")
        .arg(plain(print(never->curveEnds, units)));
  return tr("The needle is past the hot mark already where the sender's curve begins.");
}

QString errorsInWords(const Candidate& candidate, const DisplayUnits& units) {
  const pairing::ErrorTable* errors = fittedErrors(candidate);
  if (errors == nullptr) return tr("%1 has no curve to hold against this gauge.").arg(nameOf(candidate));
  const pairing::Extreme& worst = errors->worst;
  QString words = tr("At worst %1 ± %2 at %3 (k = 2).")
                      .arg(plain(printDifference(worst.error, units)),
                           plain(printAmount(worst.uncertainty.total(), units)), plain(print(worst.at, units)));
  words += QLatin1Char(' ') + hotWords(errors->hot, units);
  if (errors->partial())
    words += QLatin1Char(' ') +
             tr("Its curve covers only %1 to %2.")
                 .arg(plain(print(errors->covered.low, units)), plain(print(errors->covered.high, units)));
  return words;
}

}  // namespace ohmkin::match
