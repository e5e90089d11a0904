#pragma once
#include <QAbstractButton>

namespace ohmkin::parts {

/// Leads to something else that is said here: accent words, underlined, that wrap. Enter, Space and a click follow it.
class Link : public QAbstractButton {
  Q_OBJECT

 public:
  explicit Link(const QString& words, QWidget* parent = nullptr);
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;
};

}  // namespace ohmkin::parts
