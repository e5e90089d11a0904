#pragma once
#include <sheet/lettering.h>
#include <sheet/paper.h>

#include <string>
#include <string_view>
#include <vector>

namespace ohmkin::sheet {

struct Spot {
  double x = 0;
  double y = 0;
};
struct Box {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;
  [[nodiscard]] double right() const { return x + width; }
  [[nodiscard]] double bottom() const { return y + height; }
};

enum class Anchor { start, middle, end };

/// A size of type in millimetres to the em, and its weight.
struct Face {
  double size = 3;
  Weight weight = Weight::regular;
};
inline constexpr Face kHero{6.6, Weight::bold};
inline constexpr Face kTitle{5.4, Weight::bold};
inline constexpr Face kLead{3.7, Weight::regular};
inline constexpr Face kBody{2.9, Weight::regular};
inline constexpr Face kStrong{2.9, Weight::bold};
inline constexpr Face kSmall{2.4, Weight::regular};
inline constexpr Face kLabel{2.1, Weight::bold};  ///< in capitals, over a part of the sheet
inline constexpr double kLeading = 1.42;          ///< baseline to baseline, in sizes

/// One page as it is being drawn. Millimetres from the upper left corner; text stands on its baseline.
class Canvas {
 public:
  explicit Canvas(PaperSize size);

  void text(Spot at, Face face, std::string_view words, Anchor anchor = Anchor::start);
  /// Wrapped into `width`; returns the baseline of the line that would come next.
  double paragraph(Spot first, Face face, std::string_view words, double width, std::size_t most = 0);
  /// Turned a quarter to the left, read from below.
  void upright(Spot at, Face face, std::string_view words, Anchor anchor = Anchor::middle);
  void line(Spot from, Spot to, double stroke, std::string_view dashes = {});
  void polyline(const std::vector<Spot>& spots, double stroke, std::string_view dashes = {});
  void polygon(const std::vector<Spot>& spots, double stroke, bool filled);
  void box(const Box& where, double stroke, double radius = 0);
  void blank(const Box& where);  ///< paper again, under words that would cross a line
  void dot(Spot at, double radius);
  void ring(Spot at, double radius, double stroke);
  /// Another drawing in the same scale, its origin moved to `at`. `svg` is trusted: elements, not text.
  void place(Spot at, std::string_view elements);

  [[nodiscard]] PaperSize size() const { return size_; }
  [[nodiscard]] std::string finish() const;

 private:
  PaperSize size_;
  std::string elements_;
};

}  // namespace ohmkin::sheet
