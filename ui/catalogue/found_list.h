#pragma once
#include <catalogue/ref.h>
#include <parts/card_list.h>
#include <parts/marked_words.h>
#include <workflow/find.h>

namespace ohmkin::shelves {

/// One thing that was found, in words.
struct FoundRow {
  Ref ref;
  QString kind;
  parts::MarkedWords number;
  parts::MarkedWords title;
  QString about;
  QString why;                 ///< "old number"
  parts::MarkedWords matched;  ///< empty where number or title show it already
  QString leads;               ///< "superseded by …"
  QString shelf;               ///< "3 on the shelf"; empty where none ever is
  bool none = false;           ///< of the shelf's
};
FoundRow rowOf(const workflow::Found& found);
QString spoken(const FoundRow& row);

using FoundModel = parts::CardModel<FoundRow>;

/// What was found, best first. The keyboard may stay in the box: step() goes along the rows.
class FoundList : public QListView {
  Q_OBJECT

 public:
  explicit FoundList(QWidget* parent = nullptr);
  void setRows(std::vector<FoundRow> rows);  ///< chooses the first
  void addRows(std::vector<FoundRow> more);
  void step(int rows);
  void stepPage(int pages);
  [[nodiscard]] const FoundModel& rows() const { return model_; }
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void chosen(const ohmkin::shelves::Ref& ref);
  void opened();     ///< Enter or a double click on it
  void endNeared();  ///< more may be wanted

 protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  FoundModel model_;
  bool filling_ = false;
};

}  // namespace ohmkin::shelves
