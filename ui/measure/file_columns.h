#pragma once
#include <exchange/reading_proposal.h>
#include <parts/entry.h>
#include <QScrollArea>
#include <QTableWidget>
#include <vector>

namespace ohmkin::measure {

/// How each column of a file was read: what it is and in which unit as a drop-down over its first rows, to be put
/// right.
class FileColumns : public QWidget {
  Q_OBJECT

 public:
  explicit FileColumns(QWidget* parent = nullptr);
  void display(const exchange::Proposal& proposal, const exchange::ReadingPlan& plan);
  [[nodiscard]] const std::vector<parts::Choice*>& roles() const { return roles_; }
  [[nodiscard]] QTableWidget& rows() const { return *rows_; }
  [[nodiscard]] parts::Choice& separator() const { return *separator_; }
  [[nodiscard]] parts::Choice& decimal() const { return *decimal_; }

 signals:
  void corrected(const QString& line);  ///< for exchange::parsePlan: the whole plan as it now is

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fitColumns();
  void makeRoles(const exchange::Proposal& proposal);
  void takeRole(std::size_t column, int choice);
  void takeMarks();

  exchange::ReadingPlan plan_;
  bool filling_ = false;
  parts::Choice* separator_;
  parts::Choice* decimal_;
  QTableWidget* rows_;
  std::vector<parts::Choice*> roles_;
};

}  // namespace ohmkin::measure
