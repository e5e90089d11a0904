#pragma once
#include <exchange/table_definition.h>
#include <string>
#include <string_view>

/// Spreadsheets run what begins like a formula (OWASP, "CSV Injection": = + - @ tab, carriage return). An apostrophe
/// before it makes it text to them; taken off again, every text comes back as it was, those with apostrophes too.
namespace ohmkin::exchange {

/// True where cells of that field are guarded: free texts. A text of a set form (numbers separated by blanks) is no
/// formula and stays as the form has it; numbers are numbers.
bool isGuarded(const FieldDefinition& field);

std::string guarded(std::string_view text);
std::string_view unguarded(std::string_view text);  ///< what guarded() was given

}  // namespace ohmkin::exchange
