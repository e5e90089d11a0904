#include <circuit/gauge_circuit.h>
#include <circuit/named.h>

#include <algorithm>

namespace ohmkin::circuit {
namespace {

constexpr std::array<Named, kParts> kNames{{
    {"battery", "the battery"},
    {"key-switch", "the key switch"},
    {"fuse", "the fuse"},
    {"feed", "the feed wire"},
    {"feed-track", "the feed's track on the board"},
    {"regulator", "the regulator"},
    {"regulator-case", "the ground of the regulator's housing"},
    {"feed-coil", "the gauge's feed coil or heater"},
    {"ground-coil", "the gauge's ground coil"},
    {"feed-shunt", "the shunt from feed to sender post"},
    {"ground-shunt", "the shunt from sender to ground post"},
    {"ground-track", "the gauge's ground track on the board"},
    {"cluster-ground", "the ground of the cluster"},
    {"body-ground", "the ground of the body"},
    {"sender-track", "the lead's track and pin on the board"},
    {"lead", "the lead"},
    {"connector", "the connector at the sender"},
    {"sender", "the sender"},
    {"thread", "the sender's thread"},
    {"strap", "the engine's ground strap"},
    {"lead-to-chassis", "the lead's insulation"},
    {"board-leak", "the board's insulation"},
    {"lamps", "the lamps of the cluster"},
    {"engine-load", "the ignition"},
    {"body-load", "other loads on the body"},
    {"other-feed-coil", "the second gauge's feed coil or heater"},
    {"other-ground-coil", "the second gauge's ground coil"},
    {"other-sender", "the second gauge's sender"},
    {"probe", "a wire from the unplugged lead to the battery post"},
    {"box", "a resistor from the gauge's sender post to the battery post"},
    {"ground-jumper", "a wire from the gauge's ground to the battery post"},
    {"direct-feed", "a wire from the battery to the gauge's feed post"},
    {"direct-lead", "a wire from the gauge's sender post to the sender"},
}};

constexpr std::array<std::string_view, kPosts> kPostCodes{
    "earth",      "battery",      "ignition",   "fused",    "board-feed",      "regulator-in",
    "gauge-feed", "gauge-sender", "board-lead", "lead-end", "sender-terminal", "hex",
    "engine",     "gauge-ground", "cluster",    "body",     "other-sender",    "regulator-case"};

}  // namespace

std::string_view partCode(Part part) { return kNames[static_cast<std::size_t>(part)].code; }
std::string_view partName(Part part) { return kNames[static_cast<std::size_t>(part)].name; }

std::optional<Part> partOf(std::string_view code) { return calledBy<Part>(kNames, code); }

std::optional<Post> postOf(std::string_view code) {
  const auto* found = std::find(kPostCodes.begin(), kPostCodes.end(), code);
  if (found == kPostCodes.end()) return std::nullopt;
  return static_cast<Post>(found - kPostCodes.begin());
}

}  // namespace ohmkin::circuit
