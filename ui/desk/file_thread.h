#pragma once
#include <desk/worker.h>
#include <finding/refusal.h>
#include <filesystem>
#include <memory>
#include <optional>
#include <type_traits>

/// A worker that keeps a catalogue open.
namespace ohmkin::desk {

/// To be called by each of so many; the last call does `then`.
Worker::Then lastOf(std::size_t many, Worker::Then then);

class FileThread : public QObject {
  Q_OBJECT

 public:
  using Then = Worker::Then;
  void drop(int lane) { worker_.drop(lane); }
  /// Closes the file once all that was told is done; what was asked is dropped. Until another is opened nothing is
  /// done.
  void letGo(const Then& then);

 signals:
  void opened(const QString& file);
  void openingRefused(const QString& file, const ohmkin::Refusal& refusal);
  void failed(const ohmkin::Refusal& refusal);  ///< the file gave out while it was read or written

 protected:
  /// `close` is done on the thread, perhaps while this object goes.
  FileThread(std::function<void()> close, QObject* parent) : QObject(parent), close_(std::move(close)) {}
  /// `how` opens it on the thread; it may throw catalog::CatalogueError, as the tasks may.
  void openWith(const QString& file, std::function<void()> how);
  [[nodiscard]] Worker::Task guarded(Worker::Task task);
  Worker worker_;

 private:
  std::function<void()> close_;
};

/// `Open` is made of the file's path, on the thread, and never leaves it. A job is called with it, and with the token
/// that says the answer is no longer wanted where it takes one; it hands back what is then done where the thread's
/// owner lives.
template <class Open>
class ThreadWith : public FileThread {
 public:
  explicit ThreadWith(QObject* parent = nullptr) : ThreadWith(std::make_shared<std::optional<Open>>(), parent) {}

  void open(const QString& file) {
    openWith(file, [open = open_, file] {
      open->reset();
      open->emplace(std::filesystem::path(file.toStdString()));
    });
  }
  template <class Job>
  void ask(int lane, Job job) {
    worker_.ask(lane, taskOf(std::move(job)));
  }
  template <class Job>
  void tell(Job job) {
    worker_.tell(taskOf(std::move(job)));
  }

 private:
  template <class Job>
  Worker::Task taskOf(Job job) {
    return guarded([open = open_, job = std::move(job)](const std::stop_token& stop) -> Then {
      if (!*open) return {};
      if constexpr (std::is_invocable_v<const Job&, Open&, const std::stop_token&>) return job(**open, stop);
      else return job(**open);
    });
  }
  ThreadWith(std::shared_ptr<std::optional<Open>> open, QObject* parent)
      : FileThread([open] { open->reset(); }, parent), open_(std::move(open)) {}
  std::shared_ptr<std::optional<Open>> open_;
};

}  // namespace ohmkin::desk
