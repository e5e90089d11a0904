#pragma once
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/question.h>
#include <QScrollArea>
#include <QVBoxLayout>
#include <optional>
#include <vector>

namespace ohmkin::plan {

/// One line as it stands: what was typed, or what a saved plan said while nobody has typed over it.
struct Line {
  QString text;
  std::optional<workflow::Question> opened;
};

/// Dashes or engines, one a line, in the language of the match page. There is always an empty line left for a further
/// one.
class LineList : public parts::Panel {
  Q_OBJECT

 public:
  LineList(const QString& title, const QString& example, std::size_t most, QWidget* parent = nullptr);
  void setLines(const std::vector<Line>& lines);
  [[nodiscard]] std::vector<Line> lines() const;  ///< those that are not empty
  /// Under each line that is not empty: what was not understood; empty: nothing to say.
  void setNotes(const QStringList& notes);
  /// More lines than this scroll inside the list, so that they do not push the answer off the page.
  void showAtMost(int lines);
  [[nodiscard]] int lineHeight() const;
  void takeKeyboard();
  [[nodiscard]] parts::Entry* entry(std::size_t i) const { return rows_.at(i).entry; }
  [[nodiscard]] QString note(std::size_t i) const { return rows_.at(i).note->text(); }
  [[nodiscard]] std::size_t count() const { return rows_.size(); }

 signals:
  void changed();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    parts::Entry* entry;
    parts::Words* note;
    std::optional<workflow::Question> opened;
  };
  void addRow();
  void edited(parts::Entry* entry);
  void fit();
  std::vector<Row> rows_;
  QWidget* inner_;
  QVBoxLayout* column_;
  QScrollArea* scroll_;
  QString title_;
  QString example_;
  std::size_t most_;
  int shown_ = 5;
  bool filling_ = false;
};

}  // namespace ohmkin::plan
