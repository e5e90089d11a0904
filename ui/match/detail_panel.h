#pragma once
#include <match/dial_tab.h>
#include <match/error_tab.h>
#include <match/trim_tab.h>
#include <parts/finding_list.h>
#include <parts/panel.h>
#include <parts/segmented.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <QScrollArea>
#include <QStackedWidget>

namespace ohmkin::match {

/// Ways to look into the chosen sender: its error over the temperature, why it was judged so, the dial it would need,
/// and what resistors could do.
class DetailPanel : public parts::Panel {
  Q_OBJECT

 public:
  enum Tab { error, why, dial, trim };
  explicit DetailPanel(QWidget* parent = nullptr);
  void display(const workflow::Answer& answer, const workflow::Branch& branch, const workflow::Candidate* candidate,
               const DisplayUnits& units);
  void forget();  ///< what was shown is about to go
  void setCoolant(Temperature coolant);
  void showTab(Tab tab);
  void showTopic(const QString& topic);
  [[nodiscard]] Tab tab() const { return static_cast<Tab>(sheets_->currentIndex()); }
  [[nodiscard]] const parts::ErrorPlot& plot() const { return errors_->plot(); }
  [[nodiscard]] ErrorTab& errors() const { return *errors_; }
  [[nodiscard]] DialTab& dialTab() const { return *dial_; }
  [[nodiscard]] TrimTab& trimTab() const { return *trim_; }

 signals:
  void pointed(Temperature coolant);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void present();
  void nameTab();
  parts::Segmented* tabs_;
  parts::Words* title_;
  QString named_;  ///< the title in full
  QStackedWidget* sheets_;
  ErrorTab* errors_;
  parts::FindingList* findings_;
  DialTab* dial_;
  TrimTab* trim_;
  DisplayUnits units_;
  Tab wanted_ = error;  ///< what the person chose last, where it can be shown
};

}  // namespace ohmkin::match
