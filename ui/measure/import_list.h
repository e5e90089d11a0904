#pragma once
#include <desk/catalogue_thread.h>
#include <measure/calm_table.h>
#include <parts/panel.h>
#include <workflow/import_readings.h>
#include <QPushButton>

namespace ohmkin::measure {

/// What came in from files, newest first, and taking one out again.
class ImportList : public QWidget {
  Q_OBJECT

 public:
  explicit ImportList(desk::CatalogueThread& thread, QWidget* parent = nullptr);
  void catalogueOpened(const QString& file);
  void reload();
  void setWho(const QString& who) { who_ = who; }
  void takeKeyboard();
  [[nodiscard]] QString asText() const;

  [[nodiscard]] CalmTable& table() const { return *table_; }
  [[nodiscard]] QPushButton& undoButton() const { return *undo_; }
  [[nodiscard]] QString told() const { return outcome_->text(); }

 signals:
  void undone();

 private:
  void display(std::vector<catalog::ImportRecord> records);
  void chosen();
  void tell(const QString& outcome, bool refused);
  void pressed();
  void undo(catalog::ImportNumber id);

  desk::CatalogueThread& thread_;
  QString file_;
  QString who_;
  std::vector<catalog::ImportRecord> records_;
  bool sure_ = false;  ///< asked once, and the same one is still chosen
  parts::Words* none_;
  CalmTable* table_;
  QPushButton* undo_;
  QPushButton* leave_;
  parts::Words* question_;
  parts::Words* outcome_;
};

}  // namespace ohmkin::measure
