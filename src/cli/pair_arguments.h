#pragma once
#include <cli/command.h>
#include <quantity/print.h>
#include <workflow/pair.h>

/// What pair, trim and dial share: the two sides, the band, and how a pair is shown.
namespace ohmkin::cli {

/// --gauge, --sender, --band, in front of a command's own.
std::vector<OptionSpec> withPairOptions(std::vector<OptionSpec> own);
Expected<workflow::PairQuestion> pairQuestion(const Arguments& arguments, const DisplayUnits& units);
std::string pairText(const workflow::PairAnswer& answer, const DisplayUnits& units);

}  // namespace ohmkin::cli
