#pragma once
#include <QXmlStreamReader>

#include <string>
#include <vector>

/// A page read by Qt's XML parser, not by ours.
namespace ohmkin::test {

struct SheetText {
  QString words;
  double x = 0;
  double y = 0;
  double size = 0;
  bool bold = false;
  QString anchor;
  bool moved = false;  ///< inside a placed drawing, or turned: x and y are not the page's
};

struct SheetPage {
  bool wellFormed = false;
  QString width;
  QString height;
  QString viewBox;
  std::vector<SheetText> texts;
  QStringList names;  ///< of all elements
  [[nodiscard]] QString all() const {
    QStringList words;
    for (const SheetText& text : texts) words << text.words;
    return words.join(QLatin1Char(' '));
  }
};

inline SheetPage readPage(const std::string& svg) {
  SheetPage page;
  QXmlStreamReader reader(QByteArray::fromStdString(svg));
  int groups = 0;
  while (!reader.atEnd()) {
    reader.readNext();
    if (reader.isEndElement() && reader.name() == QStringLiteral("g")) --groups;
    if (!reader.isStartElement()) continue;
    const QXmlStreamAttributes with = reader.attributes();
    const auto value = [&](const char* name) { return with.value(QLatin1String(name)).toString(); };
    page.names << reader.name().toString();
    if (reader.name() == QStringLiteral("g")) ++groups;
    if (reader.name() == QStringLiteral("svg")) {
      page.width = value("width");
      page.height = value("height");
      page.viewBox = value("viewBox");
    }
    if (reader.name() != QStringLiteral("text")) continue;
    SheetText text{{},
                   value("x").toDouble(),
                   value("y").toDouble(),
                   value("font-size").toDouble(),
                   value("font-weight") == QStringLiteral("bold"),
                   value("text-anchor"),
                   groups > 0 || with.hasAttribute(QStringLiteral("transform"))};
    text.words = reader.readElementText();
    page.texts.push_back(std::move(text));
  }
  page.wellFormed = !reader.hasError();
  return page;
}

inline QString allWords(const std::vector<std::string>& pages) {
  QStringList words;
  for (const std::string& page : pages) words << readPage(page).all();
  return words.join(QLatin1Char(' '));
}

}  // namespace ohmkin::test
