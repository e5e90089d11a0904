#pragma once
#include <QLayout>

namespace ohmkin::parts {

/// Children side by side, on to the next line where one ends.
class FlowLayout : public QLayout {
  Q_OBJECT

 public:
  explicit FlowLayout(int gap, QWidget* parent = nullptr);
  ~FlowLayout() override;
  FlowLayout(const FlowLayout&) = delete;
  FlowLayout& operator=(const FlowLayout&) = delete;
  void addItem(QLayoutItem* item) override { items_.append(item); }
  [[nodiscard]] int count() const override { return static_cast<int>(items_.size()); }
  [[nodiscard]] QLayoutItem* itemAt(int index) const override { return items_.value(index); }
  QLayoutItem* takeAt(int index) override;
  [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override { return arrange(QRect(0, 0, width, 0), false); }
  void setGeometry(const QRect& rect) override;
  [[nodiscard]] QSize sizeHint() const override { return minimumSize(); }
  [[nodiscard]] QSize minimumSize() const override;

 private:
  int arrange(const QRect& rect, bool move) const;
  QList<QLayoutItem*> items_;
  int gap_;
};

}  // namespace ohmkin::parts
