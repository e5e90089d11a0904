#pragma once
#include <desk/catalogue_thread.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <workflow/question_text.h>
#include <QStringList>

/// Puts questions to the catalogue on the page's own thread. The window never waits.
namespace ohmkin::match {

struct Outcome {
  QString text;
  workflow::TextReading reading;
  std::vector<workflow::Completion> ways;
  Expected<workflow::Answer> answer = refuse("not-asked", {}, {}, {});
};

class Asker : public QObject {
  Q_OBJECT

 public:
  explicit Asker(QObject* parent = nullptr);

  void open(const QString& file);
  [[nodiscard]] desk::CatalogueThread& thread() { return thread_; }  ///< to be let go
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
  desk::CatalogueThread thread_;
};

}  // namespace ohmkin::match
