#pragma once
#include <parts/entry.h>
#include <parts/names.h>
#include <parts/panel.h>
#include <workflow/edit_kinds.h>

namespace ohmkin::shelves {

/// One field of a form: its name, what stands in it, and under it what is wrong with that.
class FieldRow : public QWidget {
  Q_OBJECT

 public:
  FieldRow(const workflow::EditField& field, QWidget* parent);
  [[nodiscard]] const workflow::EditField& field() const { return field_; }
  [[nodiscard]] QString text() const;
  void setText(const QString& text);  ///< not as if typed
  [[nodiscard]] bool touched() const { return touched_; }
  void touch() { touched_ = true; }
  void setWrong(const QString& sentence);
  [[nodiscard]] QString wrong() const { return wrong_->isHidden() ? QString() : wrong_->text(); }
  void takeKeyboard();
  /// Wide fields have a line of the form to themselves.
  [[nodiscard]] bool wide() const;
  [[nodiscard]] QWidget* editor() const;
  void offer(const QString& forText, const std::vector<parts::NameWords>& names);

 signals:
  void changed();                         ///< by the person
  void namesAsked(const QString& typed);  ///< of what the field refers to

 private:
  workflow::EditField field_;
  parts::Words* label_;
  parts::Entry* entry_ = nullptr;
  parts::Choice* choice_ = nullptr;
  parts::Suggestions* names_ = nullptr;
  parts::Words* wrong_;
  bool touched_ = false;
};

}  // namespace ohmkin::shelves
