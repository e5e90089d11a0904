#pragma once
#include <QUndoCommand>
#include <functional>
#include <utility>

namespace ohmkin::desk {

/// Going back to how something was, where a whole state is small enough to keep: `put` puts a state in place. Pushed
/// after the change has been made, so that the first redo does nothing. Changes of the same kind (`id` ≥ 0, as typing
/// in one field is) become one step.
template <class State>
class Snapshot : public QUndoCommand {
 public:
  Snapshot(const QString& what, State before, State after, std::function<void(const State&)> put, int id = -1)
      : QUndoCommand(what), before_(std::move(before)), after_(std::move(after)), put_(std::move(put)), id_(id) {}

  void undo() override { put_(before_); }
  void redo() override {
    if (made_) put_(after_);
    made_ = true;
  }
  [[nodiscard]] int id() const override { return id_; }
  bool mergeWith(const QUndoCommand* newer) override {
    const auto* next = dynamic_cast<const Snapshot*>(newer);
    if (next == nullptr) return false;
    after_ = next->after_;
    return true;
  }

 private:
  State before_;
  State after_;
  std::function<void(const State&)> put_;
  int id_;
  bool made_ = false;
};

}  // namespace ohmkin::desk
