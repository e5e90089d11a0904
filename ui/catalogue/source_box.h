#pragma once
#include <catalogue/field_row.h>
#include <workflow/edit_rows.h>
#include <optional>

namespace ohmkin::shelves {

/// A source stated together with the fact: folded until it is asked for.
class SourceBox : public QWidget {
  Q_OBJECT

 public:
  explicit SourceBox(QWidget* parent = nullptr);
  void clear();
  void fold(bool open);
  [[nodiscard]] bool open() const { return tick_->isChecked(); }
  /// None: not asked for. Whether its words will do is said by saving.
  [[nodiscard]] std::optional<workflow::NewSource> source() const;
  /// At the field; false: not one of these.
  bool setWrong(const std::string& field, const QString& sentence);
  [[nodiscard]] bool sound() const;
  [[nodiscard]] parts::Tick& tick() const { return *tick_; }
  [[nodiscard]] FieldRow& citation() const { return *citation_; }

 signals:
  void changed();

 private:
  void check();
  parts::Tick* tick_;
  QWidget* fields_;
  FieldRow* kind_;
  FieldRow* citation_;
  FieldRow* confidence_;
  FieldRow* id_;
};

}  // namespace ohmkin::shelves
