#pragma once
#include <desk/catalogue_thread.h>
#include <desk/page.h>
#include <jobs/job_desk.h>
#include <jobs/job_list.h>
#include <parts/busy_line.h>
#include <print/print_sheet.h>
#include <QSplitter>
#include <deque>

namespace ohmkin::jobs {

/// Jobs of the counter: found, begun, written in, closed, printed.
class JobsPage : public desk::Page {
  Q_OBJECT

 public:
  explicit JobsPage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override { desk::letGo({&thread_}, then); }
  [[nodiscard]] QString unsaved() const override;
  void showNoCatalogue() override;
  void takeKeyboard() override;
  [[nodiscard]] QString asText() const override { return desk_->asText(); }

  [[nodiscard]] parts::Entry& search() const { return *search_; }
  [[nodiscard]] JobList& list() const { return *list_; }
  [[nodiscard]] JobDesk& job() const { return *desk_; }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *blank_; }
  [[nodiscard]] QString count() const { return count_->text(); }
  [[nodiscard]] bool ready() const { return stack_->currentIndex() == 1; }
  [[nodiscard]] bool busy() const { return writing_ > 0; }
  [[nodiscard]] std::optional<catalog::JobNumber> shownJob() const;
  void attach(const QString& file);
  /// Refuse where there is no job, or nothing to print of it.
  [[nodiscard]] Expected<printing::Sheets> jobSheet() const;
  [[nodiscard]] Expected<printing::Sheets> shelfLabel() const;
  [[nodiscard]] Expected<printing::Sheets> offsetCard() const;

 protected:
  void showEvent(QShowEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  /// What is done on the thread to the catalogue, and of which job.
  using Write = std::function<Expected<catalog::JobNumber>(catalog::Catalogue&, const std::string& who)>;
  enum class Kind { step, newJob, erasing, there, back };
  struct Done {
    catalog::JobNumber id;
    std::optional<catalog::JobStep> step;  ///< that undo would take
  };

  QWidget* makeLeft();
  void wire();
  void offerActions();
  void load();  ///< the list
  void take(std::vector<catalog::JobRecord> jobs, qint64 all);
  void showJob(catalog::JobNumber id);
  void display(const std::shared_ptr<const workflow::JobView>& view);
  void askToday();
  void write(Kind kind, const QString& what, Write work);
  void written(Kind kind, const QString& what, const Done& done);
  void refuse(Kind kind, const QString& sentence);
  void takeBack(catalog::JobNumber id, const catalog::JobStep& step, bool back);
  void takeBackNew(catalog::JobNumber id, bool back);
  void send();
  void closeOrOpen();
  void forget(const std::optional<Refusal>& whyNot);
  void sayNothing();
  [[nodiscard]] bool givesUp();
  void showState();

  desk::Settings& settings_;
  QString file_;
  std::shared_ptr<const workflow::JobView> view_;
  std::optional<catalog::JobNumber> wanted_;  ///< to be chosen when the list has come
  std::string newest_;                        ///< change of any job, when the list was read last
  std::vector<std::pair<int, workflow::AnsweredAgain>> today_;
  std::optional<Expected<sheet::Pages>> jobSheet_;    ///< made on the thread, of the job shown
  std::optional<Expected<sheet::Pages>> shelfLabel_;  ///< of the part fitted, or recommended last
  int writing_ = 0;
  QStringList askedOf_;  ///< what stood in the form when giving it up was asked about

  parts::BlankSheet* blank_;
  QStackedWidget* stack_;
  parts::BusyLine* busy_;
  QSplitter* split_;
  parts::Entry* search_;
  QPushButton* begin_;
  parts::Words* count_;
  JobList* list_;
  JobDesk* desk_;
  std::vector<QAction*> onJob_;
  desk::CatalogueThread thread_;  // last: it is waited for before the rest goes
};

/// Of the job: fitted; else recommended in what was kept last; empty: none.
std::string partOf(const workflow::JobView& view);

}  // namespace ohmkin::jobs
