#pragma once
#include <workflow/find_fault.h>
#include <string>

/// A search for a fault in plain text and as JSON.
namespace ohmkin::cli {

std::string faultText(const workflow::FaultFinder& finder, circuit::Symptom symptom,
                      const workflow::FaultAnswer& answer);
std::string faultJson(const workflow::FaultFinder& finder, circuit::Symptom symptom,
                      std::span<const circuit::Answer> seen, const workflow::FaultAnswer& answer);
/// Every test's likeliest outcome under every single fault, beside that of a good circuit.
std::string predictionsText(const workflow::FaultFinder& finder);
std::string predictionsJson(const workflow::FaultFinder& finder);
std::string wiringText(const circuit::WirePlan& plan);
std::string wiringJson(const circuit::WirePlan& plan);

}  // namespace ohmkin::cli
