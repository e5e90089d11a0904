#pragma once
#include <QListWidget>
#include <vector>

/// Every test not yet answered, the best first: any can be chosen.
namespace ohmkin::fault {

struct TestRow {
  std::size_t test = 0;
  QString title;
  QString value;  ///< "tells much · 3 min"
  QString why;    ///< why it has no weight; empty: it has
  friend bool operator==(const TestRow&, const TestRow&) = default;
};

class TestList : public QListWidget {
  Q_OBJECT

 public:
  explicit TestList(QWidget* parent = nullptr);
  void display(const std::vector<TestRow>& rows);
  [[nodiscard]] const std::vector<TestRow>& rows() const { return rows_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void chosen(int row);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  std::vector<TestRow> rows_;
};

}  // namespace ohmkin::fault
