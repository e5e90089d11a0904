#pragma once
#include <finding/refusal.h>
#include <workflow/answer.h>
#include <string>
#include <string_view>

/// Question and answer of a match as text: what --json prints, and what is kept with a job.
namespace ohmkin::workflow {

/// JSON, "schema": "ohmkin.match"; keys in DEVELOPERS.md.
std::string matchDocument(const Answer& answer);

/// JSON, "schema": "ohmkin.question", "version": 1; everything of the question.
std::string questionDocument(const Question& question);
/// Refuses what is no such document, a newer version, more than 64 KiB, values of another kind or out of range.
Expected<Question> readQuestionDocument(std::string_view text, std::string_view where);

}  // namespace ohmkin::workflow
