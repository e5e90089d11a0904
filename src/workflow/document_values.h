#pragma once
#include <finding/finding.h>
#include <finding/refusal.h>
#include <pairing/trim_proposal.h>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

/// Not for headers of this room: who includes it links nlohmann_json. The shared vocabulary of --json and of kept
/// documents: keys are stable, temperatures in °C end in _c, differences in _k, resistances in _ohm.
namespace ohmkin::workflow::documents {

using Json = nlohmann::ordered_json;

/// {"schema": NAME, "version": N}: the top of every document.
Json document(std::string_view schema, int version);
/// Indented, a line break at the end; invalid UTF-8 from outside is replaced, never thrown at.
std::string text(const Json& json);
/// How deep objects and lists lie within one another, without reading the text as JSON: what is nested without end is
/// refused before anything of it is built.
int depthOf(std::string_view json);
/// The text under a key of an object; empty where there is none.
std::string textOf(const Json& json, const char* key);

Json json(const Finding& finding);
Json json(const std::vector<Finding>& findings);
Json json(const Refusal& refusal);
Json json(const gauge::Reading& reading);
Json json(const pairing::HotWarning& hot);
Json json(const pairing::ErrorTable& table);
Json json(const pairing::TrimNetwork& network);
Json json(const pairing::TrimProposal& proposal);

}  // namespace ohmkin::workflow::documents
