#pragma once
#include <measure/set_up.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <QPushButton>

namespace ohmkin::measure {

/// Whose part it is, and keeping its curve.
class KeepForm : public QWidget {
  Q_OBJECT

 public:
  explicit KeepForm(QWidget* parent = nullptr);
  void setNames(const QStringList& parts, const QStringList& families);
  [[nodiscard]] parts::Entry& part() const { return *part_; }
  [[nodiscard]] parts::Entry& lot() const { return *lot_; }
  [[nodiscard]] parts::Choice& family() const { return *family_; }
  [[nodiscard]] parts::Entry& who() const { return *who_; }
  [[nodiscard]] QPushButton& keep() const { return *keep_; }
  [[nodiscard]] QString familySaid() const { return family_->currentData().toString(); }
  /// Why the part is none of the catalogue's; empty: it is, or none is said.
  void doubtPart(const QString& sentence);
  void tell(const QString& sentence, bool refused);
  [[nodiscard]] QString doubt() const { return doubt_->text(); }
  [[nodiscard]] QString told() const { return outcome_->text(); }

 signals:
  void changed();  ///< part, lot or family
  void kept();

 private:
  parts::Entry* part_;
  parts::Entry* lot_;
  parts::Choice* family_;
  parts::Entry* who_;
  QPushButton* keep_;
  parts::Words* doubt_;
  parts::Words* outcome_;
};

void complete(parts::Entry& entry, const QStringList& words);

}  // namespace ohmkin::measure
