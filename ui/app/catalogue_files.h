#pragma once
#include <QString>

class QWidget;

namespace ohmkin::app {

QString catalogueFilter();  ///< for a dialog that asks for a file
/// Where a new catalogue is to go, its suffix added; what is there already is refused by whoever writes it. Empty: no.
QString askForNewCatalogue(QWidget* parent, const QString& title, const QString& proposed);

}  // namespace ohmkin::app
