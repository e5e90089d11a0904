#pragma once
#include <QWidget>
#include <vector>

/// What may be the matter, most likely first: a bar and a word each.
namespace ohmkin::fault {

struct LikelihoodRow {
  QString name;   ///< "the lead is broken"
  QString words;  ///< "likely"
  double probability = 0;
  friend bool operator==(const LikelihoodRow&, const LikelihoodRow&) = default;
};

class LikelihoodBars : public QWidget {
  Q_OBJECT

 public:
  explicit LikelihoodBars(QWidget* parent = nullptr);
  void display(std::vector<LikelihoodRow> rows);
  [[nodiscard]] const std::vector<LikelihoodRow>& rows() const { return rows_; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<LikelihoodRow> rows_;
};

}  // namespace ohmkin::fault
