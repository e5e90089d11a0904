#include <desk/worker.h>

namespace ohmkin::desk {

Worker::Worker(QObject* parent) : QObject(parent), there_(new QObject) {
  there_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, there_, &QObject::deleteLater);
  thread_.start();
}

Worker::~Worker() {
  turnAway();
  QMetaObject::invokeMethod(
      there_, [] { QThread::currentThread()->quit(); }, Qt::QueuedConnection);
  thread_.wait();
}

void Worker::ask(int lane, Task task) {
  drop(lane);
  std::stop_source& now = lanes_.at(static_cast<std::size_t>(lane));
  now = {};
  run(std::move(task), now.get_token(), false);
}

void Worker::drop(int lane) { lanes_.at(static_cast<std::size_t>(lane)).request_stop(); }

void Worker::tell(Task task) { run(std::move(task), told_.get_token(), true); }

void Worker::turnAway() {
  for (std::stop_source& lane : lanes_) lane.request_stop();
  told_.request_stop();
  told_ = {};
}

void Worker::run(Task task, const std::stop_token& stop, bool whatever) {
  QMetaObject::invokeMethod(
      there_,
      // The thread is waited for before this object goes, so that `this` is good here.
      [this, task = std::move(task), stop, whatever] {
        if (stop.stop_requested() && !whatever) return;
        Then then = task(stop);
        if (!then) return;
        QMetaObject::invokeMethod(
            this,
            [then = std::move(then), stop] {
              if (!stop.stop_requested()) then();
            },
            Qt::QueuedConnection);
      },
      Qt::QueuedConnection);
}

}  // namespace ohmkin::desk
