#pragma once
#include <QWidget>
#include <vector>

/// Under the text box: what the question was understood to say, one chip a thing.
namespace ohmkin::parts {

enum class ChipKind { understood, inferred, conflict, unknown };

struct ChipWords {
  QString text;
  ChipKind kind = ChipKind::understood;
  friend bool operator==(const ChipWords&, const ChipWords&) = default;
};

class Chip : public QWidget {
  Q_OBJECT

 public:
  Chip(const ChipWords& words, QWidget* parent);
  [[nodiscard]] const ChipWords& words() const { return words_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  ChipWords words_;
};

class ChipRow : public QWidget {
  Q_OBJECT

 public:
  explicit ChipRow(QWidget* parent = nullptr);
  void display(const std::vector<ChipWords>& chips);
  [[nodiscard]] const std::vector<ChipWords>& chips() const { return chips_; }

 private:
  std::vector<ChipWords> chips_;
};

}  // namespace ohmkin::parts
