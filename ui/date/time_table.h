#pragma once
#include <QTableWidget>
#include <vector>

namespace ohmkin::castings {

struct TimeTableRow {
  QString what;
  QString from;
  QString until;
  QString chance;
};

/// The time line as a table: for those who do not see it, and for exact days.
class TimeTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit TimeTable(QWidget* parent = nullptr);
  void display(const std::vector<TimeTableRow>& rows);
  [[nodiscard]] QSize sizeHint() const override;  ///< as high as its rows
  [[nodiscard]] QSize minimumSizeHint() const override;
};

}  // namespace ohmkin::castings
