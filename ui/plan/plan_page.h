#pragma once
#include <desk/catalogue_thread.h>
#include <desk/page.h>
#include <parts/blank_sheet.h>
#include <parts/caution_panel.h>
#include <plan/line_list.h>
#include <plan/plan_grid.h>
#include <workflow/plan.h>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>

namespace ohmkin::plan {

/// Which engine for which dash: both written down a line each, and every pair answered side by side.
class PlanPage : public desk::Page {
  Q_OBJECT

 public:
  explicit PlanPage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void showNoCatalogue() override;
  void takeKeyboard() override { dashes_->takeKeyboard(); }
  [[nodiscard]] QString asText() const override;

  /// Without a dialog: the reason why not, empty where it was done.
  QString savePlan(const QString& file) const;
  QString openPlan(const QString& file);

  [[nodiscard]] LineList& dashes() const { return *dashes_; }
  [[nodiscard]] LineList& engines() const { return *engines_; }
  [[nodiscard]] PlanGrid& grid() const { return *grid_; }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *sheet_; }
  [[nodiscard]] QString buyWords() const { return buy_->text(); }
  [[nodiscard]] QString pairWords() const { return verdict_->text(); }
  [[nodiscard]] bool showsAnswer() const { return answers_->currentIndex() == 1; }

 private:
  struct Answered {
    workflow::Plan plan;
    QStringList dashes;
    QStringList engines;
    QStringList dashNotes;
    QStringList engineNotes;
  };
  QWidget* makeWork();
  QWidget* makeAnswer();
  void wire();
  void asked();
  void display(const std::shared_ptr<const Answered>& answered);
  void displayRefused(const QString& sentence);
  void displayPair(int dash, int engine);
  void forget();
  void findExample();
  void chooseSave();
  void chooseOpen();

  desk::Settings& settings_;
  desk::CatalogueThread thread_;
  QString file_;
  std::shared_ptr<const Answered> answered_;
  std::pair<std::vector<Line>, std::vector<Line>> example_;
  QTimer settle_;

  parts::BlankSheet* whole_;
  QStackedWidget* stack_;
  LineList* dashes_ = nullptr;
  LineList* engines_ = nullptr;
  QPushButton* save_ = nullptr;
  QPushButton* copy_ = nullptr;
  parts::Words* told_ = nullptr;
  QStackedWidget* answers_ = nullptr;
  parts::BlankSheet* sheet_ = nullptr;
  PlanGrid* grid_ = nullptr;
  parts::Words* pair_ = nullptr;
  parts::Words* verdict_ = nullptr;
  parts::Words* pairLook_ = nullptr;
  parts::Words* buy_ = nullptr;
  parts::CautionPanel* cautions_ = nullptr;
};

}  // namespace ohmkin::plan
