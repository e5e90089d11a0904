#include <catalogue/clerk.h>
#include <workflow/person.h>
#include <utility>

namespace ohmkin::shelves {

OpenFile::OpenFile(const std::filesystem::path& file)
    : read_(catalog::Catalogue::openToRead(file)), who_(workflow::personLoggedIn()) {}

workflow::Finder& OpenFile::finder() {
  if (!finder_) finder_.emplace(read_);
  return *finder_;
}

catalog::Catalogue& OpenFile::writable() {
  if (!write_) write_.emplace(catalog::Catalogue::open(read_.file(), catalog::Access::readWrite));
  return *write_;
}

workflow::EditSession& OpenFile::session(const DisplayUnits& units) {
  if (!session_) session_.emplace(writable(), who_, units);
  session_->setUnits(units);
  return *session_;
}

/// Lives on the thread.
class ClerkWork : public QObject {
  Q_OBJECT

 public:
  void open(const QString& file) {
    open_.reset();
    try {
      open_.emplace(file.toStdString());
      emit opened(file);
    } catch (const catalog::CatalogueError& error) {
      emit openingRefused(file, error.refusal());
    }
  }

  Clerk::Then run(const Clerk::Job& job, const std::stop_token& stop) {
    if (!open_) return {};
    try {
      return job(*open_, stop);
    } catch (const catalog::CatalogueError& error) {
      emit failed(error.refusal());
      return {};
    }
  }

 signals:
  void opened(const QString& file);
  void openingRefused(const QString& file, const ohmkin::Refusal& refusal);
  void failed(const ohmkin::Refusal& refusal);

 private:
  std::optional<OpenFile> open_;
};

Clerk::Clerk(QObject* parent) : QObject(parent), work_(new ClerkWork) {
  work_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, work_, &QObject::deleteLater);
  connect(work_, &ClerkWork::opened, this, &Clerk::opened);
  connect(work_, &ClerkWork::openingRefused, this, &Clerk::openingRefused);
  connect(work_, &ClerkWork::failed, this, &Clerk::failed);
  thread_.start();
}

/// Leaves after what was told: a change that was asked for is made.
Clerk::~Clerk() {
  for (std::stop_source& lane : lanes_) lane.request_stop();
  file_.request_stop();
  QMetaObject::invokeMethod(
      work_, [] { QThread::currentThread()->quit(); }, Qt::QueuedConnection);
  thread_.wait();
}

void Clerk::open(const QString& file) {
  for (std::stop_source& lane : lanes_) lane.request_stop();
  file_.request_stop();
  file_ = {};
  QMetaObject::invokeMethod(
      work_, [work = work_, file] { work->open(file); }, Qt::QueuedConnection);
}

void Clerk::ask(int lane, Job job) {
  drop(lane);
  std::stop_source& now = lanes_.at(static_cast<std::size_t>(lane));
  now = {};
  run(std::move(job), now.get_token(), false);
}

void Clerk::drop(int lane) { lanes_.at(static_cast<std::size_t>(lane)).request_stop(); }

void Clerk::tell(Job job) { run(std::move(job), file_.get_token(), true); }

void Clerk::run(Job job, const std::stop_token& stop, bool whatever) {
  QMetaObject::invokeMethod(
      work_,
      // The thread is waited for before this object goes, so that `this` is good here.
      [this, work = work_, job = std::move(job), stop, whatever] {
        if (stop.stop_requested() && !whatever) return;
        Then then = work->run(job, stop);
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

workflow::EditRefusal refusalOf(const catalog::CatalogueError& error) {
  workflow::EditRefusal refused;
  refused.reasons.push_back(error.refusal());
  return refused;
}

}  // namespace ohmkin::shelves

#include "clerk.moc"
