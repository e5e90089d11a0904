#pragma once
#include <sheet/paper.h>

/// What the customer takes home: what was asked, what was fitted, by how much the needle lies.
namespace ohmkin::sheet {

struct JobSheet {
  std::string number;  ///< "Job 12"
  std::string reference;
  std::string date;
  std::vector<std::pair<std::string, std::string>> asked;  ///< "Vehicle", "1968 Ridgeway utility"
  std::string fitted;                                      ///< part number; empty: nothing yet
  std::string needle;                                      ///< what the needle does, in plain words
  std::vector<std::vector<std::string>> card;              ///< coolant, needle shows, error: of the offset card
  std::vector<std::string> notes;
  std::vector<std::string> sources;
  std::vector<std::string> cautions;
  std::size_t following = 0;  ///< pages that come behind it: the offset card
};

Pages drawJobSheet(const JobSheet& job, Paper paper);

}  // namespace ohmkin::sheet
