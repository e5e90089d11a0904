#include <app/demo_catalogue.h>
#include <catalog/catalogue_error.h>
#include <embedded/ohmkin_seed_data.h>
#include <exchange/package.h>
#include <workflow/load_pack.h>
#include <QThread>
#include <memory>

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
  auto whyNot = std::make_shared<QString>();
  QThread* thread = QThread::create([file, whyNot] { *whyNot = write(file.toStdString()); });
  // Whether the window is still there is asked on its own thread; going first, it waits until the file is whole.
  QObject::connect(thread, &QThread::finished, context, [whyNot, then = std::move(then)] { then(*whyNot); });
  QObject::connect(context, &QObject::destroyed, thread, [thread] { thread->wait(); });
  QObject::connect(thread, &QThread::finished, thread, &QObject::deleteLater);
  thread->start();
}

}  // namespace ohmkin::app
