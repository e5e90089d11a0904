#include <app/language.h>
#include <embedded/ohmkin_translations.h>
#include <quantity/decimal_mark.h>
#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>
#include <algorithm>

namespace ohmkin::app {
namespace {

QByteArray embedded(const std::string& name) {
  for (const auto& file : translations::files())
    if (file.name == name) return QByteArray::fromRawData(file.text.data(), static_cast<qsizetype>(file.text.size()));
  return {};
}

/// A text is known by the class that says it. Functions that belong to no class say theirs in the name of one, and the
/// tool that collects texts takes them for their namespace's: so what is not found there is looked for everywhere.
class Translator : public QTranslator {
 public:
  Translator(const QByteArray& words, QObject* parent) : QTranslator(parent), words_(words) {
    if (load(reinterpret_cast<const uchar*>(words_.constData()), static_cast<int>(words_.size())))
      contexts_ = embedded("contexts.txt").split('\n');
  }

  [[nodiscard]] QString translate(const char* context, const char* source, const char* comment,
                                  int count) const override {
    QString words = QTranslator::translate(context, source, comment, count);
    if (!words.isNull() || qstrncmp(context, "Q", 1) == 0) return words;  // Qt's own has a translator of its own
    for (const QByteArray& other : contexts_) {
      words = QTranslator::translate(other.constData(), source, comment, count);
      if (!words.isNull()) break;
    }
    return words;
  }

 private:
  QByteArray words_;
  QList<QByteArray> contexts_;
};

}  // namespace

void speak(const QString& choice, QCoreApplication& application) {
  const QLocale locale = choice.isEmpty() ? QLocale::system() : QLocale(choice);
  const QString language = QLocale::languageToCode(locale.language());
  QByteArray words = embedded("ohmkin_" + language.toStdString() + ".qm");
  const bool spoken = !words.isEmpty();
  if (!spoken) words = embedded("ohmkin_en.qm");
  QLocale::setDefault(spoken ? locale : QLocale(QLocale::English, locale.territory()));
  writeDecimalsWith(QLocale().decimalPoint() == QLatin1String(",") ? DecimalMark::comma : DecimalMark::point);
  auto* qtsOwn = new QTranslator(&application);
  if (spoken && qtsOwn->load(QLocale(), QStringLiteral("qtbase"), QStringLiteral("_"),
                             QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(qtsOwn);
  QCoreApplication::installTranslator(new Translator(words, &application));
}

}  // namespace ohmkin::app
