#pragma once
#include <catalogue/clerk.h>
#include <catalogue/field_grid.h>
#include <catalogue/part_table.h>
#include <catalogue/source_box.h>
#include <desk/settings.h>
#include <parts/panel.h>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

namespace ohmkin::shelves {

/// A thing with its parts, made from its kind's fields; each checked as it is typed, all of it when it is saved.
class ThingForm : public QWidget {
  Q_OBJECT

 public:
  ThingForm(Clerk& clerk, const desk::Settings& settings, QWidget* parent = nullptr);
  void edit(const workflow::Thing& thing);
  void save();
  void revert();
  /// Gives up; where something was typed, only when asked a second time.
  void close();
  [[nodiscard]] workflow::Thing thing() const;
  [[nodiscard]] bool dirty() const;
  void takeKeyboard();

  [[nodiscard]] FieldRow* row(std::string_view field) const { return fields_->row(field); }
  [[nodiscard]] PartTable* part(std::string_view name) const;
  [[nodiscard]] SourceBox& sourceBox() const { return *sources_; }
  [[nodiscard]] QPushButton& saveButton() const { return *save_; }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }

 signals:
  void saved(const ohmkin::workflow::Edited& edited);
  void closed();

 private:
  void typed();
  void checkTyped();
  void askCheck();
  void place(const std::vector<Refusal>& refusals, bool all);
  void refused(const workflow::EditRefusal& refusal);
  void tell(const QString& sentence, bool wrong);
  void sayHelp();
  void names(FieldRow& row, const QString& typed);
  Clerk& clerk_;
  const desk::Settings& settings_;
  const workflow::EditKind* kind_ = nullptr;
  workflow::Thing original_;
  DisplayUnits units_;
  QTimer settle_;
  bool waiting_ = false;
  bool pressed_ = false;  ///< saving was tried: every field may be said to be wrong
  bool asked_ = false;    ///< to close, with something typed

  parts::Words* kindWords_;
  parts::Words* name_;
  parts::Words* whose_;
  FieldGrid* fields_;
  SourceBox* sources_;
  QWidget* body_;
  QVBoxLayout* partColumn_;
  std::vector<PartTable*> tables_;
  parts::Words* help_;
  parts::Words* told_;
  QPushButton* save_;
  QPushButton* revert_;
  QPushButton* close_;
};

}  // namespace ohmkin::shelves
