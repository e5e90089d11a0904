#pragma once
#include <look/palette.h>
#include <QFrame>
#include <QLabel>

namespace ohmkin::parts {

/// A rounded sheet that things stand on.
class Panel : public QFrame {
  Q_OBJECT

 public:
  enum class Kind { sheet, dashed, caution };
  explicit Panel(Kind kind = Kind::sheet, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Kind kind_;
};

/// Words in one of the program's sizes and colours, plain text, wrapping; follows a change of tone.
class Words : public QLabel {
  Q_OBJECT

 public:
  explicit Words(const QString& text = {}, QWidget* parent = nullptr);
  Words* sized(const QFont& font);
  Words* painted(look::Paint paint);
  Words* selectable();

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void paintInk();
  look::Paint paint_ = look::Paint::ink;
};

/// What a field is called, beside or above it: small, quiet, on one line.
Words* fieldName(const QString& text, QWidget* parent);

}  // namespace ohmkin::parts
