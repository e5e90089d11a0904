#pragma once
#include <app/action_rows.h>
#include <app/overlay.h>
#include <desk/settings.h>
#include <parts/entry.h>

namespace ohmkin::app {

/// Everything that can be done now, found by typing a part of its name; Return does it.
class ActionList : public Overlay {
  Q_OBJECT

 public:
  ActionList(desk::Settings& settings, QWidget& window);
  void offer(std::vector<Offered> all);
  [[nodiscard]] parts::Entry& box() const { return *box_; }
  [[nodiscard]] ActionRows& rows() const { return *rows_; }

 protected:
  [[nodiscard]] QRect place(const QSize& window) const override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void filter();
  void take(QAction* action);

  desk::Settings& settings_;
  std::vector<Offered> all_;
  parts::Entry* box_;
  ActionRows* rows_;
  parts::Words* none_;
};

}  // namespace ohmkin::app
