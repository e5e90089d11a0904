#pragma once
#include <QProxyStyle>

namespace ohmkin::look {

/// The program's own manner of drawing what Qt already has: thin scroll bars, a round slider, quiet buttons, one
/// visible focus ring.
class Style : public QProxyStyle {
  Q_OBJECT

 public:
  Style();
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                          const QWidget* widget) const override;
  [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
  [[nodiscard]] int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                              QStyleHintReturn* returned) const override;
  [[nodiscard]] QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl sub,
                                     const QWidget* widget) const override;
};

/// Ring around what has the keyboard, drawn just inside `rect`.
void drawFocusRing(QPainter& painter, const QRectF& rect, double radius);

/// Ratio of radius to size of everything round-cornered.
double cornerRadius();

}  // namespace ohmkin::look
