#pragma once
#include <parts/entry.h>
#include <parts/panel.h>
#include <parts/text_area.h>
#include <workflow/job_work.h>
#include <QGridLayout>
#include <QPushButton>

/// What can be written of a job, one small form each. None of them writes: the page does.
namespace ohmkin::jobs {

class Form : public parts::Panel {
  Q_OBJECT

 public:
  Form(const QString& heading, const QString& order, QWidget* parent);
  void refuse(const QString& sentence);  ///< empty: nothing is wrong
  [[nodiscard]] QString refused() const { return wrong_->isHidden() ? QString() : wrong_->text(); }
  [[nodiscard]] QPushButton& order() const { return *order_; }
  virtual void takeKeyboard() = 0;
  void send();                                                    ///< as the button does
  [[nodiscard]] QStringList said() const;                         ///< what stands in it now
  [[nodiscard]] bool typed() const { return said() != before_; }  ///< since it was opened

 signals:
  void done();
  void left();  ///< given up

 protected:
  /// A field with its name over it; `wide` has the line to itself. Enter in an Entry goes on to the next field, and
  /// sends from the last.
  void add(const QString& name, QWidget* field, bool wide);
  void setHeading(const QString& heading, const QString& order);
  void explain(const QString& sentence);
  void opened();  ///< nothing is typed yet, nothing is wrong

 private:
  parts::Words* heading_;
  parts::Words* help_;
  QGridLayout* grid_;
  parts::Words* wrong_;
  QPushButton* order_;
  std::vector<QWidget*> fields_;
  QStringList before_;
  int row_ = 0;
  int column_ = 0;
};

/// A new job, or all that is written in one.
class FieldsForm : public Form {
  Q_OBJECT

 public:
  explicit FieldsForm(QWidget* parent);
  void begin();
  void begin(const catalog::JobRecord& job);
  [[nodiscard]] std::optional<catalog::JobNumber> job() const { return job_; }  ///< none: a new one
  [[nodiscard]] const std::string& seenAs() const { return changed_; }          ///< JobRecord::changed when shown
  [[nodiscard]] catalog::JobFields fields() const;
  void takeKeyboard() override { reference_->setFocus(Qt::OtherFocusReason); }
  [[nodiscard]] parts::Entry& reference() const { return *reference_; }
  [[nodiscard]] parts::Entry& vehicle() const { return *vehicle_; }
  [[nodiscard]] parts::TextArea& seen() const { return *seen_; }
  [[nodiscard]] parts::TextArea& note() const { return *note_; }

 private:
  void put(const catalog::JobFields& said);
  std::optional<catalog::JobNumber> job_;
  std::string changed_;
  catalog::JobFields before_;
  parts::Entry* reference_;
  parts::Entry* vehicle_;
  parts::Entry* engine_;
  parts::TextArea* seen_;
  parts::TextArea* note_;
};

class NoteForm : public Form {
  Q_OBJECT

 public:
  explicit NoteForm(QWidget* parent);
  void begin();
  [[nodiscard]] std::string note() const { return note_->text().toStdString(); }
  void takeKeyboard() override { note_->setFocus(Qt::OtherFocusReason); }
  [[nodiscard]] parts::Entry& entry() const { return *note_; }

 private:
  parts::Entry* note_;
};

class CloseForm : public Form {
  Q_OBJECT

 public:
  explicit CloseForm(QWidget* parent);
  void begin(const workflow::JobView& view);
  /// Refuses a cause that is not in the book: causes are counted, so that they have to be said alike.
  [[nodiscard]] Expected<workflow::JobClosing> closing() const;
  void takeKeyboard() override { part_->setFocus(Qt::OtherFocusReason); }
  [[nodiscard]] parts::Entry& part() const { return *part_; }
  [[nodiscard]] parts::Entry& cause() const { return *cause_; }
  [[nodiscard]] parts::Choice& symptom() const { return *symptom_; }

 private:
  parts::Entry* part_;
  parts::Entry* cause_;
  parts::Choice* symptom_;
};

/// There is no way back from it: the job's number has to be typed.
class EraseForm : public Form {
  Q_OBJECT

 public:
  explicit EraseForm(QWidget* parent);
  void begin(const catalog::JobRecord& job);
  void takeKeyboard() override { number_->setFocus(Qt::OtherFocusReason); }
  [[nodiscard]] parts::Entry& number() const { return *number_; }

 private:
  void look();
  qint64 id_ = 0;
  parts::Entry* number_;
};

}  // namespace ohmkin::jobs
