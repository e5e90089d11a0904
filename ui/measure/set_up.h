#pragma once
#include <measure/reading_rows.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <QWidget>

namespace ohmkin::measure {

/// What is on the bench: the meter and its leads, the thermometer, and where water boils here today.
class SetUp : public QWidget {
  Q_OBJECT

 public:
  explicit SetUp(QWidget* parent = nullptr);
  void setEquipment(const QStringList& meters, const QStringList& thermometers);
  [[nodiscard]] SetUpSaid said() const;
  /// Altitude and barometer are asked for only where water boils.
  void askForBoiling(bool boils);
  /// The question to answer, where the barometer could mean two things; empty: none.
  void askAboutBarometer(const QString& question);

  [[nodiscard]] parts::Choice& meter() const { return *meter_.choice; }
  [[nodiscard]] parts::Entry& meterAccuracy() const { return *meter_.accuracy; }
  [[nodiscard]] parts::Entry& leads() const { return *leads_; }
  [[nodiscard]] parts::Choice& thermometer() const { return *thermometer_.choice; }
  [[nodiscard]] parts::Entry& thermometerAccuracy() const { return *thermometer_.accuracy; }
  [[nodiscard]] parts::Entry& altitude() const { return *altitude_; }
  [[nodiscard]] parts::Entry& barometer() const { return *barometer_; }
  [[nodiscard]] parts::Choice& reduced() const { return *reduced_; }
  [[nodiscard]] QString question() const;

 signals:
  void changed();

 private:
  /// Something of the shop, something usual, or one that is known by its accuracy alone.
  struct Named {
    parts::Choice* choice = nullptr;
    parts::Entry* accuracy = nullptr;
    [[nodiscard]] QString said() const;
  };
  Named makeNamed(const QString& name, const QString& accuracy);
  void fill(Named& named, const std::vector<std::pair<QString, QString>>& usual, const QStringList& shops);
  QWidget* makeBoiling();

  Named meter_;
  Named thermometer_;
  parts::Entry* leads_;
  QWidget* boiling_ = nullptr;
  parts::Entry* altitude_ = nullptr;
  parts::Entry* barometer_ = nullptr;
  parts::Choice* reduced_ = nullptr;
  parts::Words* question_ = nullptr;
};

}  // namespace ohmkin::measure
