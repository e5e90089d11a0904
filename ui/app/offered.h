#pragma once
#include <QAction>
#include <QPointer>
#include <QStringList>
#include <vector>

/// What can be done now, as the list of actions and the sheet of keys show it.
namespace ohmkin::app {

struct Offered {
  QPointer<QAction> action;  ///< goes with its page
  QString group;
};

/// Its name without the mark of its menu key.
QString nameOf(const QAction& action);
/// The keys one after another as they stand on the keyboard: "Ctrl", "Shift", "O".
QStringList capsOf(const QKeySequence& keys);
/// Whether every word typed is part of the name, the group or the keys, in whatever order.
bool answersTo(const Offered& offered, const QString& typed);
/// Those that answer to what was typed: used last first, then as they were offered; what cannot be done now at the end.
std::vector<Offered> found(const std::vector<Offered>& all, const QString& typed, const QStringList& usedLastFirst);

}  // namespace ohmkin::app
