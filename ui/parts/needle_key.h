#pragma once
#include <parts/dial_view.h>

namespace ohmkin::parts {

/// One line under the dial: a needle as it is drawn above, and what it says.
class NeedleKey : public QWidget {
  Q_OBJECT

 public:
  NeedleKey(Needle needle, QWidget* parent);
  void say(const QString& words, bool misreads);
  [[nodiscard]] const QString& words() const { return words_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Needle needle_;
  QString words_;
  bool misreads_ = false;
};

}  // namespace ohmkin::parts
