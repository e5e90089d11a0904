#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

namespace ohmkin::look {
namespace {

void drawSlider(const QStyleOptionSlider& slider, QPainter& painter, const QStyle& style, const QWidget* widget) {
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF knob = style.subControlRect(QStyle::CC_Slider, &slider, QStyle::SC_SliderHandle, widget);
  const QRectF whole = slider.rect;
  const double y = whole.center().y();
  const double thick = space(3);
  const QPointF middle(knob.center().x(), y);
  painter.setPen(QPen(colour(Paint::edge), thick, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(middle, QPointF(whole.right() - thick, y));
  painter.setPen(QPen(colour(Paint::accent), thick, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(whole.left() + thick, y), middle);
  const double radius = space(8);
  if (slider.state & QStyle::State_HasFocus) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(blended(colour(Paint::accent), colour(Paint::panel), 0.3));
    painter.drawEllipse(middle, radius + space(4), radius + space(4));
  }
  painter.setPen(QPen(colour(Paint::accent), thick));
  painter.setBrush(colour(Paint::panel));
  painter.drawEllipse(middle, radius, radius);
}

void drawScrollBar(const QStyleOptionSlider& bar, QPainter& painter, const QStyle& style, const QWidget* widget) {
  painter.setRenderHint(QPainter::Antialiasing);
  QRectF thumb = style.subControlRect(QStyle::CC_ScrollBar, &bar, QStyle::SC_ScrollBarSlider, widget);
  if (bar.maximum <= bar.minimum) return;
  thumb.adjust(2, 2, -2, -2);
  const bool over = bar.state & QStyle::State_MouseOver;
  painter.setPen(Qt::NoPen);
  painter.setBrush(blended(colour(Paint::edge), colour(Paint::ground), over ? 1.0 : 0.7));
  const double radius = std::min(thumb.width(), thumb.height()) / 2;
  painter.drawRoundedRect(thumb, radius, radius);
}

void drawBevel(const QStyleOptionButton& button, QPainter& painter) {
  painter.setRenderHint(QPainter::Antialiasing);
  const bool down = button.state & (QStyle::State_Sunken | QStyle::State_On);
  const bool over = button.state & QStyle::State_MouseOver;
  QRectF rect = QRectF(button.rect).adjusted(0.5, 0.5, -0.5, -0.5);
  painter.setPen(colour(down ? Paint::accent : Paint::edge));
  painter.setBrush(colour(down || over ? Paint::accentWash : Paint::panel));
  painter.drawRoundedRect(rect, cornerRadius(), cornerRadius());
}

}  // namespace

double cornerRadius() { return space(8); }

void drawFocusRing(QPainter& painter, const QRectF& rect, double radius) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const double thick = 2;
  painter.setPen(QPen(colour(Paint::accent), thick));
  painter.setBrush(Qt::NoBrush);
  const double inset = thick / 2;
  painter.drawRoundedRect(rect.adjusted(inset, inset, -inset, -inset), radius, radius);
  painter.restore();
}

Style::Style() : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))) {}

void Style::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                          const QWidget* widget) const {
  if (element == PE_FrameFocusRect) {
    drawFocusRing(*painter, QRectF(option->rect), cornerRadius());
    return;
  }
  if (element == PE_PanelTipLabel || element == PE_FrameMenu) {
    painter->save();
    painter->setPen(colour(Paint::edge));
    painter->setBrush(element == PE_PanelTipLabel ? QBrush(colour(Paint::panel)) : QBrush(Qt::NoBrush));
    painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
    painter->restore();
    return;
  }
  QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void Style::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                        const QWidget* widget) const {
  if (element == CE_PushButtonBevel) {
    if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
      painter->save();
      drawBevel(*button, *painter);
      painter->restore();
      return;
    }
  }
  if (element == CE_HeaderSection) {
    painter->fillRect(option->rect, colour(Paint::panel));
    painter->fillRect(QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1), colour(Paint::line));
    return;
  }
  // The grip between two panes shows when the mouse is on it: beside an empty pane it is a speck of nothing.
  if (element == CE_Splitter && (option->state & State_MouseOver) == 0) return;
  QProxyStyle::drawControl(element, option, painter, widget);
}

void Style::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                               const QWidget* widget) const {
  const auto* slider = qstyleoption_cast<const QStyleOptionSlider*>(option);
  if (slider == nullptr || (control != CC_Slider && control != CC_ScrollBar)) {
    QProxyStyle::drawComplexControl(control, option, painter, widget);
    return;
  }
  painter->save();
  if (control == CC_Slider) {
    drawSlider(*slider, *painter, *proxy(), widget);
  } else {
    drawScrollBar(*slider, *painter, *proxy(), widget);
  }
  painter->restore();
}

int Style::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
  switch (metric) {
    case PM_ScrollBarExtent:
      return space(8);
    case PM_ScrollBarSliderMin:
      return space(32);
    case PM_SliderLength:
    case PM_SliderThickness:
    case PM_SliderControlThickness:
      return space(28);
    case PM_ButtonMargin:
      return space(16);
    case PM_MenuPanelWidth:
      return 1;
    case PM_MenuVMargin:
      return space(4);
    default:
      return QProxyStyle::pixelMetric(metric, option, widget);
  }
}

int Style::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                     QStyleHintReturn* returned) const {
  switch (hint) {
    case SH_Slider_AbsoluteSetButtons:
      return Qt::LeftButton;
    case SH_ScrollBar_Transient:
      return 0;
    default:
      return QProxyStyle::styleHint(hint, option, widget, returned);
  }
}

QRect Style::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl sub,
                            const QWidget* widget) const {
  const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
  if (control != CC_ScrollBar || bar == nullptr) return QProxyStyle::subControlRect(control, option, sub, widget);
  // No arrow buttons: the groove is the whole bar.
  const bool upright = bar->orientation == Qt::Vertical;
  const QRect whole = bar->rect;
  const int length = upright ? whole.height() : whole.width();
  const int span = bar->maximum - bar->minimum;
  const int thumb = span <= 0
                        ? length
                        : std::clamp(static_cast<int>(qint64{length} * bar->pageStep / (span + bar->pageStep)),
                                     std::min(length, pixelMetric(PM_ScrollBarSliderMin, option, widget)), length);
  const int start = sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition, length - thumb, false);
  const auto slice = [&](int from, int to) {
    return upright ? QRect(whole.left(), whole.top() + from, whole.width(), to - from)
                   : QRect(whole.left() + from, whole.top(), to - from, whole.height());
  };
  switch (sub) {
    case SC_ScrollBarSlider:
      return slice(start, start + thumb);
    case SC_ScrollBarSubPage:
      return slice(0, start);
    case SC_ScrollBarAddPage:
      return slice(start + thumb, length);
    case SC_ScrollBarGroove:
      return whole;
    default:
      return {};
  }
}

}  // namespace ohmkin::look
