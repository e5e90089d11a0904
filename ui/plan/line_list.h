#pragma once
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/question.h>
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
  static constexpr std::size_t kMostShown = 50;

  LineList(const QString& title, const QString& example, std::size_t most, QWidget* parent = nullptr);
  void setLines(const std::vector<Line>& lines);
  [[nodiscard]] std::vector<Line> lines() const;  ///< those that are not empty
  /// Under each line that is not empty: what was not understood; empty: nothing to say.
  void setNotes(const QStringList& notes);
  void takeKeyboard();
  [[nodiscard]] parts::Entry* entry(std::size_t i) const { return rows_.at(i).entry; }
  [[nodiscard]] QString note(std::size_t i) const { return rows_.at(i).note->text(); }
  [[nodiscard]] std::size_t count() const { return rows_.size(); }

 signals:
  void changed();

 private:
  struct Row {
    parts::Entry* entry;
    parts::Words* note;
    std::optional<workflow::Question> opened;
  };
  void addRow();
  void edited(parts::Entry* entry);
  std::vector<Row> rows_;
  QVBoxLayout* column_;
  QString title_;
  QString example_;
  std::size_t most_;
  bool filling_ = false;
};

}  // namespace ohmkin::plan
