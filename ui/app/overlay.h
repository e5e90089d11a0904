#pragma once
#include <parts/panel.h>
#include <QDialog>
#include <QPointer>
#include <vector>

namespace ohmkin::app {

/// A panel over the dimmed window. Escape and a click beside it close it, Tab stays inside, and the keyboard goes back
/// to where it was.
class Overlay : public QDialog {
  Q_OBJECT

 public:
  Overlay(const QString& name, QWidget& window);
  void appear();
  void vanish();
  [[nodiscard]] parts::Panel& panel() const { return *panel_; }

 protected:
  /// Where the panel lies in a window of this size.
  [[nodiscard]] virtual QRect place(const QSize& window) const = 0;
  /// Not while something is done that has to be seen through.
  [[nodiscard]] virtual bool mayVanish() const { return true; }
  void settle();  ///< its place anew
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void reject() override {
    if (mayVanish()) vanish();
  }
  bool eventFilter(QObject* watched, QEvent* event) override;
  bool focusNextPrevChild(bool next) override;

 private:
  QWidget& window_;
  parts::Panel* panel_;
  QPointer<QWidget> before_;               ///< had the keyboard
  std::vector<QPointer<QWidget>> behind_;  ///< what is not operated meanwhile, by Alt and a letter neither
};

}  // namespace ohmkin::app
