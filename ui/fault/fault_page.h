#pragma once
#include <desk/catalogue_thread.h>
#include <desk/page.h>
#include <fault/answer_list.h>
#include <fault/likelihood_bars.h>
#include <fault/opened_chain.h>
#include <fault/presenter.h>
#include <fault/question_form.h>
#include <fault/step_card.h>
#include <fault/test_list.h>
#include <parts/blank_sheet.h>
#include <parts/busy_line.h>
#include <parts/entry.h>
#include <parts/finding_list.h>
#include <print/print_sheet.h>
#include <QStackedWidget>
#include <QTimer>

namespace ohmkin::fault {

struct Found;

/// A needle that misreads: one step after the other until it is known why, and whether the repair helped.
class FaultPage : public desk::Page {
  Q_OBJECT

 public:
  explicit FaultPage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override { desk::letGo({&thread_}, then); }
  void showNoCatalogue() override;
  void takeKeyboard() override;
  [[nodiscard]] QString asText() const override;
  void goOnWith(const QString& document) override;

  /// The search as it stands, to be kept; it can go on another day.
  [[nodiscard]] const workflow::FaultSession& session() const { return session_; }
  /// Goes on with one that was kept; what it holds and this circuit does not have is left out and said.
  void goOn(const workflow::FaultSession& session);

  [[nodiscard]] QuestionForm& form() const { return *form_; }
  [[nodiscard]] StepCard& card() const { return *card_; }
  [[nodiscard]] LikelihoodBars& bars() const { return *bars_; }
  [[nodiscard]] OpenedChain& chain() const { return *chain_; }
  [[nodiscard]] AnswerList& answers() const { return *answers_; }
  [[nodiscard]] TestList& tests() const { return *tests_; }
  [[nodiscard]] parts::FindingList& assumptions() const { return *assumptions_; }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *sheet_; }
  [[nodiscard]] QPushButton& newSearch() const { return *newSearch_; }
  [[nodiscard]] QPushButton& print() const { return *print_; }
  [[nodiscard]] Expected<printing::Sheets> wiringSheets() const;      ///< refuses where no circuit is known yet
  [[nodiscard]] Expected<printing::Sheets> predictionSheets() const;  ///< the same
  [[nodiscard]] QString told() const { return told_->text(); }        ///< of keeping the search with a job
  [[nodiscard]] QPushButton& undoButton() const { return *undo_; }
  [[nodiscard]] QString alarm() const { return alarm_->text(); }
  [[nodiscard]] parts::Tick* setupTick(const std::string& code) const;
  [[nodiscard]] bool showsAnswer() const { return work_->currentIndex() == 1; }
  [[nodiscard]] bool busy() const { return asking_; }

 private:
  QWidget* makeWork();
  QWidget* makeSteps();
  void wire();
  void readCatalogue();
  void questionChanged();
  void ask();
  void take(const std::shared_ptr<const Found>& found);
  void display();
  void refuse(const Refusal& refusal);
  void forget();
  /// What was before is kept for undo, then the search is changed and asked again.
  void change(const QString& what, const std::function<void(workflow::FaultSession&)>& how);
  /// As it was at a moment: by undo, redo, or because it was kept.
  void put(const workflow::FaultSession& session);
  void beginAnew();
  void outcomeChosen(int outcome);
  void unsure();
  void answerTest(std::size_t test, const std::string& outcome);
  void changeRow(int row);
  void takeBackRow(int row);
  void chooseTest(std::size_t test);
  void backToProposed();
  void showSetups();
  void sayWhatToDo();
  void keepWithJob();
  [[nodiscard]] std::optional<std::size_t> testInHand() const;
  [[nodiscard]] std::optional<Standing> standing() const;

  /// What the card asks at the moment.
  enum class Stage { symptom, test, repair, cause, done };
  [[nodiscard]] Stage stage() const;

  desk::Settings& settings_;
  desk::CatalogueThread thread_;
  QString file_;
  workflow::FaultSession session_;
  std::shared_ptr<const Found> found_;
  std::optional<std::string> chosenTest_;  ///< by the person, in place of the one proposed
  bool changesSymptom_ = false;
  bool causeAsked_ = false;  ///< answered with "not sure"
  bool asking_ = false;
  QTimer settle_;
  QString example_;  ///< a gauge of this catalogue

  QStackedWidget* stack_;
  parts::BlankSheet* whole_;
  QStackedWidget* work_;
  QuestionForm* form_;
  parts::BlankSheet* sheet_;
  parts::BusyLine* busy_;
  QPushButton* newSearch_;
  QPushButton* undo_;
  QPushButton* print_;
  parts::Panel* alarmSheet_ = nullptr;
  parts::Words* alarm_;
  parts::Words* told_;
  StepCard* card_;
  LikelihoodBars* bars_;
  parts::Words* noAnswers_;
  AnswerList* answers_;
  OpenedChain* chain_;
  QWidget* setups_;
  std::vector<std::pair<std::string, parts::Tick*>> setupTicks_;
  TestList* tests_;
  parts::FindingList* assumptions_;
};

}  // namespace ohmkin::fault
