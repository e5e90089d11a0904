#pragma once
#include <QString>

class QCoreApplication;

namespace ohmkin::app {

/// Speaks the language chosen from here on: "de", "en"; empty means the system's, English where the program does not
/// speak it. The words come with the program, Qt's own (the buttons of its dialogs) from where Qt keeps them.
/// Call once, before the first text is asked for.
void speak(const QString& choice, QCoreApplication& application);

}  // namespace ohmkin::app
