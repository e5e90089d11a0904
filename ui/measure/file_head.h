#pragma once
#include <measure/set_up.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/import_readings.h>
#include <QProgressBar>
#include <QPushButton>

namespace ohmkin::measure {

/// The file's name, what is in it, what it was measured with, and bringing it in.
class FileHead : public parts::Panel {
  Q_OBJECT

 public:
  explicit FileHead(QWidget* parent = nullptr);
  void setEquipment(const QStringList& meters, const QStringList& thermometers);
  void name(const QString& file, const QString& whole);
  void say(const QString& sentence, bool refused);
  void sayAlready(const QString& sentence);
  void tell(const QString& outcome, bool refused);
  void setWorking(bool working, const QString& words);
  void setProgress(const workflow::ImportProgress& progress);

  [[nodiscard]] parts::Entry& meter() const { return *meter_; }
  [[nodiscard]] parts::Entry& bath() const { return *bath_; }
  [[nodiscard]] parts::Entry& who() const { return *who_; }
  [[nodiscard]] QPushButton& bringIn() const { return *bringIn_; }
  [[nodiscard]] QPushButton& cancel() const { return *cancel_; }
  [[nodiscard]] QString sentence() const { return sentence_->text(); }
  [[nodiscard]] QString already() const { return already_->text(); }
  [[nodiscard]] QString told() const { return outcome_->text(); }

 signals:
  void openAsked();
  void bringInAsked();
  void cancelAsked();
  void equipmentChanged();

 private:
  QWidget* makeFields();
  QWidget* makeProgress();
  parts::Words* name_;
  parts::Words* sentence_;
  parts::Words* already_;
  parts::Words* outcome_;
  parts::Entry* meter_;
  parts::Entry* bath_;
  parts::Entry* who_;
  QPushButton* open_;
  QPushButton* bringIn_;
  QPushButton* cancel_;
  QWidget* progress_ = nullptr;
  parts::Words* progressWords_ = nullptr;
  QProgressBar* bar_ = nullptr;
};

}  // namespace ohmkin::measure
