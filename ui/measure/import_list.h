#pragma once
#include <desk/catalogue_thread.h>
#include <measure/calm_table.h>
#include <parts/panel.h>
#include <workflow/import_readings.h>
#include <QPushButton>

namespace ohmkin::measure {

/// A file that came in, or a run that was kept by hand; never both.
struct KeptEntry {
  std::optional<catalog::ImportRecord> import;
  std::optional<catalog::RunRecord> run;
  [[nodiscard]] const std::string& at() const { return import ? import->at : run->at; }
  [[nodiscard]] bool stands() const { return !import || import->stands(); }
  [[nodiscard]] std::int64_t rows() const { return import ? import->rows : run->rows; }
  [[nodiscard]] QString name() const;  ///< "import 3, bath.csv", "run 4, BR-2215 of lot R7"
};

/// What the shop measured and keeps, newest first, and taking it out again.
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
  void display(std::vector<KeptEntry> entries);
  void chosen();
  void tell(const QString& outcome, bool refused);
  void pressed();
  void undo(const KeptEntry& entry);

  desk::CatalogueThread& thread_;
  QString file_;
  QString who_;
  std::vector<KeptEntry> entries_;
  bool sure_ = false;  ///< asked once, and the same one is still chosen
  parts::Words* none_;
  CalmTable* table_;
  QPushButton* undo_;
  QPushButton* leave_;
  parts::Words* question_;
  parts::Words* outcome_;
};

}  // namespace ohmkin::measure
