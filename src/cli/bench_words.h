#pragma once
#include <bench/acceptance.h>
#include <cli/command.h>
#include <cli/json_values.h>
#include <quantity/print.h>
#include <workflow/bench_families.h>
#include <string>
#include <vector>

/// What import and bench both say: whose curve it is, and findings.
namespace ohmkin::cli {

/// "! …" for a warning, "- …" for the rest, wrapped.
std::string findingLines(const std::vector<Finding>& findings, std::size_t indent);

/// The most probable families and "none of these", a line.
std::string whoseText(const bench::Identification& whose, const workflow::BenchFamilies& families);
Json json(const bench::Identification& whose, const workflow::BenchFamilies& families);

/// --who, else the name the person is logged in by.
std::string whoIsAsking(const Arguments& arguments);
/// The use case names the fields of its form; at the terminal they are options.
Refusal asBenchOption(Refusal refusal);

}  // namespace ohmkin::cli
