#pragma once
#include <finding/refusal.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/date_engine.h>
#include <QGridLayout>
#include <vector>

namespace ohmkin::castings {

struct LayoutName {
  QString id;
  QString name;
  dating::FoundOn foundOn = dating::FoundOn::head;
};

/// What was read with a torch: castings one by one, the assembly stamp, the vehicle. There is always one empty row left
/// for a further casting.
class CastingForm : public QWidget {
  Q_OBJECT

 public:
  static constexpr std::size_t kMostCastings = 8;

  explicit CastingForm(QWidget* parent = nullptr);
  void setLayouts(const std::vector<LayoutName>& layouts);
  void setNames(const QStringList& lines, const QStringList& castings);  ///< for completion
  void fill(const workflow::DateQuestion& question);
  void takeKeyboard();

  [[nodiscard]] bool empty() const;
  /// Refuses a year or a date that cannot be read, naming the field.
  [[nodiscard]] Expected<workflow::DateQuestion> question() const;

  struct Row {
    parts::Choice* role;
    parts::Entry* number;
    parts::Entry* code;
    parts::Choice* layout;
  };
  [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
  [[nodiscard]] parts::Entry& stamp() const { return *stamp_; }
  [[nodiscard]] parts::Tick& recut() const { return *recut_; }
  [[nodiscard]] parts::Entry& line() const { return *line_; }
  [[nodiscard]] parts::Entry& year() const { return *year_; }
  [[nodiscard]] parts::Entry& built() const { return *built_; }

 signals:
  void changed();

 private:
  void addRow();
  void rowChanged();
  void offerLayouts(parts::Choice* choice, dating::FoundOn place);
  void connectEntry(parts::Entry* entry);
  QWidget* makeVehicle();
  std::vector<LayoutName> layouts_;
  QStringList castings_;
  std::vector<Row> rows_;
  QGridLayout* grid_;
  parts::Entry* stamp_;
  parts::Choice* stampLayout_;
  parts::Tick* recut_;
  parts::Entry* line_;
  parts::Entry* year_;
  parts::Entry* built_;
  QWidget* stampRow_[4] = {};
  bool filling_ = false;
};

}  // namespace ohmkin::castings
