#include <app/catalogue_files.h>
#include <app/window.h>
#include <QFileDialog>
#include <QFileInfo>

namespace ohmkin::app {

QString catalogueFilter() { return Window::tr("Ohmkin catalogues (*.ohmkin);;All files (*)"); }

QString askForNewCatalogue(QWidget* parent, const QString& title, const QString& proposed) {
  const QString file = QFileDialog::getSaveFileName(parent, title, proposed, catalogueFilter(), nullptr,
                                                    QFileDialog::DontConfirmOverwrite);
  return file.isEmpty() || !QFileInfo(file).suffix().isEmpty() ? file : file + QStringLiteral(".ohmkin");
}

}  // namespace ohmkin::app
