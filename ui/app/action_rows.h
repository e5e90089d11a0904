#pragma once
#include <app/offered.h>
#include <QListView>
#include <QStandardItemModel>

namespace ohmkin::app {

/// Rows of actions: the name, where it belongs, and its keys drawn as they stand on the keyboard.
class ActionRows : public QListView {
  Q_OBJECT

 public:
  enum class Show { withGroup, withoutGroup };
  ActionRows(const QString& name, Show show, QWidget* parent);
  void setRows(const std::vector<Offered>& rows);
  /// Null where there is no row.
  [[nodiscard]] QAction* current() const;
  [[nodiscard]] const std::vector<Offered>& rows() const { return rows_; }
  void step(int by);
  [[nodiscard]] int rowHeight() const;
  [[nodiscard]] double capsWidth() const { return capsWidth_; }  ///< of the row with most keys
  /// High enough to show every row.
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void taken(QAction* action);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;

 private:
  void take();
  QStandardItemModel model_;
  std::vector<Offered> rows_;
  double capsWidth_ = 0;
};

}  // namespace ohmkin::app
