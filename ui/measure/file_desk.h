#pragma once
#include <desk/catalogue_thread.h>
#include <desk/settings.h>
#include <measure/curve_plot.h>
#include <measure/file_columns.h>
#include <measure/file_head.h>
#include <measure/open_questions.h>
#include <measure/run_table.h>
#include <measure/shop.h>
#include <measure/suspect_bars.h>
#include <parts/blank_sheet.h>
#include <parts/chip_row.h>
#include <parts/finding_list.h>
#include <QStackedWidget>
#include <atomic>

namespace ohmkin::measure {

/// A file of readings: how it was read, put right, what was found in it, and only then brought in.
class FileDesk : public QWidget {
  Q_OBJECT

 public:
  FileDesk(desk::CatalogueThread& thread, desk::Settings& settings, QWidget* parent = nullptr);
  void setShop(const QString& file, const SharedShop& shop);
  void forget();
  void openFile(const QString& path);
  void refresh() { asked(); }  ///< what is in the catalogue has changed
  void stop();                 ///< whatever is being read; nothing was written
  void takeKeyboard();
  [[nodiscard]] QString asText() const;

  [[nodiscard]] FileColumns& columns() const { return *columns_; }
  [[nodiscard]] RunTable& runs() const { return *runs_; }
  [[nodiscard]] CalmTable& rejected() const { return *rejected_; }
  [[nodiscard]] CurvePlot& plot() const { return *plot_; }
  [[nodiscard]] SuspectBars& bars() const { return *bars_; }
  [[nodiscard]] QPushButton& bringInButton() const { return head_->bringIn(); }
  [[nodiscard]] QPushButton& cancelButton() const { return head_->cancel(); }
  [[nodiscard]] parts::Entry& who() const { return head_->who(); }
  [[nodiscard]] QString sentence() const { return head_->sentence(); }
  [[nodiscard]] QString already() const { return head_->already(); }
  [[nodiscard]] QString told() const { return head_->told(); }
  [[nodiscard]] OpenQuestions& questions() const { return *questions_; }
  [[nodiscard]] QString runsNote() const { return runsNote_->text(); }
  [[nodiscard]] bool working() const { return working_; }
  [[nodiscard]] bool showsPreview() const { return stack_->currentIndex() == 1 && preview_ != nullptr; }

 signals:
  void broughtIn();

 private:
  QWidget* makeWork();
  QWidget* makeFound();
  void wire();
  void showWork(bool work);
  void choose();
  void correct(const QString& line);
  void asked();
  [[nodiscard]] workflow::ImportAsked request() const;
  workflow::OnProgress reporting(const std::shared_ptr<std::atomic<bool>>& stopped);
  void display(const std::shared_ptr<const workflow::ImportPreview>& preview);
  void displayStopped();
  void noteRuns(const QString& refused);
  void displayRun(int run);
  void displayRefused(const Refusal& refusal, const std::shared_ptr<const exchange::Proposal>& proposal);
  void bringIn();
  void displayRejected(const workflow::ImportPreview& preview);
  void setWorking(bool working, const QString& words);

  desk::CatalogueThread& thread_;
  desk::Settings& settings_;
  QString catalogue_;
  SharedShop shop_;
  QString path_;
  QString correction_;
  std::vector<workflow::RunSaid> said_;
  std::shared_ptr<std::atomic<bool>> stop_;
  std::shared_ptr<const workflow::ImportPreview> preview_;
  bool working_ = false;
  bool bringing_ = false;  ///< and not only looking

  QStackedWidget* stack_;
  parts::BlankSheet* blank_;
  FileHead* head_ = nullptr;
  OpenQuestions* questions_ = nullptr;
  parts::ChipRow* chips_ = nullptr;
  FileColumns* columns_ = nullptr;
  CalmTable* rejected_ = nullptr;
  parts::Words* rejectedName_ = nullptr;
  QWidget* found_ = nullptr;
  RunTable* runs_ = nullptr;
  parts::Words* runsNote_ = nullptr;
  CurvePlot* plot_ = nullptr;
  SuspectBars* bars_ = nullptr;
  parts::FindingList* remarks_ = nullptr;
};

}  // namespace ohmkin::measure
