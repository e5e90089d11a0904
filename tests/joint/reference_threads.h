#pragma once
#include "reference_table.h"

#include <joint/thread.h>
#include <map>
#include <stdexcept>
#include <string>

/// The published threads of tests/data/threads.csv as values of the joint room.
namespace ohmkin::test {

inline joint::ThreadForm formOf(const std::string& text) {
  if (text.starts_with("NPT")) return joint::ThreadForm::npt;
  if (text.starts_with("BSPT")) return joint::ThreadForm::bspt;
  if (text.starts_with("UN")) return joint::ThreadForm::un;
  if (text.starts_with("M ")) return joint::ThreadForm::metric;
  throw std::runtime_error("unknown form " + text);
}

/// Diameter at the crest where the thread is gauged: E1 + 0.8 p for NPT (ASME B1.20.1), else the tabulated major
/// diameter.
inline double gaugedDiameter(const ReferenceTable& table, std::size_t row) {
  if (!table.text(row, "form").starts_with("NPT")) return table.number(row, "major_or_od_mm");
  return table.number(row, "E1_in") * 25.4 + 0.8 * 25.4 / table.number(row, "tpi");
}

inline std::map<std::string, joint::Thread> referenceThreads() {
  const ReferenceTable table("threads.csv");
  std::map<std::string, joint::Thread> threads;
  for (std::size_t row = 0; row < table.size(); ++row) {
    const std::string& name = table.text(row, "designation");
    threads[name] = {name,
                     formOf(table.text(row, "form")),
                     static_cast<int>(table.number(row, "angle_deg")),
                     millimetres(25.4 / table.number(row, "tpi")),
                     millimetres(gaugedDiameter(table, row)),
                     table.text(row, "taper") != "none",
                     table.text(row, "standard")};
  }
  return threads;
}

}  // namespace ohmkin::test
