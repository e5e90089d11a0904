#pragma once
#include <QPainter>
#include <QString>
#include <vector>

/// A text some characters of which are what somebody looked for.
namespace ohmkin::parts {

struct MarkedWords {
  QString text;
  struct Span {
    int begin = 0;  ///< UTF-16
    int length = 0;
    friend bool operator==(const Span&, const Span&) = default;
  };
  std::vector<Span> spans;  ///< in order, apart from each other
  friend bool operator==(const MarkedWords&, const MarkedWords&) = default;
};

/// In one line, elided at its end; what is marked stands on a wash and is underlined, so that it is not told by colour
/// alone. Returns the width used.
double drawMarked(QPainter& painter, const QRectF& line, const MarkedWords& words, const QFont& font,
                  const QColor& ink);

}  // namespace ohmkin::parts
