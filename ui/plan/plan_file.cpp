#include <desk/catalogue_thread.h>
#include <plan/plan_file.h>
#include <QCoreApplication>
#include <QFileInfo>
#include <QSaveFile>

namespace ohmkin::plan {
namespace {

constexpr qint64 kLargestDocument = 1 << 20;

QString tr(const char* text) { return QCoreApplication::translate("Plan", text); }

}  // namespace

QString writePlan(const workflow::PlanQuestion& question, const QString& file) {
  QSaveFile out(file);
  const std::string document = workflow::planDocument(question);
  const auto size = static_cast<qint64>(document.size());
  const bool done = out.open(QIODevice::WriteOnly) && out.write(document.data(), size) == size && out.commit();
  return done ? QString() : tr("%1 cannot be written: %2.").arg(QFileInfo(file).fileName(), out.errorString());
}

tl::expected<workflow::PlanQuestion, QString> readPlan(const QString& file) {
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly))
    return tl::make_unexpected(tr("%1 cannot be read: %2.").arg(QFileInfo(file).fileName(), in.errorString()));
  const QByteArray bytes = in.read(kLargestDocument + 1);
  auto question =
      workflow::readPlanDocument(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())),
                                 QFileInfo(file).fileName().toStdString());
  if (!question) return tl::make_unexpected(desk::refusalSentence(question.error()));
  return std::move(*question);
}

}  // namespace ohmkin::plan
