#pragma once
#include <parts/panel.h>
#include <QVBoxLayout>

namespace ohmkin::parts {

/// Where work can hurt someone. There is no way to close it.
class CautionPanel : public Panel {
  Q_OBJECT

 public:
  explicit CautionPanel(QWidget* parent = nullptr);
  /// The first is the one to read first; none hides nothing that was there.
  void display(const QStringList& cautions);
  [[nodiscard]] const QStringList& cautions() const { return cautions_; }

 private:
  QStringList cautions_;
  Words* first_;
  Words* rest_;
};

}  // namespace ohmkin::parts
