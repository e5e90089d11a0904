#pragma once
#include <finding/refusal.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <workflow/question_text.h>
#include <QObject>
#include <QStringList>
#include <QThread>
#include <atomic>
#include <memory>
#include <optional>

/// Puts questions to the catalogue on a thread of its own, which has its own read-only catalogue. The window never
/// waits.
namespace ohmkin::match {

struct Outcome {
  QString text;
  workflow::TextReading reading;
  std::vector<workflow::Completion> ways;
  Expected<workflow::Answer> answer = refuse("not-asked", {}, {}, {});
};

class AskerWork;

class Asker : public QObject {
  Q_OBJECT

 public:
  explicit Asker(QObject* parent = nullptr);
  ~Asker() override;
  Asker(const Asker&) = delete;
  Asker& operator=(const Asker&) = delete;

  void open(const QString& file);
  /// An earlier question that is still waiting is dropped, and so is its answer.
  void ask(const QString& text, const DisplayUnits& units);
  void drop();  ///< no question any more

 signals:
  void opened(const QString& file);
  /// A few questions of this catalogue that have an answer.
  void examplesFound(const QStringList& examples);
  void openingRefused(const QString& file, const ohmkin::Refusal& refusal);
  void answered(const std::shared_ptr<const ohmkin::match::Outcome>& outcome);
  void failed(const ohmkin::Refusal& refusal);  ///< the file gave out while it was read

 private:
  QThread thread_;
  std::shared_ptr<std::atomic<quint64>> newest_;
  AskerWork* work_;
};

}  // namespace ohmkin::match
