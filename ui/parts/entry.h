#pragma once
#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

/// Fields of a form, drawn as the one text box is: a rounded sheet, an accent ring around what has the keyboard.
namespace ohmkin::parts {

class Entry : public QLineEdit {
  Q_OBJECT

 public:
  explicit Entry(const QString& name, QWidget* parent = nullptr);  ///< name for those who do not see the label
  void setWrong(bool wrong);  ///< what stands in it is not understood; said in words elsewhere too
  [[nodiscard]] bool wrong() const { return wrong_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void left(int direction);  ///< Return and Down: 1, Up: −1

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  bool wrong_ = false;
};

class Choice : public QComboBox {
  Q_OBJECT

 public:
  explicit Choice(const QString& name, QWidget* parent = nullptr);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;  ///< scrolls the page, not the choice
};

/// Gives the rows of a list that drops down room and the accent of what is chosen.
void makeRoomy(QAbstractItemView& list);

/// Yes or no.
class Tick : public QCheckBox {
  Q_OBJECT

 public:
  explicit Tick(const QString& words, QWidget* parent = nullptr);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;
  [[nodiscard]] bool hitButton(const QPoint& at) const override { return rect().contains(at); }
};

}  // namespace ohmkin::parts
