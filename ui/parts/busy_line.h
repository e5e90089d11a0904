#pragma once
#include <QTimer>
#include <QWidget>

/// A thin line on which something moves to and fro while a computation runs.
namespace ohmkin::parts {

class BusyLine : public QWidget {
  Q_OBJECT

 public:
  explicit BusyLine(QWidget* parent = nullptr);
  void setRunning(bool running);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QTimer tick_;
  int step_ = 0;
  bool running_ = false;
};

}  // namespace ohmkin::parts
