#pragma once
#include <QTableWidget>

namespace ohmkin::measure {

/// A table as the program draws them: no frame, quiet headings, thin lines, one accent for what is chosen.
class CalmTable : public QTableWidget {
  Q_OBJECT

 public:
  CalmTable(const QString& name, const QStringList& headings, QWidget* parent = nullptr);
  /// As high as its rows, but not higher than so many.
  void showAtMost(int rows);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  void fitColumns();  ///< to their words, within reason
  /// One row of words, none to be typed on; tips say what does not fit.
  void addWords(const QStringList& words);

 protected:
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  int most_ = 8;
};

}  // namespace ohmkin::measure
