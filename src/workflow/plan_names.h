#pragma once
#include <catalog/catalogue.h>
#include <workflow/question.h>
#include <string>

/// A plan's sides as a person calls them.
namespace ohmkin::workflow {

/// "1968 Ridgeway utility, gauge package"; what the catalogue does not know stands as it was typed.
std::string dashName(const catalog::Catalogue& catalogue, const Question& dash);
/// "Ridgeway inline six, 3.9 l, head casting 30418, dated H 22 1".
std::string engineName(const catalog::Catalogue& catalogue, const Question& engine);

}  // namespace ohmkin::workflow
