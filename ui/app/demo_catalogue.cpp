#include <app/demo_catalogue.h>
#include <catalog/catalogue_error.h>
#include <embedded/ohmkin_seed_data.h>
#include <exchange/package.h>
#include <workflow/load_pack.h>
#include <QPointer>
#include <QThread>

namespace ohmkin::app {
namespace {

QString write(const std::string& path) {
  std::vector<exchange::PackageFile> files;
  for (const auto& file : seed_data::files()) files.push_back({file.name, file.text});
  try {
    const auto loaded =
        workflow::createWithPack(path, exchange::PackageSource::memory(std::move(files)), "ohmkin-window");
    return loaded ? QString() : QString::fromStdString(loaded.error().text());
  } catch (const catalog::CatalogueError& error) {
    return QString::fromStdString(error.refusal().sentence());
  }
}

}  // namespace

void writeDemoCatalogue(const QString& file, QObject* context, std::function<void(const QString&)> then) {
  QThread* thread = QThread::create([file, back = QPointer<QObject>(context), then = std::move(then)] {
    const QString whyNot = write(file.toStdString());
    if (back)
      QMetaObject::invokeMethod(
          back, [then, whyNot] { then(whyNot); }, Qt::QueuedConnection);
  });
  QObject::connect(thread, &QThread::finished, thread, &QObject::deleteLater);
  thread->start();
}

}  // namespace ohmkin::app
