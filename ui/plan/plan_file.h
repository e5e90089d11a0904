#pragma once
#include <finding/refusal.h>
#include <workflow/plan.h>
#include <QString>

/// A plan's question as a file of the person's.
namespace ohmkin::plan {

/// The reason why not, empty where it was written. What stood there before stays where it was not.
QString writePlan(const workflow::PlanQuestion& question, const QString& file);
/// Or the reason why not, as a sentence.
tl::expected<workflow::PlanQuestion, QString> readPlan(const QString& file);

}  // namespace ohmkin::plan
