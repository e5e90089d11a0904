#pragma once
#include <catalog/catalogue.h>
#include <cli/command.h>
#include <quantity/print.h>
#include <workflow/bench_work.h>

/// What is typed at the bench, read.
namespace ohmkin::cli {

/// "1600 m", "5280 ft"; a bare number is refused, since the two units differ by three.
Expected<Length> parseAltitude(const std::string& text, std::string_view where);
/// "1013 hPa", "29.9 inHg", "760 mmHg", "101.3 kPa", "1013 mbar".
Expected<Pressure> parseBarometer(const std::string& text, std::string_view where);

/// "0.3" or "0.3,0.05": the leads held together, and how well that is known.
Expected<bench::LeadZero> leadsGiven(const std::string& text);
/// "yes" for a pressure reduced to sea level, "no".
Expected<bench::Reduced> reducedGiven(const std::string& text);

/// The words: "95C=51", "ice=920", "boil=48.2", "95C=OL"; and all options but --keep.
Expected<workflow::BenchQuestion> benchQuestion(const Arguments& given, const catalog::Catalogue& catalogue,
                                                const DisplayUnits& units);

}  // namespace ohmkin::cli
