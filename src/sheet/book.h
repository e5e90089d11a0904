#pragma once
#include <sheet/canvas.h>

#include <string>
#include <vector>

namespace ohmkin::sheet {

struct Column {
  std::string name;  ///< in capitals
  double width = 20;
  Anchor anchor = Anchor::start;
  Weight weight = Weight::regular;
};

/// Pages filled from the top down, a new one begun where the next piece does not fit; every page says whose it is, of
/// what day, and which of how many.
class Book {
 public:
  struct Front {
    std::string label;  ///< what kind of sheet, in capitals
    std::string title;
    std::string date;
  };
  Book(PaperSize size, Front front);

  [[nodiscard]] Canvas& page() { return pages_.back(); }
  [[nodiscard]] double y() const { return y_; }  ///< where the next piece begins
  [[nodiscard]] double left() const { return kMargin; }
  [[nodiscard]] double width() const { return size_.width - 2 * kMargin; }
  /// What the columns of a table add up to: the gap behind the last one needs no paper.
  [[nodiscard]] double tableWidth() const { return width() + kGap; }
  [[nodiscard]] double room() const { return bottom() - y_; }  ///< left on this page
  void skip(double height) { y_ += height; }
  /// A new page where less than this is left.
  void need(double height);
  void newPage();

  void sides(const Heading& heading);                  ///< which gauge, which sender
  void part(std::string_view name, double with = 16);  ///< begins a part of the sheet, kept together with what follows
  void paragraph(Face face, std::string_view words);
  void item(std::string_view mark, std::string_view words);  ///< a paragraph with its mark hanging left
  /// Cells wrap; a row is never parted. The columns' names are repeated on a new page.
  void table(const std::vector<Column>& columns, const std::vector<std::vector<std::string>>& rows);
  void cautions(const std::vector<std::string>& cautions);  ///< in a frame, with the sign for danger
  Pages finish(std::size_t following = 0);  ///< so many pages of another kind follow and are counted with it

 private:
  static constexpr double kMargin = 18;
  static constexpr double kGap = 6;  ///< between the texts of two columns
  [[nodiscard]] double bottom() const { return size_.height - 20; }
  [[nodiscard]] static double placeOf(const Column& column, double x);
  void columnNames(const std::vector<Column>& columns);

  PaperSize size_;
  Front front_;
  std::vector<Canvas> pages_;
  double y_ = 0;
};

}  // namespace ohmkin::sheet
