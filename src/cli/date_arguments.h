#pragma once
#include <cli/command.h>
#include <workflow/date_engine.h>

/// What a person says about castings, stamp and vehicle, and about what is usual.
namespace ohmkin::cli {

Expected<workflow::DateQuestion> dateQuestion(const Arguments& given);

}  // namespace ohmkin::cli
