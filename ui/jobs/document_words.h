#pragma once
#include <quantity/print.h>
#include <workflow/job_work.h>
#include <QStringList>

/// What is kept with a job, in words. Only what stands in it is said: nothing is looked up today.
namespace ohmkin::jobs {

struct DocumentWords {
  enum class Mark { none, fits, withPart, cut, look };  ///< how the answer was, as a shape
  QString kind;                                         ///< "Answer"
  QString made;                                         ///< "25 Nov 2026, by Ann"
  QString headline;                                     ///< the part
  Mark mark = Mark::none;
  QString sentence;
  QStringList lines;  ///< "At the hot mark: 1.8 K late."
  QString warning;    ///< a file that is gone, a text that is not as it was written
};
DocumentWords wordsOf(const workflow::KeptDocument& document, const DisplayUnits& units);

/// "25 Nov 2026" of an ISO 8601 moment in UTC, as the day is here; empty where it is none.
QString dayOf(const std::string& moment);

}  // namespace ohmkin::jobs
