#pragma once
#include <quantity/print.h>
#include <QObject>
#include <QSettings>
#include <QStringList>
#include <QVariantMap>

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

  /// Actions by their names, done last first.
  [[nodiscard]] QStringList used() const;
  void markUsed(const QString& action);

  /// "de", "en", …; empty means as the system is. Counts from the next start.
  [[nodiscard]] QString language() const;
  void setLanguage(const QString& language);

  [[nodiscard]] QByteArray geometry() const;
  void setGeometry(const QByteArray& geometry);
  [[nodiscard]] int page() const;  ///< shown last, by its place on the rail; 0 where none is known
  void setPage(int page);
  [[nodiscard]] QVariantMap layout(const QString& page) const;  ///< Page::layoutState of that page
  void setLayout(const QString& page, const QVariantMap& layout);

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
