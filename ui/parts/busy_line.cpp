#include <look/palette.h>
#include <look/type.h>
#include <parts/busy_line.h>
#include <QPainter>
#include <cmath>

namespace ohmkin::parts {
namespace {

constexpr int kMilliseconds = 40;
constexpr int kStepsToAndFro = 50;  // two seconds: seen to move, and calm
constexpr double kPart = 0.24;      // of the line

}  // namespace

BusyLine::BusyLine(QWidget* parent) : QWidget(parent) {
  setFixedHeight(look::space(2));
  setAccessibleName(tr("Computing"));
  tick_.setInterval(kMilliseconds);
  connect(&tick_, &QTimer::timeout, this, [this] {
    step_ = (step_ + 1) % kStepsToAndFro;
    update();
  });
}

void BusyLine::setRunning(bool running) {
  running_ = running;
  if (running) tick_.start();
  else tick_.stop();
  update();
}

void BusyLine::paintEvent(QPaintEvent* /*event*/) {
  // Its place stays when it rests, so that nothing jumps.
  if (!running_) return;
  QPainter painter(this);
  painter.fillRect(rect(), look::colour(look::Paint::line));
  const double turn = 2 * std::acos(-1.0) * step_ / kStepsToAndFro;
  const double wide = kPart * width();
  painter.fillRect(QRectF((width() - wide) * (1 - std::cos(turn)) / 2, 0, wide, height()),
                   look::colour(look::Paint::accent));
}

}  // namespace ohmkin::parts
