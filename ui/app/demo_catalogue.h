#pragma once
#include <QObject>
#include <QString>

namespace ohmkin::app {

/// Writes the demo catalogue on a thread of its own, then calls back on `context`'s thread with the reason why not;
/// empty: done.
void writeDemoCatalogue(const QString& file, QObject* context, std::function<void(const QString& whyNot)> then);

}  // namespace ohmkin::app
