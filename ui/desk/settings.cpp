#include <desk/settings.h>
#include <QFileInfo>

namespace ohmkin::desk {
namespace {

constexpr auto kTemperature = "units/temperature";
constexpr auto kTorque = "units/torque";
constexpr auto kTone = "look/tone";
constexpr auto kRecent = "catalogue/recent";
constexpr auto kGeometry = "window/geometry";
constexpr auto kUsed = "actions/used";
constexpr auto kLanguage = "look/language";
constexpr auto kPage = "window/page";
constexpr auto kLayout = "layout/";
constexpr qsizetype kMostRecent = 8;
constexpr qsizetype kMostUsed = 40;

QString key(const char* name) { return QString::fromLatin1(name); }

QString text(ToneChoice tone) {
  switch (tone) {
    case ToneChoice::light:
      return QStringLiteral("light");
    case ToneChoice::dark:
      return QStringLiteral("dark");
    case ToneChoice::system:
      break;
  }
  return QStringLiteral("system");
}

}  // namespace

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent),
      kept_(file.isEmpty() ? QSettings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("ohmkin"),
                                       QStringLiteral("window"))
                                 .fileName()
                           : file,
            QSettings::IniFormat) {
  if (kept_.value(key(kTemperature)).toString() == QStringLiteral("F"))
    units_.temperature = TemperatureUnit::fahrenheit;
  if (kept_.value(key(kTorque)).toString() == QStringLiteral("lbf·ft")) units_.torque = TorqueUnit::poundFoot;
  const QString tone = kept_.value(key(kTone)).toString();
  for (const ToneChoice choice : {ToneChoice::light, ToneChoice::dark})
    if (tone == text(choice)) tone_ = choice;
}

void Settings::setUnits(const DisplayUnits& units) {
  if (units == units_) return;
  units_ = units;
  kept_.setValue(key(kTemperature),
                 units.temperature == TemperatureUnit::fahrenheit ? QStringLiteral("F") : QStringLiteral("C"));
  kept_.setValue(key(kTorque),
                 units.torque == TorqueUnit::poundFoot ? QStringLiteral("lbf·ft") : QStringLiteral("N·m"));
  emit unitsChanged();
}

void Settings::setTone(ToneChoice tone) {
  if (tone == tone_) return;
  tone_ = tone;
  kept_.setValue(key(kTone), text(tone));
  emit toneChanged();
}

QStringList Settings::recent() const { return kept_.value(key(kRecent)).toStringList(); }

void Settings::remember(const QString& catalogue) {
  QStringList files = recent();
  const QString whole = QFileInfo(catalogue).absoluteFilePath();
  files.removeAll(whole);
  files.prepend(whole);
  while (files.size() > kMostRecent) files.removeLast();
  kept_.setValue(key(kRecent), files);
  emit recentChanged();
}

void Settings::forget(const QString& catalogue) {
  QStringList files = recent();
  if (files.removeAll(QFileInfo(catalogue).absoluteFilePath()) == 0) return;
  kept_.setValue(key(kRecent), files);
  emit recentChanged();
}

QStringList Settings::used() const { return kept_.value(key(kUsed)).toStringList(); }

void Settings::markUsed(const QString& action) {
  QStringList names = used();
  names.removeAll(action);
  names.prepend(action);
  kept_.setValue(key(kUsed), names.mid(0, kMostUsed));
}

QString Settings::language() const { return kept_.value(key(kLanguage)).toString(); }

void Settings::setLanguage(const QString& language) { kept_.setValue(key(kLanguage), language); }

int Settings::page() const { return kept_.value(key(kPage)).toInt(); }

void Settings::setPage(int page) { kept_.setValue(key(kPage), page); }

QVariantMap Settings::layout(const QString& page) const { return kept_.value(key(kLayout) + page).toMap(); }

void Settings::setLayout(const QString& page, const QVariantMap& layout) {
  kept_.setValue(key(kLayout) + page, layout);
}

QByteArray Settings::geometry() const { return kept_.value(key(kGeometry)).toByteArray(); }

void Settings::setGeometry(const QByteArray& geometry) { kept_.setValue(key(kGeometry), geometry); }

}  // namespace ohmkin::desk
