#pragma once
#include <QSvgRenderer>
#include <QWidget>

/// A drawing on white paper, whatever the tone of the window: as it will be printed, fitted into the room there is.
namespace ohmkin::parts {

class PaperView : public QWidget {
  Q_OBJECT

 public:
  explicit PaperView(QWidget* parent = nullptr);
  /// An SVG document, or that part of it, in its own units; false where it cannot be read, and the paper stays blank.
  bool display(const QByteArray& svg, const QRectF& part = {});
  [[nodiscard]] bool blank() const { return !drawing_.isValid(); }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QSvgRenderer drawing_;
};

}  // namespace ohmkin::parts
