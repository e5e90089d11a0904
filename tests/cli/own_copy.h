#pragma once
#include "command_runner.h"
#include "demo_catalogue.h"

#include <QtTest/QtTest>
#include <filesystem>
#include <nlohmann/json.hpp>

namespace ohmkin::test {

/// A copy of the demo catalogue that a test may change, and the terminal program at it.
class OwnCopy {
 public:
  void renew() {
    for (const char* ending : {"-wal", "-shm"}) std::filesystem::remove(file_.string() + ending);
    std::filesystem::copy_file(demo_.file(), file_, std::filesystem::copy_options::overwrite_existing);
  }
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }
  [[nodiscard]] std::filesystem::path beside(const char* name) const { return demo_.beside(name); }
  [[nodiscard]] Ran ran(std::vector<std::string> words) const {
    words.insert(words.begin() + 1, {"--catalog", file_.string()});
    return run(words);
  }
  /// What --json says where it must work.
  [[nodiscard]] nlohmann::json told(std::vector<std::string> words) const {
    words.emplace_back("--json");
    const Ran done = ran(words);
    if (done.exit == 2) qFatal("%s", done.err.c_str());
    return nlohmann::json::parse(done.out);
  }

 private:
  DemoCatalogue demo_;
  std::filesystem::path file_ = demo_.beside("own.ohmkin");
};

}  // namespace ohmkin::test
