#pragma once
#include <QTableWidget>
#include <vector>

/// What fails how, and what the needle then shows.
namespace ohmkin::parts {

struct FailureWords {
  QString part;
  QString mode;
  QString needle;   ///< at the hot mark
  QString noticed;  ///< "seen" or "silent"
  QString sentence;
  bool misleads = false;
};

class FailureTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit FailureTable(QWidget* parent = nullptr);
  void display(const std::vector<FailureWords>& failures);
  [[nodiscard]] QSize sizeHint() const override;  ///< as high as its rows: it stands in something that scrolls
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void fill();
  std::vector<FailureWords> failures_;
};

}  // namespace ohmkin::parts
