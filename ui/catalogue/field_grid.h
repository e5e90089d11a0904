#pragma once
#include <catalogue/field_row.h>
#include <QGridLayout>

namespace ohmkin::shelves {

/// Fields side by side, as many as have room; wide ones alone in their line. The order is the keyboard's too.
class FieldGrid : public QWidget {
  Q_OBJECT

 public:
  explicit FieldGrid(QWidget* parent = nullptr);
  void setFields(const std::vector<workflow::EditField>& fields);
  [[nodiscard]] const std::vector<FieldRow*>& rows() const { return rows_; }
  [[nodiscard]] FieldRow* row(std::string_view field) const;  ///< null: none of that name

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void arrange();
  [[nodiscard]] int columnsThatFit() const;
  QGridLayout* grid_;
  std::vector<FieldRow*> rows_;
  int columns_ = 0;
};

}  // namespace ohmkin::shelves
