#include <app/language.h>
#include <app/window.h>
#include <look/style.h>
#include <look/type.h>
#include <print/print_request.h>
#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <algorithm>
#include <cstdio>
#include <string_view>

namespace {

/// A sheet is made where there may be no desktop at all: what Qt remarks about that is nobody's concern, and standard
/// error is for what went wrong.
void keepQuietWhilePrinting(int argc, char** argv) {
  const auto asked = [](std::string_view word) { return word == "--print"; };
  if (!std::any_of(argv + 1, argv + argc, asked)) return;
  qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& words) {
    if (type == QtCriticalMsg || type == QtFatalMsg) std::fprintf(stderr, "ohmkin-window: %s\n", qPrintable(words));
  });
}

}  // namespace

/// ohmkin-window [FILE], or ohmkin-window --print IN.svg… --pdf OUT
int main(int argc, char** argv) {
  keepQuietWhilePrinting(argc, argv);
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("Ohmkin"));
  QApplication::setApplicationVersion(QStringLiteral(OHMKIN_VERSION));
  QApplication::setDesktopFileName(QStringLiteral("ohmkin"));
  QApplication::setWindowIcon(QIcon(QStringLiteral(":/drawings/ohmkin.svg")));

  ohmkin::desk::Settings settings;
  ohmkin::app::speak(settings.language(), application);

  QCommandLineParser arguments;
  arguments.setApplicationDescription(
      QApplication::tr("Which temperature sender joins this dash gauge to that engine.\n\n"
                       "Example: ohmkin-window demo.ohmkin"));
  arguments.addHelpOption();
  arguments.addVersionOption();
  arguments.addPositionalArgument(QStringLiteral("FILE"),
                                  QApplication::tr("catalogue to open; otherwise the one used last"),
                                  QStringLiteral("[FILE]"));
  ohmkin::printing::addPrintRequest(arguments);
  arguments.process(application);
  if (const auto ended = ohmkin::printing::servedPrintRequest(arguments)) return *ended;

  const QPalette desktop = QApplication::palette();
  ohmkin::look::chooseFamily();
  QApplication::setStyle(new ohmkin::look::Style);
  ohmkin::app::applyTone(settings.tone(), desktop);
  QObject::connect(&settings, &ohmkin::desk::Settings::toneChanged, &application,
                   [&settings, desktop] { ohmkin::app::applyTone(settings.tone(), desktop); });

  ohmkin::app::Window window(settings);
  const QStringList files = arguments.positionalArguments();
  if (files.isEmpty()) window.openLast();
  else window.openCatalogue(files.front());
  window.show();
  window.page().takeKeyboard();
  return QApplication::exec();
}
