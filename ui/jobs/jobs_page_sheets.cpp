#include <desk/sheet_options.h>
#include <jobs/jobs_page.h>
#include <workflow/sheets.h>

/// What is printed of a job.
namespace ohmkin::jobs {

using desk::plain;

namespace {

Expected<printing::Sheets> named(const QString& name, const std::optional<Expected<sheet::Pages>>& pages) {
  if (!pages)
    return ohmkin::refuse("nothing-to-print", name.toStdString(),
                          JobsPage::tr("a sheet that is still being made").toStdString(),
                          JobsPage::tr("a moment's patience").toStdString());
  if (!*pages) return tl::make_unexpected(pages->error());
  return printing::Sheets{name, **pages};
}

}  // namespace

std::string partOf(const workflow::JobView& view) {
  std::string part = view.job.said.part;
  for (auto each = view.documents.rbegin(); each != view.documents.rend() && part.empty(); ++each)
    part = each->kept.part;
  return part;
}

Expected<printing::Sheets> JobsPage::jobSheet() const {
  return named(view_ ? tr("job %1").arg(view_->job.id.value) : tr("job"), jobSheet_);
}

Expected<printing::Sheets> JobsPage::shelfLabel() const {
  return named(view_ ? tr("label %1").arg(plain(partOf(*view_))) : tr("label"), shelfLabel_);
}

/// Of the answer as it was kept; where today's differs it would be another card.
Expected<printing::Sheets> JobsPage::offsetCard() const {
  const auto whyNot = [](const QString& found, const QString& expected) {
    return ohmkin::refuse("nothing-to-print", tr("Offset card").toStdString(), found.toStdString(),
                          expected.toStdString());
  };
  if (today_.empty() || !today_.back().second.now)
    return whyNot(tr("no answer that can be asked again"), tr("an answer kept with the job"));
  const workflow::AnsweredAgain& said = today_.back().second;
  if (said.differs)
    return whyNot(tr("an answer that would differ today"), tr("an answer as it is today: keep it with the job first"));
  const workflow::Answer& answer = *said.now;
  for (const workflow::Candidate& candidate : answer.branches.front().ranked) {
    if (!candidate.recommended()) continue;
    const auto dial = workflow::dialOfCandidate(answer, answer.branches.front(), candidate, settings_.units());
    if (!dial) return tl::make_unexpected(dial.error());
    return printing::Sheets{tr("offset card %1, job %2").arg(plain(candidate.part)).arg(view_->job.id.value),
                            workflow::offsetCardSheet(*dial, desk::todaysSheet(settings_.units()))};
  }
  return whyNot(tr("no sender recommended"), tr("an answer that recommends one"));
}

}  // namespace ohmkin::jobs
