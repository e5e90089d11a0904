#include <catalog/catalogue_error.h>
#include <desk/file_thread.h>

namespace ohmkin::desk {

Worker::Then lastOf(std::size_t many, Worker::Then then) {
  return [left = std::make_shared<std::size_t>(many), then = std::move(then)] {
    if (--*left == 0) then();
  };
}

void FileThread::openWith(const QString& file, std::function<void()> how) {
  worker_.turnAway();
  worker_.tell([this, file, how = std::move(how)](const std::stop_token&) -> Then {
    try {
      how();
      return [this, file] { emit opened(file); };
    } catch (const catalog::CatalogueError& error) {
      return [this, file, refusal = error.refusal()] { emit openingRefused(file, refusal); };
    }
  });
}

Worker::Task FileThread::guarded(Worker::Task task) {
  return [this, task = std::move(task)](const std::stop_token& stop) -> Then {
    try {
      return task(stop);
    } catch (const catalog::CatalogueError& error) {
      return [this, refusal = error.refusal()] { emit failed(refusal); };
    }
  };
}

void FileThread::letGo(const Then& then) {
  worker_.turnAway();
  worker_.tell([close = close_, then](const std::stop_token&) -> Then {
    close();
    return then;
  });
}

}  // namespace ohmkin::desk
