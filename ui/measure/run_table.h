#pragma once
#include <measure/calm_table.h>
#include <workflow/import_readings.h>

namespace ohmkin::measure {

/// The curves found in a file: which to bring in, and of which part and lot each is.
class RunTable : public CalmTable {
  Q_OBJECT

 public:
  enum Column { bringIn, part, lot, family, readings, span, likeliest };

  explicit RunTable(QWidget* parent = nullptr);
  void display(const std::vector<workflow::RunPreview>& runs, const workflow::BenchFamilies& families,
               const DisplayUnits& units);
  [[nodiscard]] std::vector<workflow::RunSaid> said() const;

 signals:
  void edited();
  void chosen(int run);

 private:
  std::vector<workflow::RunPreview> runs_;
  bool filling_ = false;
};

}  // namespace ohmkin::measure
