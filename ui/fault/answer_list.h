#pragma once
#include <parts/panel.h>
#include <QPushButton>
#include <QVBoxLayout>
#include <vector>

/// What was answered so far, each to be changed or taken back.
namespace ohmkin::fault {

struct AnswerRow {
  enum class Kind { symptom, test, repair };
  Kind kind = Kind::test;
  QString code;         ///< of the test or the repair
  QString question;     ///< "Lamps on and off: does the needle move?"
  QString answer;       ///< "the needle stays", "not sure"
  bool misfit = false;  ///< does not agree with the rest
  friend bool operator==(const AnswerRow&, const AnswerRow&) = default;
};

class AnswerList : public QWidget {
  Q_OBJECT

 public:
  explicit AnswerList(QWidget* parent = nullptr);
  void display(const std::vector<AnswerRow>& rows);
  [[nodiscard]] const std::vector<AnswerRow>& rows() const { return rows_; }
  /// Of a row; null where it has none.
  [[nodiscard]] QPushButton* changeButton(std::size_t row) const;
  [[nodiscard]] QPushButton* takeBackButton(std::size_t row) const;

 signals:
  void changeRequested(int row);
  void takenBack(int row);

 private:
  struct Shown {
    QWidget* whole = nullptr;
    parts::Words* question = nullptr;
    parts::Words* answer = nullptr;
    QPushButton* change = nullptr;
    QPushButton* takeBack = nullptr;
  };
  void addRow();
  std::vector<AnswerRow> rows_;
  std::vector<Shown> shown_;
  QVBoxLayout* column_;
};

}  // namespace ohmkin::fault
