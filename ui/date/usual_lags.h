#pragma once
#include <finding/refusal.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/date_engine.h>
#include <QPushButton>

namespace ohmkin::castings {

/// What is usual from casting to assembly to vehicle, and the dates thought possible at all: a judgement, shown as one,
/// folded away until somebody knows better.
class UsualLags : public QWidget {
  Q_OBJECT

 public:
  explicit UsualLags(QWidget* parent = nullptr);
  /// Puts what is set into the question. Refuses what cannot be, naming the field.
  [[nodiscard]] Expected<void> fill(workflow::DateQuestion& question) const;
  void reset();  ///< to what is usual

  [[nodiscard]] QPushButton& fold() const { return *fold_; }
  [[nodiscard]] parts::Entry& castingToAssembly() const { return *casting_; }
  [[nodiscard]] parts::Entry& assemblyToVehicle() const { return *vehicle_; }
  [[nodiscard]] parts::Entry& firstEngine() const { return *first_; }
  [[nodiscard]] parts::Entry& from() const { return *from_; }
  [[nodiscard]] parts::Entry& until() const { return *until_; }

 signals:
  void changed();

 private:
  void tell();
  QPushButton* fold_;
  parts::Panel* sheet_;
  parts::Entry* casting_;
  parts::Entry* vehicle_;
  parts::Entry* first_;
  parts::Entry* from_;
  parts::Entry* until_;
  parts::Words* told_;
  bool filling_ = false;
};

}  // namespace ohmkin::castings
