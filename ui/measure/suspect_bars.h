#pragma once
#include <QWidget>
#include <vector>

/// Whose curve it is: each answer with its chance as a bar and in words.
namespace ohmkin::measure {

struct SuspectRow {
  QString name;   ///< "Family A", "none of these"
  QString aside;  ///< "claimed · reads 4 % above it"; may be empty
  double chance = 0;
  bool gathered = false;  ///< several that are hardly possible
};

class SuspectBars : public QWidget {
  Q_OBJECT

 public:
  explicit SuspectBars(QWidget* parent = nullptr);
  void display(std::vector<SuspectRow> rows);
  [[nodiscard]] const std::vector<SuspectRow>& rows() const { return rows_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  std::vector<SuspectRow> rows_;
};

/// "97 %", "over 99 %", "under 1 %".
QString chanceWords(double probability);

}  // namespace ohmkin::measure
