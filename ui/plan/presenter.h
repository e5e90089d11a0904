#pragma once
#include <plan/line_list.h>
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

QStringList texts(const std::vector<Line>& lines);
/// Lines into questions; what was not understood is noted beside each.
std::vector<workflow::Question> questionsOf(const workflow::Vocabulary& vocabulary, const std::vector<Line>& lines,
                                            QStringList& notes);
/// A line of the catalogue in a year of its own, against two castings; both empty where there is none.
std::pair<std::vector<Line>, std::vector<Line>> exampleOf(const workflow::Vocabulary& vocabulary);

/// A question as a line that reads back as the same question.
QString lineOf(const workflow::Vocabulary& vocabulary, const workflow::Question& question);
/// "'qqq' was not understood and is left out"; empty where all of it was understood.
QString notUnderstood(const QString& text, const workflow::TextReading& reading);

}  // namespace ohmkin::plan
