#pragma once
#include <QAbstractButton>
#include <QButtonGroup>
#include <QVBoxLayout>

namespace ohmkin::app {

/// A word on the rail.
class RailButton : public QAbstractButton {
  Q_OBJECT

 public:
  explicit RailButton(const QString& words, QWidget* parent);
  [[nodiscard]] QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;
};

/// The rail at the left: the program's name, its pages, and at the foot what concerns all of them.
class Rail : public QWidget {
  Q_OBJECT

 public:
  explicit Rail(QWidget* parent = nullptr);
  void addPage(const QString& title, const QString& keys);
  RailButton* addAtFoot(const QString& words, const QString& tip);
  void choose(int page);
  [[nodiscard]] int count() const { return static_cast<int>(group_.buttons().size()); }

 signals:
  void chosen(int page);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QButtonGroup group_;
  QVBoxLayout* pages_;
  QVBoxLayout* foot_;
};

}  // namespace ohmkin::app
