#include <match/sampler.h>

namespace ohmkin::match {

Sampler::Sampler(QObject* parent) : QObject(parent) {
  // One cancelled may still be leaving while the next begins.
  pool_.setMaxThreadCount(2);
}

Sampler::~Sampler() {
  stop_.request_stop();
  pool_.clear();
  pool_.waitForDone();
}

void Sampler::start(Work work) {
  stop_.request_stop();
  stop_ = std::stop_source();
  const quint64 serial = ++newest_;
  pool_.start([this, work = std::move(work), stop = stop_.get_token(), serial] {
    if (stop.stop_requested()) return;
    // The pool is waited for before this object goes, so that `this` is good here.
    QMetaObject::invokeMethod(
        this,
        [this, serial, result = std::make_shared<const SampledOrNot>(work(stop))] {
          if (serial != newest_) return;
          running_ = false;
          emit runningChanged(false);
          emit done(result);
        },
        Qt::QueuedConnection);
  });
  if (running_) return;
  running_ = true;
  emit runningChanged(true);
}

void Sampler::cancel() {
  stop_.request_stop();
  ++newest_;
  if (!running_) return;
  running_ = false;
  emit runningChanged(false);
}

}  // namespace ohmkin::match
