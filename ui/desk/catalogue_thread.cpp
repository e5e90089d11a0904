#include <catalog/catalogue_error.h>
#include <desk/catalogue_thread.h>
#include <QRegularExpression>
#include <optional>

namespace ohmkin::desk {

/// Lives on the thread.
class CatalogueWork : public QObject {
  Q_OBJECT

 public:
  void open(const QString& file) {
    open_.reset();
    try {
      catalog::Catalogue catalogue = catalog::Catalogue::openToRead(file.toStdString());
      workflow::Vocabulary vocabulary(catalogue);
      open_.emplace(OpenCatalogue{std::move(catalogue), std::move(vocabulary)});
      emit opened(file);
    } catch (const catalog::CatalogueError& error) {
      emit openingRefused(file, error.refusal());
    }
  }

  CatalogueThread::Then run(const CatalogueThread::Job& job) {
    if (!open_) return {};
    try {
      return job(*open_);
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
  std::optional<OpenCatalogue> open_;
};

CatalogueThread::CatalogueThread(QObject* parent)
    : QObject(parent),
      newest_(std::make_shared<std::array<std::atomic<quint64>, 4>>()),
      file_(std::make_shared<std::atomic<quint64>>()),
      work_(new CatalogueWork) {
  work_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, work_, &QObject::deleteLater);
  connect(work_, &CatalogueWork::opened, this, &CatalogueThread::opened);
  connect(work_, &CatalogueWork::openingRefused, this, &CatalogueThread::openingRefused);
  connect(work_, &CatalogueWork::failed, this, &CatalogueThread::failed);
  thread_.start();
}

CatalogueThread::~CatalogueThread() {
  for (auto& lane : *newest_) ++lane;
  ++*file_;
  // After what was told: a change that was asked for is made.
  QMetaObject::invokeMethod(
      work_, [] { QThread::currentThread()->quit(); }, Qt::QueuedConnection);
  thread_.wait();
}

void CatalogueThread::open(const QString& file) {
  for (auto& lane : *newest_) ++lane;
  ++*file_;
  QMetaObject::invokeMethod(
      work_, [work = work_, file] { work->open(file); }, Qt::QueuedConnection);
}

void CatalogueThread::ask(int lane, Job job) {
  const auto at = static_cast<std::size_t>(lane);
  const quint64 serial = ++newest_->at(at);
  QMetaObject::invokeMethod(
      work_,
      // The thread is waited for before this object goes, so that `this` is good here.
      [this, newest = newest_, work = work_, job = std::move(job), at, serial] {
        if (newest->at(at) != serial) return;
        Then then = work->run(job);
        if (!then) return;
        QMetaObject::invokeMethod(
            this,
            [newest, then = std::move(then), at, serial] {
              if (newest->at(at) == serial) then();
            },
            Qt::QueuedConnection);
      },
      Qt::QueuedConnection);
}

void CatalogueThread::tell(Job job) {
  QMetaObject::invokeMethod(
      work_,
      [this, work = work_, job = std::move(job), file = file_, serial = file_->load()] {
        Then then = work->run(job);
        if (!then) return;
        QMetaObject::invokeMethod(
            this,
            [then = std::move(then), file, serial] {
              if (*file == serial) then();
            },
            Qt::QueuedConnection);
      },
      Qt::QueuedConnection);
}

void CatalogueThread::drop(int lane) { ++newest_->at(static_cast<std::size_t>(lane)); }

QString plain(const std::string& text) { return QString::fromStdString(text); }

QString shown(const std::string& text) {
  static const QRegularExpression beforeUnit(
      QStringLiteral("(?<=[\\d+]) (?=years?\\b|[K°%Ω±]|F°|kΩ|N·m|lbf|mm|m\\b|AWG|[VW]\\b)"));
  return plain(text).replace(beforeUnit, QString(QChar::Nbsp));
}

QString refusalSentence(const Refusal& refusal) {
  QString where = plain(refusal.where);
  static const QRegularExpression option(QStringLiteral("--([a-z]+)(?:-([a-z]+))?"));
  where.replace(option, QStringLiteral("\\1 \\2"));
  where = where.trimmed().replace(QStringLiteral(" :"), QStringLiteral(":"));
  QStringList words;
  if (!refusal.found.empty()) words << CatalogueThread::tr("found %1").arg(plain(refusal.found));
  if (!refusal.expected.empty()) words << CatalogueThread::tr("expected %1").arg(plain(refusal.expected));
  QString sentence = (where.isEmpty() ? QString() : where + QStringLiteral(": ")) + words.join(QStringLiteral(", "));
  const bool file = where.contains(QLatin1Char('.')) || where.contains(QLatin1Char('/'));  // keeps its own letters
  if (!file && !sentence.isEmpty()) sentence[0] = sentence[0].toUpper();
  return sentence.endsWith(QLatin1Char('.')) ? sentence : sentence + QLatin1Char('.');
}

}  // namespace ohmkin::desk

#include "catalogue_thread.moc"
