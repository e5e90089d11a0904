#include <catalog/catalogue.h>
#include <match/asker.h>
#include <workflow/match.h>
#include <QRegularExpression>
#include <set>

namespace ohmkin::match {
namespace {

constexpr std::size_t kMostWays = 8;
constexpr std::size_t kMostExamples = 4;
constexpr std::size_t kMostTries = 24;

/// "model years 1967–78" → 1968: a year inside the span, not its very first.
QString yearIn(const std::string& note) {
  static const QRegularExpression digits(QStringLiteral("\\b(19|20)\\d\\d\\b"));
  const auto found = digits.match(QString::fromStdString(note));
  return found.hasMatch() ? QString::number(found.captured().toInt() + 1) : QString();
}

}  // namespace

/// Lives on the asker's thread.
class AskerWork : public QObject {
  Q_OBJECT

 public:
  explicit AskerWork(std::shared_ptr<std::atomic<quint64>> newest) : newest_(std::move(newest)) {}

  void open(const QString& file) {
    try {
      vocabulary_.reset();
      catalogue_.reset();
      catalogue_.emplace(catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly));
      vocabulary_.emplace(*catalogue_);
      emit opened(file);
      QMetaObject::invokeMethod(
          this, [this] { findExamples(); }, Qt::QueuedConnection);
    } catch (const catalog::CatalogueError& error) {
      catalogue_.reset();
      emit openingRefused(file, error.refusal());
    }
  }

  void ask(const QString& text, const DisplayUnits& units, quint64 serial) {
    if (serial != *newest_ || !vocabulary_) return;
    try {
      auto outcome = std::make_shared<Outcome>();
      const std::string bytes = text.toStdString();
      outcome->text = text;
      outcome->reading = workflow::readQuestion(*vocabulary_, bytes);
      outcome->ways = workflow::completions(*vocabulary_, bytes, kMostWays);
      outcome->answer = workflow::match(*catalogue_, outcome->reading.question, {{}, units, true});
      if (serial == *newest_) emit answered(std::move(outcome), serial);
    } catch (const catalog::CatalogueError& error) {
      emit failed(error.refusal());
    }
  }

 signals:
  void opened(const QString& file);
  void examplesFound(const QStringList& examples);
  void openingRefused(const QString& file, const ohmkin::Refusal& refusal);
  void answered(const std::shared_ptr<const ohmkin::match::Outcome>& outcome, quint64 serial);
  void failed(const ohmkin::Refusal& refusal);

 private:
  /// Only what has been asked and answered is shown as an example.
  void findExamples() {
    QStringList lines;
    std::set<std::string> seen;
    QStringList castings;
    for (const workflow::Word& word : vocabulary_->words()) {
      const QString text = QString::fromStdString(word.text);
      // Each line once, by its name; its other names and its id are for typing.
      if (word.field == "line" && word.text != word.id && !yearIn(word.note).isEmpty() && seen.insert(word.id).second)
        lines << yearIn(word.note) + QLatin1Char(' ') + text;
      if (word.field == "casting") castings << text;
    }
    QStringList examples;
    std::size_t tries = 0;
    try {
      // From all over the catalogue, every second one with another engine's casting.
      const qsizetype stride = std::max<qsizetype>(1, lines.size() / static_cast<qsizetype>(kMostExamples));
      for (qsizetype i = 0; i < 2 * lines.size() && examples.size() < static_cast<qsizetype>(kMostExamples); ++i) {
        if (++tries > kMostTries) break;
        QString text = lines[(i * stride + i / static_cast<qsizetype>(kMostExamples)) % lines.size()];
        if (examples.size() % 2 == 1 && !castings.isEmpty())
          text += tr(" casting %1").arg(castings[(i * 7) % castings.size()]);
        const auto answer =
            workflow::match(*catalogue_, workflow::readQuestion(*vocabulary_, text.toStdString()).question);
        if (answer && answer->answered() && !examples.contains(text)) examples << text;
      }
    } catch (const catalog::CatalogueError& error) {
      emit failed(error.refusal());
    }
    emit examplesFound(examples);
  }

  std::shared_ptr<std::atomic<quint64>> newest_;
  std::optional<catalog::Catalogue> catalogue_;
  std::optional<workflow::Vocabulary> vocabulary_;
};

Asker::Asker(QObject* parent)
    : QObject(parent), newest_(std::make_shared<std::atomic<quint64>>(0)), work_(new AskerWork(newest_)) {
  work_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, work_, &QObject::deleteLater);
  connect(work_, &AskerWork::opened, this, &Asker::opened);
  connect(work_, &AskerWork::examplesFound, this, &Asker::examplesFound);
  connect(work_, &AskerWork::openingRefused, this, &Asker::openingRefused);
  connect(work_, &AskerWork::failed, this, &Asker::failed);
  connect(work_, &AskerWork::answered, this, [this](const std::shared_ptr<const Outcome>& outcome, quint64 serial) {
    if (serial == *newest_) emit answered(outcome);
  });
  thread_.start();
}

Asker::~Asker() {
  drop();
  thread_.quit();
  thread_.wait();
}

void Asker::open(const QString& file) {
  drop();
  QMetaObject::invokeMethod(
      work_, [work = work_, file] { work->open(file); }, Qt::QueuedConnection);
}

void Asker::ask(const QString& text, const DisplayUnits& units) {
  const quint64 serial = ++*newest_;
  QMetaObject::invokeMethod(
      work_, [work = work_, text, units, serial] { work->ask(text, units, serial); }, Qt::QueuedConnection);
}

void Asker::drop() { ++*newest_; }

}  // namespace ohmkin::match

#include "asker.moc"
