#include <look/type.h>
#include <QApplication>
#include <QFontDatabase>
#include <QFontInfo>
#include <algorithm>
#include <cmath>

namespace ohmkin::look {
namespace {

double bodyPixels() { return QFontInfo(QApplication::font()).pixelSize(); }

}  // namespace

QFont typeface(Text text) {
  QFont f = QApplication::font();
  const double body = bodyPixels();
  const auto sized = [&f](double pixels) { f.setPixelSize(std::max(1, static_cast<int>(std::lround(pixels)))); };
  switch (text) {
    case Text::small:
      sized(body * 0.92);
      break;
    case Text::body:
      break;
    case Text::strong:
      f.setWeight(QFont::DemiBold);
      break;
    case Text::heading:
      sized(body * 1.08);
      f.setWeight(QFont::DemiBold);
      break;
    case Text::headline:
      sized(body * 1.3);
      f.setWeight(QFont::DemiBold);
      break;
  }
  return f;
}

QFontMetricsF metrics(Text text) { return QFontMetricsF(typeface(text)); }

int space(double atUsualSize) {
  const double scale = std::max(1.0, bodyPixels() / 13.0);
  return static_cast<int>(std::lround(atUsualSize * scale));
}

void chooseFamily() {
  QFont f = QApplication::font();
  for (const char* family : {"Inter", "Inter Variable", "Noto Sans"}) {
    if (!QFontDatabase::hasFamily(QString::fromLatin1(family))) continue;
    f.setFamily(QString::fromLatin1(family));
    break;
  }
  f.setStyleStrategy(QFont::PreferAntialias);
  QApplication::setFont(f);
}

}  // namespace ohmkin::look
