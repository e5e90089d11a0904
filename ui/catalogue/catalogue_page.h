#pragma once
#include <catalogue/found_list.h>
#include <catalogue/shelf_desk.h>
#include <catalogue/table_desk.h>
#include <catalogue/thing_desk.h>
#include <desk/page.h>
#include <parts/blank_sheet.h>
#include <parts/query_box.h>
#include <parts/segmented.h>
#include <QSplitter>
#include <memory>

namespace ohmkin::shelves {

/// Find anything, look at it, edit it, sell it.
class CataloguePage : public desk::Page {
  Q_OBJECT

 public:
  enum Part { find, table, shelf, log };

  explicit CataloguePage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override { desk::letGo({&finder_, &reader_, &clerk_}, then); }
  [[nodiscard]] QString unsaved() const override;
  void showNoCatalogue() override;
  void takeKeyboard() override;
  [[nodiscard]] QString asText() const override;
  [[nodiscard]] QVariantMap layoutState() const override;
  void restoreLayout(const QVariantMap& state) override;

  [[nodiscard]] parts::QueryBox& query() const { return *query_; }
  [[nodiscard]] FoundList& found() const { return *found_; }
  [[nodiscard]] ThingDesk& thing() const { return *thing_; }
  [[nodiscard]] TableDesk& rows() const { return *table_; }
  [[nodiscard]] ShelfDesk& onShelf() const { return *shelf_; }
  [[nodiscard]] ChangeList& changes() const { return *changes_; }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *whole_; }
  [[nodiscard]] bool ready() const { return stack_->currentIndex() == 1; }
  [[nodiscard]] QString said() const { return said_->isHidden() ? QString() : said_->text(); }  ///< of undo and redo
  [[nodiscard]] QString hint() const { return hint_->text(); }
  void showPart(Part part) { parts_->choose(part); }
  void offerKinds();  ///< a new one, of a kind to be chosen

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeFinding();
  void wire();
  void wireClerks();
  void offerActions();
  void asked(const QString& text);
  void askMore();
  void display(const workflow::FindAnswer& answer);
  void displayNothingTyped();
  void openThing(const Ref& ref);
  void changed(const workflow::Edited& edited);
  void moved(qint64 movement, const QString& words);
  void takeBackEdit(bool back);
  void takeBackMovement(const std::shared_ptr<qint64>& movement, bool back);
  void outcome(const QString& sentence, bool done, bool wasUndo);
  void refresh();
  void tell(const QString& sentence, bool refused);
  void forget(const std::optional<Refusal>& whyNot);
  void countRows();
  void showState();

  desk::Settings& settings_;
  Clerk finder_;  ///< answers keys and nothing else
  Clerk reader_;  ///< pages of the table, which may take long where it is sorted by what has no index
  Clerk clerk_;   ///< looks, changes and sells
  QString file_;
  std::string next_;  ///< of the answer shown
  std::size_t total_ = 0;
  qint64 things_ = -1;  ///< rows of all kinds; −1: not counted yet
  bool quiet_ = false;  ///< the history is only put right

  parts::BlankSheet* whole_;
  QStackedWidget* stack_;
  parts::QueryBox* query_;
  parts::Segmented* parts_;
  parts::Words* said_;
  QStackedWidget* desks_;
  parts::Words* hint_ = nullptr;
  FoundList* found_ = nullptr;
  QSplitter* split_ = nullptr;
  ThingDesk* thing_ = nullptr;
  TableDesk* table_ = nullptr;
  ShelfDesk* shelf_ = nullptr;
  ChangeList* changes_ = nullptr;
  std::vector<QAction*> onThing_;
  QAction* save_ = nullptr;
  QAction* sell_ = nullptr;
  QAction* receive_ = nullptr;
  QAction* back_ = nullptr;
  QAction* forward_ = nullptr;
};

}  // namespace ohmkin::shelves
