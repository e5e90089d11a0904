#include <match/asker.h>
#include <workflow/match.h>
#include <QRegularExpression>
#include <set>

namespace ohmkin::match {
namespace {

constexpr std::size_t kMostWays = 8;
constexpr qsizetype kMostExamples = 4;
constexpr std::size_t kMostTries = 24;
enum Lane { asking, examples };

/// "model years 1967–78" → 1968: a year inside the span, not its very first.
QString yearIn(const std::string& note) {
  static const QRegularExpression digits(QStringLiteral("\\b(19|20)\\d\\d\\b"));
  const auto found = digits.match(QString::fromStdString(note));
  return found.hasMatch() ? QString::number(found.captured().toInt() + 1) : QString();
}

/// Only what has been asked and answered is shown as an example.
QStringList findExamples(const desk::OpenCatalogue& open) {
  QStringList lines;
  std::set<std::string> seen;
  QStringList castings;
  for (const workflow::Word& word : open.vocabulary.words()) {
    const QString text = desk::plain(word.text);
    // Each line once, by its name; its other names and its id are for typing.
    if (word.field == "line" && word.text != word.id && !yearIn(word.note).isEmpty() && seen.insert(word.id).second)
      lines << yearIn(word.note) + QLatin1Char(' ') + text;
    if (word.field == "casting") castings << text;
  }
  QStringList found;
  std::size_t tries = 0;
  // From all over the catalogue, every second one with another engine's casting.
  const qsizetype stride = std::max<qsizetype>(1, lines.size() / kMostExamples);
  for (qsizetype i = 0; i < 2 * lines.size() && found.size() < kMostExamples; ++i) {
    if (++tries > kMostTries) break;
    QString text = lines[(i * stride + i / kMostExamples) % lines.size()];
    if (found.size() % 2 == 1 && !castings.isEmpty())
      text += QStringLiteral(" casting %1").arg(castings[(i * 7) % castings.size()]);
    const auto answer =
        workflow::match(open.catalogue, workflow::readQuestion(open.vocabulary, text.toStdString()).question);
    if (answer && answer->answered() && !found.contains(text)) found << text;
  }
  return found;
}

}  // namespace

Asker::Asker(QObject* parent) : QObject(parent) {
  connect(&thread_, &desk::CatalogueThread::opened, this, [this](const QString& file) {
    emit opened(file);
    thread_.ask(examples, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
      return [this, found = findExamples(open)] { emit examplesFound(found); };
    });
  });
  connect(&thread_, &desk::CatalogueThread::openingRefused, this, &Asker::openingRefused);
  connect(&thread_, &desk::CatalogueThread::failed, this, &Asker::failed);
}

void Asker::open(const QString& file) { thread_.open(file); }

void Asker::ask(const QString& text, const DisplayUnits& units) {
  thread_.ask(asking, [this, text, units](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    auto outcome = std::make_shared<Outcome>();
    const std::string bytes = text.toStdString();
    outcome->text = text;
    outcome->reading = workflow::readQuestion(open.vocabulary, bytes);
    outcome->ways = workflow::completions(open.vocabulary, bytes, kMostWays);
    outcome->answer = workflow::match(open.catalogue, outcome->reading.question, {{}, units, true});
    return [this, outcome] { emit answered(outcome); };
  });
}

void Asker::drop() { thread_.drop(asking); }

}  // namespace ohmkin::match
