#pragma once
#include <desk/catalogue_thread.h>
#include <desk/settings.h>
#include <measure/answer_view.h>
#include <measure/keep_form.h>
#include <measure/reading_table.h>
#include <measure/set_up.h>
#include <measure/shop.h>
#include <parts/busy_line.h>
#include <parts/caution_panel.h>

namespace ohmkin::measure {

/// Readings by hand: the table, what is on the bench, and the answer that grows as they are typed.
class HandDesk : public QWidget {
  Q_OBJECT

 public:
  HandDesk(desk::CatalogueThread& thread, desk::Settings& settings, QWidget* parent = nullptr);
  void setShop(const QString& file, const SharedShop& shop);
  void refresh() { asked(); }  ///< what is in the catalogue has changed
  void forget();
  void takeKeyboard() { table_->takeKeyboard(); }
  [[nodiscard]] QString asText() const;

  [[nodiscard]] ReadingTable& table() const { return *table_; }
  [[nodiscard]] SetUp& setUp() const { return *setUp_; }
  [[nodiscard]] KeepForm& keepForm() const { return *keep_; }
  [[nodiscard]] AnswerView& view() const { return *view_; }
  [[nodiscard]] parts::CautionPanel& cautions() const { return *cautions_; }
  [[nodiscard]] QString note() const { return note_->text(); }
  [[nodiscard]] const workflow::BenchAnswer* answer() const { return answer_.get(); }

 signals:
  void kept();

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeLeft();
  void wire();
  void asked();
  void keep();
  void display(const std::shared_ptr<const workflow::BenchAnswer>& answer, const RowsRead& read);
  void displayRefused(const QString& sentence, const RowsRead& read);
  void showNote(int row);
  void clearAll();

  desk::CatalogueThread& thread_;
  desk::Settings& settings_;
  QString file_;
  SharedShop shop_;
  std::shared_ptr<const workflow::BenchAnswer> answer_;

  parts::CautionPanel* cautions_;
  QBoxLayout* sides_;
  QWidget* left_ = nullptr;
  SetUp* setUp_ = nullptr;
  ReadingTable* table_ = nullptr;
  parts::Words* note_ = nullptr;
  QPushButton* clear_ = nullptr;
  KeepForm* keep_ = nullptr;
  AnswerView* view_;
};

}  // namespace ohmkin::measure
