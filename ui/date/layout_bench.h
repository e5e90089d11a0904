#pragma once
#include <date/layout_fields.h>
#include <date/layout_list.h>
#include <dating/decode.h>
#include <desk/catalogue_thread.h>
#include <parts/chip_row.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/save_layout.h>
#include <QPushButton>

namespace ohmkin::castings {

/// Try a layout on a code as it is typed, and keep it as the shop's own.
class LayoutBench : public QWidget {
  Q_OBJECT

 public:
  explicit LayoutBench(desk::CatalogueThread& thread, QWidget* parent = nullptr);
  void catalogueOpened(const QString& file);
  void takeKeyboard();

  [[nodiscard]] QListWidget& list() const { return *list_; }
  [[nodiscard]] LayoutFields& fields() const { return *fields_; }
  [[nodiscard]] parts::Entry& name() const { return *name_; }
  [[nodiscard]] parts::Entry& id() const { return *id_; }
  [[nodiscard]] parts::Entry& sample() const { return *sample_; }
  [[nodiscard]] parts::Entry& day() const { return *day_; }
  [[nodiscard]] parts::Entry& citation() const { return *citation_; }
  [[nodiscard]] parts::ChipRow& readings() const { return *readings_; }
  [[nodiscard]] QPushButton& saveButton() const { return *save_; }
  [[nodiscard]] parts::Tick& replaceTick() const { return *replace_; }
  [[nodiscard]] QString said() const { return said_->text(); }        ///< about the code tried
  [[nodiscard]] QString outcome() const { return outcome_->text(); }  ///< of saving

 signals:
  void saved();

 private:
  QWidget* makeEditor();
  QWidget* makeSaving();
  void fillList(const std::vector<dating::Layout>& layouts, const std::vector<std::pair<QString, QString>>& examples);
  void take(int index);
  void tried();
  void displayTried(const dating::Decoded& decoded, const QString& wouldBe);
  void save();
  void tellOutcome(const QString& sentence, bool refused);
  [[nodiscard]] dating::Layout layout() const;

  desk::CatalogueThread& thread_;
  QString file_;
  std::vector<dating::Layout> layouts_;
  std::vector<std::pair<QString, QString>> examples_;  ///< code and day of each
  bool ownId_ = false;                                 ///< typed by the person, not made from the name
  bool ownDay_ = false;
  LayoutList* list_;
  parts::Entry* name_;
  parts::Choice* place_;
  parts::Entry* id_;
  LayoutFields* fields_;
  parts::Entry* sample_;
  parts::ChipRow* readings_;
  parts::Words* said_;
  parts::Entry* day_;
  parts::Choice* sourceKind_;
  parts::Entry* citation_;
  parts::Tick* replace_;
  QPushButton* save_;
  parts::Words* outcome_;
};

}  // namespace ohmkin::castings
