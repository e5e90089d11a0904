#pragma once
#include <catalog/catalogue.h>
#include <finding/refusal.h>
#include <workflow/edit_session.h>
#include <workflow/find.h>
#include <QObject>
#include <QThread>
#include <array>
#include <functional>
#include <optional>
#include <stop_token>

/// The catalogue page: find anything, look at it, edit it, sell it. Its namespace is ohmkin::shelves: ohmkin::catalog
/// is the room that keeps the file.
namespace ohmkin::shelves {

/// What lives on a clerk's thread: one connection that reads, and from the first change on one that writes.
class OpenFile {
 public:
  explicit OpenFile(const std::filesystem::path& file);  ///< throws catalog::CatalogueError, as the others here
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;

  [[nodiscard]] const catalog::Catalogue& catalogue() const { return read_; }
  catalog::Catalogue& reading() { return read_; }  ///< opened readOnly
  workflow::Finder& finder();                      ///< made at the first question
  catalog::Catalogue& writable();
  workflow::EditSession& session(const DisplayUnits& units);
  [[nodiscard]] const std::string& who() const { return who_; }

 private:
  catalog::Catalogue read_;
  std::string who_;
  std::optional<workflow::Finder> finder_;
  std::optional<catalog::Catalogue> write_;
  std::optional<workflow::EditSession> session_;
};

class ClerkWork;

/// Works on a thread of its own, in the order of what it is told, so that the window never waits.
class Clerk : public QObject {
  Q_OBJECT

 public:
  /// What is done on the thread; it hands back what is then done where the clerk's owner lives. A job need not look at
  /// the token; a long one should.
  using Then = std::function<void()>;
  using Job = std::function<Then(OpenFile&, const std::stop_token&)>;

  explicit Clerk(QObject* parent = nullptr);
  ~Clerk() override;
  Clerk(const Clerk&) = delete;
  Clerk& operator=(const Clerk&) = delete;

  void open(const QString& file);
  /// Of one lane only the newest counts: an older one is stopped, or not begun, and what it hands back is dropped.
  void ask(int lane, Job job);
  void drop(int lane);
  /// Always done, also when another file is opened or the window is closed meanwhile: for changes.
  void tell(Job job);

  static constexpr std::size_t kLanes = 16;

 signals:
  void opened(const QString& file);
  void openingRefused(const QString& file, const ohmkin::Refusal& refusal);
  void failed(const ohmkin::Refusal& refusal);  ///< the file gave out while it was read

 private:
  void run(Job job, const std::stop_token& stop, bool whatever);
  QThread thread_;
  std::array<std::stop_source, kLanes> lanes_;
  std::stop_source file_;  ///< what is told belongs to it
  ClerkWork* work_;
};

/// The window's one refusal of a change, from that of the file.
workflow::EditRefusal refusalOf(const catalog::CatalogueError& error);

}  // namespace ohmkin::shelves
