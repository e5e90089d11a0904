#include <look/palette.h>
#include <QApplication>
#include <cmath>

namespace ohmkin::look {
namespace {

struct Row {
  QRgb light;
  QRgb dark;
};

// In the order of Paint.
constexpr std::array<Row, kPaints> kTable{{
    {0xFFF6F4EF, 0xFF191D21},  // ground
    {0xFFFFFFFF, 0xFF22282D},  // panel
    {0xFF1F2933, 0xFFE9E6DF},  // ink
    {0xFF5A6570, 0xFF9AA5AE},  // quiet
    {0xFFDFDBD1, 0xFF363E45},  // line
    {0xFF858A8C, 0xFF6F7A83},  // edge
    {0xFF1B6B72, 0xFF6FC0C4},  // accent
    {0xFFE3EFEF, 0xFF24393C},  // accentWash
    {0xFFA8431F, 0xFFF0956B},  // warning
    {0xFFF8E8E0, 0xFF3F2D26},  // warningWash
    {0xFFECE8DF, 0xFF2B3136},  // unknownWash
}};

Tone current = Tone::light;

double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& c) {
  return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

QPalette paletteOf(Tone tone) {
  const auto at = [tone](Paint p) { return colour(p, tone); };
  QPalette palette;
  palette.setColor(QPalette::Window, at(Paint::ground));
  palette.setColor(QPalette::WindowText, at(Paint::ink));
  palette.setColor(QPalette::Base, at(Paint::panel));
  palette.setColor(QPalette::AlternateBase, at(Paint::ground));
  palette.setColor(QPalette::Text, at(Paint::ink));
  palette.setColor(QPalette::PlaceholderText, at(Paint::quiet));
  palette.setColor(QPalette::Button, at(Paint::panel));
  palette.setColor(QPalette::ButtonText, at(Paint::ink));
  palette.setColor(QPalette::ToolTipBase, at(Paint::panel));
  palette.setColor(QPalette::ToolTipText, at(Paint::ink));
  palette.setColor(QPalette::Highlight, at(Paint::accentWash));
  palette.setColor(QPalette::HighlightedText, at(Paint::ink));
  palette.setColor(QPalette::Link, at(Paint::accent));
  palette.setColor(QPalette::Light, at(Paint::panel));
  palette.setColor(QPalette::Midlight, at(Paint::line));
  palette.setColor(QPalette::Mid, at(Paint::line));
  palette.setColor(QPalette::Dark, at(Paint::edge));
  palette.setColor(QPalette::Shadow, at(Paint::edge));
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, at(Paint::quiet));
  return palette;
}

}  // namespace

QColor colour(Paint paint, Tone tone) {
  const Row& row = kTable.at(static_cast<std::size_t>(paint));
  return QColor::fromRgba(tone == Tone::light ? row.light : row.dark);
}

QColor colour(Paint paint) { return colour(paint, current); }

Tone tone() { return current; }

Tone toneOf(const QPalette& desktop) {
  return luminance(desktop.color(QPalette::WindowText)) > luminance(desktop.color(QPalette::Window)) ? Tone::dark
                                                                                                     : Tone::light;
}

void setTone(Tone tone) {
  current = tone;
  QApplication::setPalette(paletteOf(tone));
}

double contrast(const QColor& one, const QColor& other) {
  const double a = luminance(one);
  const double b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

QColor blended(const QColor& over, const QColor& under, double cover) {
  const auto mix = [cover](float a, float b) { return static_cast<float>(cover * a + (1 - cover) * b); };
  return QColor::fromRgbF(mix(over.redF(), under.redF()), mix(over.greenF(), under.greenF()),
                          mix(over.blueF(), under.blueF()));
}

}  // namespace ohmkin::look
