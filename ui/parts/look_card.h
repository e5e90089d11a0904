#pragma once
#include <QAbstractButton>

namespace ohmkin::parts {

/// The one observation that would decide, as a dashed card. Pressing it puts the cursor where the observation is typed.
class LookCard : public QAbstractButton {
  Q_OBJECT

 public:
  explicit LookCard(QWidget* parent = nullptr);
  void display(const QString& what, const QString& because);  ///< hides itself when there is nothing to look at
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;

 private:
  QString because_;
};

}  // namespace ohmkin::parts
