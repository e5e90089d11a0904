#pragma once
#include <quantity/print.h>
#include <QObject>
#include <QSettings>
#include <QStringList>

/// What the program remembers from one day to the next.
namespace ohmkin::desk {

enum class ToneChoice { system, light, dark };

class Settings : public QObject {
  Q_OBJECT

 public:
  /// An empty file name means the person's own settings.
  explicit Settings(const QString& file = {}, QObject* parent = nullptr);

  [[nodiscard]] const DisplayUnits& units() const { return units_; }
  void setUnits(const DisplayUnits& units);
  [[nodiscard]] ToneChoice tone() const { return tone_; }
  void setTone(ToneChoice tone);

  [[nodiscard]] QStringList recent() const;  ///< catalogues, last used first
  void remember(const QString& catalogue);
  void forget(const QString& catalogue);  ///< one that could not be opened

  [[nodiscard]] QByteArray geometry() const;
  void setGeometry(const QByteArray& geometry);

 signals:
  void unitsChanged();
  void toneChanged();
  void recentChanged();

 private:
  QSettings kept_;
  DisplayUnits units_;
  ToneChoice tone_ = ToneChoice::system;
};

}  // namespace ohmkin::desk
