#include <app/offered.h>
#include <algorithm>

namespace ohmkin::app {

QString nameOf(const QAction& action) {
  QString name = action.text();
  return name.remove(QLatin1Char('&'));
}

QStringList capsOf(const QKeySequence& keys) {
  const QString text = keys.toString(QKeySequence::NativeText);
  QStringList caps = text.split(QLatin1Char('+'), Qt::SkipEmptyParts);
  if (text.endsWith(QLatin1Char('+'))) caps << QStringLiteral("+");
  return caps;
}

bool answersTo(const Offered& offered, const QString& typed) {
  if (offered.action == nullptr) return false;
  const QString all = nameOf(*offered.action) + QLatin1Char(' ') + offered.group + QLatin1Char(' ') +
                      offered.action->shortcut().toString(QKeySequence::NativeText);
  const QStringList words = typed.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  return std::all_of(words.begin(), words.end(),
                     [&all](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

std::vector<Offered> found(const std::vector<Offered>& all, const QString& typed, const QStringList& usedLastFirst) {
  std::vector<Offered> those;
  std::copy_if(all.begin(), all.end(), std::back_inserter(those),
               [&typed](const Offered& each) { return answersTo(each, typed); });
  const auto place = [&usedLastFirst](const Offered& each) {
    const qsizetype at = usedLastFirst.indexOf(nameOf(*each.action));
    return std::pair(!each.action->isEnabled(), at < 0 ? usedLastFirst.size() : at);
  };
  std::stable_sort(those.begin(), those.end(),
                   [&place](const Offered& a, const Offered& b) { return place(a) < place(b); });
  return those;
}

}  // namespace ohmkin::app
