#pragma once
#include <QAbstractButton>
#include <QButtonGroup>
#include <vector>

namespace ohmkin::parts {

/// A few ways to look at the same thing, one of them chosen. Arrow keys go along it.
class Segmented : public QWidget {
  Q_OBJECT

 public:
  explicit Segmented(const QString& name, QWidget* parent = nullptr);
  /// A second, quiet line of a segment follows a line break.
  void setSegments(const QStringList& words);
  void choose(int index);
  [[nodiscard]] int chosenIndex() const { return group_.checkedId(); }
  [[nodiscard]] int count() const { return static_cast<int>(group_.buttons().size()); }
  /// Segments share the width evenly; otherwise each is as wide as its words.
  void setEven(bool even);

 signals:
  void chosen(int index);

 private:
  QButtonGroup group_;
  QStringList words_;
  bool even_ = false;
};

}  // namespace ohmkin::parts
