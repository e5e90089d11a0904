#pragma once
#include <catalog/catalogue.h>
#include <cli/command.h>
#include <quantity/print.h>
#include <workflow/bench_work.h>

/// What is typed at the bench, read.
namespace ohmkin::cli {

/// "0.3" or "0.3,0.05": the leads held together, and how well that is known.
Expected<bench::LeadZero> leadsGiven(const std::string& text);
/// "yes" for a pressure reduced to sea level, "no".
Expected<bench::Reduced> reducedGiven(const std::string& text);

/// The words: "95C=51", "ice=920", "boil=48.2", "95C=OL"; and all options but --keep.
Expected<workflow::BenchQuestion> benchQuestion(const Arguments& given, const catalog::Catalogue& catalogue,
                                                const DisplayUnits& units);

}  // namespace ohmkin::cli
