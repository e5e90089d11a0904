#pragma once
#include <catalog/catalogue.h>
#include <finding/refusal.h>
#include <workflow/vocabulary.h>
#include <QObject>
#include <QThread>
#include <array>
#include <atomic>
#include <functional>
#include <memory>

/// A page's own thread with its own read-only catalogue, so that the window never waits.
namespace ohmkin::desk {

struct OpenCatalogue {
  catalog::Catalogue catalogue;
  workflow::Vocabulary vocabulary;
};

class CatalogueWork;

class CatalogueThread : public QObject {
  Q_OBJECT

 public:
  /// What is done on the thread; it hands back what is then done where the thread's owner lives.
  using Then = std::function<void()>;
  using Job = std::function<Then(const OpenCatalogue&)>;

  explicit CatalogueThread(QObject* parent = nullptr);
  ~CatalogueThread() override;
  CatalogueThread(const CatalogueThread&) = delete;
  CatalogueThread& operator=(const CatalogueThread&) = delete;

  void open(const QString& file);
  /// Of jobs of one lane only the newest counts: an older one that still waits is not done, and what it hands back is
  /// dropped. Lanes are 0 to 3.
  void ask(int lane, Job job);
  void drop(int lane);
  /// Always done, in order, also when the window is closed meanwhile: for changes. What it hands back is dropped only
  /// when the owner goes, or another file is opened.
  void tell(Job job);

 signals:
  void opened(const QString& file);
  void openingRefused(const QString& file, const ohmkin::Refusal& refusal);
  void failed(const ohmkin::Refusal& refusal);  ///< the file gave out while it was read or written

 private:
  QThread thread_;
  std::shared_ptr<std::array<std::atomic<quint64>, 4>> newest_;
  std::shared_ptr<std::atomic<quint64>> file_;  ///< which one, counted
  CatalogueWork* work_;
};

/// Text of the use cases, for Qt.
QString plain(const std::string& text);
/// The same, to be read and not to be typed on: a number and its unit stay on one line.
QString shown(const std::string& text);
/// A refusal for a person at the window: fields by their names, not as arguments of the terminal.
QString refusalSentence(const Refusal& refusal);

}  // namespace ohmkin::desk
