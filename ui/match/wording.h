#pragma once
#include <quantity/print.h>
#include <workflow/answer.h>
#include <QString>

/// What every part of the page says alike: names of senders, and their errors in a sentence. Chooses words; computes
/// nothing of its own.
namespace ohmkin::match {

/// Words of the page that no widget owns, in the language chosen.
QString tr(const char* text);
QString plain(const std::string& text);

/// "BR-2215", or "AM-4107 + 510 Ω" where resistors go with it.
QString nameOf(const workflow::Candidate& candidate);
bool misreads(const workflow::Candidate& candidate);
bool recommendedTrim(const workflow::Candidate& candidate);
/// The one that is in the head now; null where none is known or likely.
const workflow::Candidate* fittedNow(const workflow::Branch& branch);

/// As it would be fitted: with its resistors where those are what is recommended. Null where it has no curve.
const pairing::ErrorTable* fittedErrors(const workflow::Candidate& candidate);
/// How late the hot mark comes.
QString hotWords(const pairing::HotWarning& hot, const DisplayUnits& units);
/// Worst error and where, how late the hot mark comes: the plot in words.
QString errorsInWords(const workflow::Candidate& candidate, const DisplayUnits& units);

}  // namespace ohmkin::match
