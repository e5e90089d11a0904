#pragma once
#include <dating/layout.h>
#include <parts/entry.h>
#include <QAbstractButton>
#include <QVBoxLayout>
#include <vector>

namespace ohmkin::castings {

/// The fields of a layout, in order: kind, text, whether it may be left out.
class LayoutFields : public QWidget {
  Q_OBJECT

 public:
  explicit LayoutFields(QWidget* parent = nullptr);
  void setFields(const std::vector<dating::Field>& fields);
  [[nodiscard]] std::vector<dating::Field> fields() const;

  struct Row {
    QWidget* whole;
    parts::Choice* kind;
    parts::Entry* text;
    parts::Tick* optional;
    QAbstractButton* up;
    QAbstractButton* away;
  };
  [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
  [[nodiscard]] QAbstractButton& addButton() const { return *add_; }

 signals:
  void changed();

 private:
  void addRow(const dating::Field& field);
  void explain(const Row& row);
  void restack();
  std::vector<Row> rows_;
  QVBoxLayout* column_;
  QAbstractButton* add_;
  bool filling_ = false;
};

}  // namespace ohmkin::castings
