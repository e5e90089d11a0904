#pragma once
#include <finding/refusal.h>
#include <string>
#include <utility>
#include <vector>

namespace ohmkin::exchange {

/// Everything that is wrong with a package, in the order of its files; each names file:line:column, what stands there
/// and what was expected. After `most` they are only counted.
class Complaints {
 public:
  explicit Complaints(std::size_t most = 200) : most_(most) {}

  void add(Refusal refusal) {
    if (list_.size() < most_) list_.push_back(std::move(refusal));
    else ++more_;
  }
  void add(std::string code, std::string where, std::string found, std::string expected) {
    add(Refusal{std::move(code), std::move(where), std::move(found), std::move(expected)});
  }

  [[nodiscard]] bool none() const { return list_.empty() && more_ == 0; }
  [[nodiscard]] const std::vector<Refusal>& list() const { return list_; }
  [[nodiscard]] std::size_t notListed() const { return more_; }  ///< as many again were found and are not in the list
  [[nodiscard]] std::string text() const;  ///< one sentence a line, and a last one counting the rest

 private:
  std::size_t most_;
  std::size_t more_ = 0;
  std::vector<Refusal> list_;
};

}  // namespace ohmkin::exchange
