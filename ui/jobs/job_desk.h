#pragma once
#include <jobs/document_card.h>
#include <jobs/job_forms.h>
#include <parts/blank_sheet.h>
#include <parts/flow_layout.h>
#include <QMenu>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace ohmkin::jobs {

/// One job: what it is, what was kept with it, and the one form that is open.
class JobDesk : public QWidget {
  Q_OBJECT

 public:
  explicit JobDesk(QWidget* parent = nullptr);
  void display(const workflow::JobView& view, const DisplayUnits& units);
  void displayNothing(const QString& heading, const QString& text);
  void sayToday(int ordinal, const workflow::AnsweredAgain& again);
  void sayToday(int ordinal, const QString& refused);
  void tell(const QString& sentence, bool refused);  ///< of what was done last; empty: nothing

  void open(Form* form);  ///< null: none
  [[nodiscard]] Form* form() const { return form_; }
  [[nodiscard]] FieldsForm& fields() const { return *fields_; }
  [[nodiscard]] NoteForm& noteForm() const { return *note_; }
  [[nodiscard]] CloseForm& closeForm() const { return *close_; }
  [[nodiscard]] EraseForm& eraseForm() const { return *erase_; }
  [[nodiscard]] QPushButton& noteButton() const { return *addNote_; }
  [[nodiscard]] QPushButton& closeButton() const { return *closeOrOpen_; }
  [[nodiscard]] QPushButton& print() const { return *print_; }
  [[nodiscard]] QPushButton& more() const { return *more_; }
  [[nodiscard]] const std::vector<std::pair<int, DocumentCard*>>& cards() const { return cards_; }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] QString heading() const { return reference_->text(); }
  [[nodiscard]] QString state() const { return state_->text(); }
  [[nodiscard]] QString asText() const;

 signals:
  void noteAsked();
  void closeAsked();  ///< or opening again
  void removeAsked(int ordinal);
  void goOnAsked(const QString& schema, const QString& document);
  void sent();      ///< the form that is open
  void formLeft();  ///< given up

 private:
  QWidget* makeHead();
  void addFact(const QString& name, const QString& value);
  void displayFacts(const workflow::JobView& view);

  QStackedWidget* stack_;
  parts::BlankSheet* blank_;
  QWidget* whole_;
  parts::Panel* head_ = nullptr;
  QWidget* mark_ = nullptr;
  parts::Words* reference_;
  parts::Words* state_;
  QPushButton* addNote_;
  QPushButton* closeOrOpen_;
  QPushButton* print_;
  QPushButton* more_;
  parts::Words* told_;
  FieldsForm* fields_;
  NoteForm* note_;
  CloseForm* close_;
  EraseForm* erase_;
  Form* form_ = nullptr;
  QGridLayout* facts_ = nullptr;
  QVBoxLayout* kept_;
  std::vector<std::pair<int, DocumentCard*>> cards_;
  QStringList factsSaid_;
};

}  // namespace ohmkin::jobs
