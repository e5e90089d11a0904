#pragma once
#include <finding/refusal.h>
#include <pairing/monte_carlo.h>
#include <QObject>
#include <QThreadPool>
#include <functional>
#include <memory>
#include <stop_token>

/// Monte Carlo for one sender of an answer, beside the window's thread. Only the newest run counts.
namespace ohmkin::match {

using SampledOrNot = Expected<pairing::Sampled>;

class Sampler : public QObject {
  Q_OBJECT

 public:
  using Work = std::function<SampledOrNot(std::stop_token)>;

  explicit Sampler(QObject* parent = nullptr);
  ~Sampler() override;
  Sampler(const Sampler&) = delete;
  Sampler& operator=(const Sampler&) = delete;

  /// What runs is cancelled first. The work owns all it reads.
  void start(Work work);
  void cancel();  ///< what runs stops within a block of draws; its result is dropped
  [[nodiscard]] bool running() const { return running_; }

 signals:
  void runningChanged(bool running);
  void done(const std::shared_ptr<const ohmkin::match::SampledOrNot>& result);

 private:
  QThreadPool pool_;
  std::stop_source stop_;
  quint64 newest_ = 0;
  bool running_ = false;
};

}  // namespace ohmkin::match
