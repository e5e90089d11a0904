#pragma once
#include <QObject>
#include <QThread>
#include <array>
#include <functional>
#include <stop_token>

namespace ohmkin::desk {

/// Works on a thread of its own, in the order of what it is told, so that the window never waits.
class Worker : public QObject {
  Q_OBJECT

 public:
  /// What is done on the thread; it hands back what is then done where the worker lives. A task need not look at the
  /// token; a long one should.
  using Then = std::function<void()>;
  using Task = std::function<Then(const std::stop_token&)>;

  explicit Worker(QObject* parent = nullptr);
  /// After what was told: a change that was asked for is made.
  ~Worker() override;
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  /// Of one lane only the newest counts: an older one is stopped, or not begun, and what it hands back is dropped.
  void ask(int lane, Task task);
  void drop(int lane);
  /// Always done, also when the window is closed meanwhile: for changes.
  void tell(Task task);
  /// What was asked counts no more, and what was told hands nothing back: it was about something else.
  void turnAway();

  static constexpr std::size_t kLanes = 16;

 private:
  void run(Task task, const std::stop_token& stop, bool whatever);
  QThread thread_;
  QObject* there_;  ///< lives on the thread
  std::array<std::stop_source, kLanes> lanes_;
  std::stop_source told_;
};

}  // namespace ohmkin::desk
