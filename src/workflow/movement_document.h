#pragma once
#include <finding/refusal.h>
#include <gauge/movement.h>
#include <string>
#include <string_view>

/// A measured movement as a file: what `ohmkin movement --json` writes and pair, trim and dial read again.
namespace ohmkin::workflow {

/// The law's numbers as a JSON object: angles in degrees clockwise from straight up, ohms, volts.
std::string movementLaw(const gauge::Movement& movement);

/// `where` is the file's name, for messages. Refuses what is no such document, a newer version, numbers missing or out
/// of range, and more than 1 MiB.
Expected<gauge::Movement> readMovementDocument(std::string_view text, std::string_view where);

}  // namespace ohmkin::workflow
