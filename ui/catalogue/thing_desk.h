#pragma once
#include <catalogue/change_list.h>
#include <catalogue/stock_panel.h>
#include <catalogue/thing_form.h>
#include <catalogue/thing_view.h>
#include <QStackedWidget>

namespace ohmkin::shelves {

/// The chosen thing: to read, to edit, to sell; and the way back to those looked at before.
class ThingDesk : public parts::Panel {
  Q_OBJECT

 public:
  ThingDesk(Clerk& clerk, const desk::Settings& settings, QWidget* parent = nullptr);
  void catalogueOpened();
  /// Shown in passing: the next one takes its place. A form in which something was typed is not left for it.
  void preview(const Ref& ref);
  void open(const Ref& ref);  ///< to stay: back leads to the one before
  void back();
  void forward();
  void reload();
  void edit();
  void create(const std::string& kind);
  void duplicate();
  void askRemove();
  void save();
  void escape();  ///< out of the form, or of the question whether to delete
  void takeKeyboard();

  [[nodiscard]] const Ref& ref() const { return ref_; }
  [[nodiscard]] bool editing() const;
  [[nodiscard]] bool canGoBack() const { return at_ > 0; }
  [[nodiscard]] bool canGoForward() const { return at_ + 1 < trail_.size(); }
  [[nodiscard]] QString asText() const;
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] const ThingShown& shownNow() const { return view_->thing(); }
  [[nodiscard]] ThingView& view() const { return *view_; }
  [[nodiscard]] ThingForm& form() const { return *form_; }
  [[nodiscard]] StockPanel& stock() const { return *stock_; }
  [[nodiscard]] ChangeList& changes() const { return *changes_; }
  [[nodiscard]] QPushButton& sureButton() const { return *sure_; }

 signals:
  void changed(const ohmkin::workflow::Edited& edited);  ///< saved, deleted or taken back here
  void moved(qint64 movement, const QString& words);     ///< pieces came or went
  void stateChanged();                                   ///< what can be done now

 private:
  enum Sheet { nothing, toRead, toWrite };
  QWidget* makeReading();
  QWidget* makeQuestion();
  void wire();
  void read();
  void display(const ThingShown& thing);
  void remove();
  void editThing(const std::function<void(const workflow::Thing&)>& then);
  void tell(const QString& sentence, bool refused);
  Clerk& clerk_;
  const desk::Settings& settings_;
  Ref ref_;
  std::vector<Ref> trail_;
  std::size_t at_ = 0;
  Ref toldOf_;            ///< what the last sentence was about
  bool passing_ = false;  ///< the last of the trail is only looked at in passing
  QStackedWidget* sheets_;
  parts::Words* kind_ = nullptr;
  parts::Words* number_ = nullptr;
  parts::Words* title_ = nullptr;
  parts::Words* caution_ = nullptr;
  parts::Words* told_ = nullptr;
  QWidget* question_ = nullptr;
  QPushButton* sure_ = nullptr;
  QPushButton* edit_ = nullptr;
  QPushButton* more_ = nullptr;
  QPushButton* back_ = nullptr;
  QPushButton* forward_ = nullptr;
  ThingView* view_ = nullptr;
  StockPanel* stock_ = nullptr;
  ChangeList* changes_ = nullptr;
  ThingForm* form_;
};

}  // namespace ohmkin::shelves
