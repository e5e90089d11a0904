#pragma once
#include <desk/catalogue_thread.h>
#include <desk/page.h>
#include <parts/blank_sheet.h>
#include <plan/line_list.h>
#include <plan/plan_answer.h>
#include <plan/plan_head.h>
#include <workflow/plan.h>
#include <QStackedWidget>
#include <QTimer>

namespace ohmkin::plan {

/// Which engine for which dash: both written down a line each, and every pair answered side by side.
class PlanPage : public desk::Page {
  Q_OBJECT

 public:
  explicit PlanPage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override { desk::letGo({&thread_}, then); }
  void showNoCatalogue() override;
  void takeKeyboard() override { dashes_->takeKeyboard(); }
  [[nodiscard]] QString asText() const override;

  /// Without a dialog: the reason why not, empty where it was done.
  QString savePlan(const QString& file) const;
  QString openPlan(const QString& file);

  [[nodiscard]] LineList& dashes() const { return *dashes_; }
  [[nodiscard]] LineList& engines() const { return *engines_; }
  [[nodiscard]] PlanGrid& grid() const { return answer_->grid(); }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *sheet_; }
  [[nodiscard]] QString buyWords() const { return answer_->buyWords(); }
  [[nodiscard]] QString pairWords() const { return answer_->pairWords(); }
  [[nodiscard]] QPushButton& print() const { return head_->print(); }
  /// The plan as pages to print; refuses where there is none yet.
  [[nodiscard]] Expected<printing::Sheets> sheets() const;
  [[nodiscard]] bool showsAnswer() const { return answers_->currentIndex() == 1; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  struct Sides {
    std::vector<Line> dashes;
    std::vector<Line> engines;
  };
  void putLines(const Sides& sides);
  struct Answered {
    workflow::Plan plan;
    QStringList dashes;
    QStringList engines;
    QStringList dashNotes;
    QStringList engineNotes;
  };
  QWidget* makeWork();
  void wire();
  void wireCatalogue();
  void asked();
  void display(const std::shared_ptr<const Answered>& answered);
  void displayRefused(const QString& sentence);
  void forget();
  void findExample();

  desk::Settings& settings_;
  desk::CatalogueThread thread_;
  QString file_;
  std::shared_ptr<const Answered> answered_;
  std::pair<std::vector<Line>, std::vector<Line>> example_;
  QTimer settle_;

  parts::BlankSheet* whole_;
  QStackedWidget* stack_;
  PlanHead* head_ = nullptr;
  LineList* dashes_ = nullptr;
  LineList* engines_ = nullptr;
  QStackedWidget* answers_ = nullptr;
  parts::BlankSheet* sheet_ = nullptr;
  PlanAnswer* answer_ = nullptr;
};

}  // namespace ohmkin::plan
