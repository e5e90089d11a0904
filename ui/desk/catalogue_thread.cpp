#include <desk/catalogue_thread.h>
#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

namespace ohmkin::desk {

QString plain(const std::string& text) { return QString::fromStdString(text); }

QString shown(const std::string& text) {
  static const QRegularExpression beforeUnit(
      QStringLiteral("(?<=[\\d+]) (?=years?\\b|[K°%Ω±]|F°|kΩ|N·m|lbf|mm|m\\b|AWG|[VW]\\b)"));
  return plain(text).replace(beforeUnit, QString(QChar::Nbsp));
}

QString refusalSentence(const Refusal& refusal) {
  QString where = plain(refusal.where);
  static const QRegularExpression option(QStringLiteral("--([a-z]+)(?:-([a-z]+))?"));
  where.replace(option, QStringLiteral("\\1 \\2"));
  where = where.trimmed().replace(QStringLiteral(" :"), QStringLiteral(":"));
  QStringList words;
  if (!refusal.found.empty()) words << QCoreApplication::translate("Refusal", "found %1").arg(plain(refusal.found));
  if (!refusal.expected.empty())
    words << QCoreApplication::translate("Refusal", "expected %1").arg(plain(refusal.expected));
  QString sentence = (where.isEmpty() ? QString() : where + QStringLiteral(": ")) + words.join(QStringLiteral(", "));
  const bool file = where.contains(QLatin1Char('.')) || where.contains(QLatin1Char('/'));  // keeps its own letters
  if (!file && !sentence.isEmpty()) sentence[0] = sentence[0].toUpper();
  return sentence.endsWith(QLatin1Char('.')) ? sentence : sentence + QLatin1Char('.');
}

}  // namespace ohmkin::desk
