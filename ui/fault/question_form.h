#pragma once
#include <parts/entry.h>
#include <parts/names.h>
#include <parts/panel.h>
#include <quantity/print.h>
#include <workflow/fault_document.h>
#include <QGridLayout>
#include <QPushButton>

/// Which gauge and which sender; folded away behind them what is known of the circuit besides.
namespace ohmkin::fault {

class QuestionForm : public QWidget {
  Q_OBJECT

 public:
  explicit QuestionForm(QWidget* parent = nullptr);
  void setNames(const std::vector<parts::NameWords>& gauges, const std::vector<parts::NameWords>& senders);
  /// Says nothing: what is asked comes from the program.
  void fill(const workflow::FaultQuestion& question, const DisplayUnits& units);
  /// Refuses numbers that do not read.
  [[nodiscard]] Expected<workflow::FaultQuestion> question(const DisplayUnits& units) const;
  [[nodiscard]] bool empty() const { return gauge_->text().trimmed().isEmpty(); }
  void takeKeyboard();
  /// A button of the page's, at the end of the row of entries.
  void addBeside(QPushButton& button);
  /// Marks the entry that a refusal speaks of; an empty name marks none.
  void setWrong(const QString& where);

  [[nodiscard]] parts::Entry& gauge() const { return *gauge_; }
  [[nodiscard]] parts::Entry& sender() const { return *sender_; }
  [[nodiscard]] parts::Entry& running() const { return *running_; }
  [[nodiscard]] parts::Entry& supply() const { return *supply_; }
  [[nodiscard]] parts::Entry& feedShunt() const { return *feedShunt_; }
  [[nodiscard]] parts::Entry& groundShunt() const { return *groundShunt_; }
  [[nodiscard]] QPushButton& fold() const { return *fold_; }

 signals:
  void changed();
  void settled();  ///< Return in the last entry of a row: on to the step

 private:
  parts::Entry* gauge_;
  parts::Entry* sender_;
  parts::Entry* running_;
  parts::Entry* supply_;
  parts::Entry* feedShunt_;
  parts::Entry* groundShunt_;
  QPushButton* fold_;
  QWidget* more_;
  QGridLayout* first_ = nullptr;
};

}  // namespace ohmkin::fault
