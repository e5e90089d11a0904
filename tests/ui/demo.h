#pragma once
#include <embedded/ohmkin_seed_data.h>
#include <exchange/package.h>
#include <workflow/load_pack.h>
#include <QFile>
#include <QTemporaryDir>

/// The demo catalogue in a folder that goes when the test is over.
class Demo {
 public:
  Demo() {
    std::vector<ohmkin::exchange::PackageFile> files;
    for (const auto& each : ohmkin::seed_data::files()) files.push_back({each.name, each.text});
    whole_ = ohmkin::workflow::createWithPack(file().toStdString(),
                                              ohmkin::exchange::PackageSource::memory(std::move(files)), "test")
                 .has_value();
  }
  [[nodiscard]] QString file() const { return folder_.filePath(QStringLiteral("demo.ohmkin")); }
  [[nodiscard]] QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }
  /// Another file of the same, to write into.
  [[nodiscard]] QString copy(const char* name) const {
    QFile::remove(path(name));
    QFile::copy(file(), path(name));
    return path(name);
  }
  [[nodiscard]] bool whole() const { return whole_; }

 private:
  QTemporaryDir folder_;
  bool whole_ = false;
};

/// A question of the demo whose every link but the terminal is known, and one with several branches.
inline const QString kSettled = QStringLiteral("1968 ridgeway utility gauge package casting 30418 dated H221");
inline const QString kSeveral = QStringLiteral("1968 ridgeway utility");
