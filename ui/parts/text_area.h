#pragma once
#include <QPlainTextEdit>

namespace ohmkin::parts {

/// A field of a form for more than one line, drawn as an Entry. Tab goes on to the next field.
class TextArea : public QPlainTextEdit {
  Q_OBJECT

 public:
  explicit TextArea(const QString& name, int lines, QWidget* parent = nullptr);
  [[nodiscard]] QString text() const { return toPlainText(); }
  void setText(const QString& text) { setPlainText(text); }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  int lines_;
};

}  // namespace ohmkin::parts
