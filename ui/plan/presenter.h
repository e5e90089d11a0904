#pragma once
#include <plan/plan_grid.h>
#include <quantity/print.h>
#include <workflow/plan.h>
#include <workflow/question_text.h>
#include <workflow/vocabulary.h>

/// From what the plan use case answers to what the page shows. Chooses words and shapes; no rule lives here.
namespace ohmkin::plan {

GridPicture gridOf(const workflow::Plan& plan, const QStringList& dashes, const QStringList& engines,
                   const DisplayUnits& units);
QString planAsText(const workflow::Plan& plan, const QStringList& dashes, const QStringList& engines,
                   const DisplayUnits& units);

/// A question as a line that reads back as the same question.
QString lineOf(const workflow::Vocabulary& vocabulary, const workflow::Question& question);
/// "not understood: qqq"; empty where all of it was.
QString notUnderstood(const QString& text, const workflow::TextReading& reading);

}  // namespace ohmkin::plan
