#include <app/pages.h>
#include <app/window.h>
#include <look/palette.h>
#include <look/type.h>
#include <QActionGroup>
#include <QApplication>
#include <QClipboard>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMessageBox>

namespace ohmkin::app {
namespace {

using look::space;

constexpr QSize kSmallest{1024, 700};

QString unitWords(const DisplayUnits& units) {
  return units.temperature == TemperatureUnit::celsius ? QStringLiteral("°C") : QStringLiteral("°F");
}

}  // namespace

QMessageBox* messageBox(QWidget* parent, const QString& text) {
  auto* message = new QMessageBox(QMessageBox::NoIcon, QStringLiteral("Ohmkin"), text, QMessageBox::Ok, parent);
  message->setTextFormat(Qt::PlainText);
  message->setAttribute(Qt::WA_DeleteOnClose);
  return message;
}

void applyTone(desk::ToneChoice choice, const QPalette& desktop) {
  switch (choice) {
    case desk::ToneChoice::light:
      look::setTone(look::Tone::light);
      break;
    case desk::ToneChoice::dark:
      look::setTone(look::Tone::dark);
      break;
    case desk::ToneChoice::system:
      look::setTone(look::toneOf(desktop));
      break;
  }
}

Window::Window(desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      settings_(settings),
      menu_(new QMenu(this)),
      recent_(new QMenu(tr("Open recen&t"), this)),
      rail_(new Rail(this)),
      stack_(new QStackedWidget(this)),
      list_(new ActionList(settings, *this)),
      keys_(new KeySheet(*this)),
      backups_(new BackupSheet(*this, [this] { return unsaved(); })),
      made_(pages().size(), nullptr) {
  setWindowTitle(QStringLiteral("Ohmkin"));
  setMinimumSize(kSmallest);
  setAcceptDrops(true);
  resize(1440, 900);
  if (!settings.geometry().isEmpty()) restoreGeometry(settings.geometry());

  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(rail_);
  row->addWidget(stack_, 1);
  addPages();
  connect(rail_, &Rail::chosen, this, &Window::choosePage);
  units_ = rail_->addAtFoot(unitWords(settings.units()), tr("Change between °C and °F (Ctrl+U)"));
  more_ = rail_->addAtFoot(tr("Menu"), tr("Catalogues, units, light and dark (F10)"));
  connect(more_, &QAbstractButton::clicked, this, &Window::popMenu);
  fillMenu();
  wireBackups();
  qApp->installEventFilter(this);
  rail_->choose(std::clamp(settings.page(), 0, rail_->count() - 1));
}

void Window::addPages() {
  for (const desk::PageEntry& entry : pages()) {
    const int index = rail_->count();
    rail_->addPage(entry.title, entry.shortcut.toString(QKeySequence::NativeText));
    goes_.push_back(act(entry.title, entry.shortcut, [this, index] { rail_->choose(index); }));
  }
}

desk::Page& Window::page() const { return *qobject_cast<desk::Page*>(stack_->currentWidget()); }

void Window::choosePage(int index) {
  list_->vanish();
  keys_->vanish();
  if (!exchanging_) backups_->vanish();
  if (stack_->currentWidget() != nullptr) keepLayout(page());
  desk::Page*& made = made_.at(static_cast<std::size_t>(index));
  if (made == nullptr) made = &makePage(static_cast<std::size_t>(index));
  histories_.setActiveStack(&made->history());
  stack_->setCurrentWidget(made);
  if (!backups_->isVisible()) made->takeKeyboard();
}

desk::Page& Window::makePage(std::size_t index) {
  desk::Page* page = pages().at(index).make(settings_, stack_);
  stack_->addWidget(page);
  connect(page, &desk::Page::openRequested, this, &Window::chooseCatalogue);
  connect(page, &desk::Page::demoRequested, this, &Window::makeDemo);
  connect(page, &desk::Page::goOnRequested, this, &Window::goOnWith);
  connect(page, &desk::Page::copiesRequested, this, &Window::showBackups);
  connect(page, &desk::Page::salvageRequested, this, [this] {
    showBackups();
    backups_->askSalvage();
  });
  connect(page, &desk::Page::opened, this, [this, page](const QString& file) {
    file_ = file;
    // Until now there was nothing on it that could take the keyboard.
    const QWidget* focus = QApplication::focusWidget();
    if (page == stack_->currentWidget() && stack_->isEnabled() && (focus == nullptr || rail_->isAncestorOf(focus)))
      page->takeKeyboard();
    settings_.remember(file);
    setWindowTitle(tr("%1 – Ohmkin").arg(QFileInfo(file).fileName()));
  });
  connect(page, &desk::Page::refused, this, [this](const QString& file) {
    settings_.forget(file);
    setWindowTitle(QStringLiteral("Ohmkin"));
  });
  histories_.addStack(&page->history());
  page->restoreLayout(settings_.layout(QString::fromLatin1(page->metaObject()->className())));
  if (!file_.isEmpty() && !exchanging_) page->openCatalogue(file_);
  return *page;
}

void Window::goOnWith(const QString& schema, const QString& document) {
  const auto entry =
      std::find_if(pages().begin(), pages().end(), [&](const auto& e) { return e.goesOnWith == schema; });
  if (entry == pages().end()) return;
  const auto index = entry - pages().begin();
  rail_->choose(static_cast<int>(index));
  made_.at(static_cast<std::size_t>(index))->goOnWith(document);
}

QAction* Window::act(const QString& words, const QKeySequence& keys, std::function<void()> what) {
  auto* action = new QAction(words, this);
  action->setShortcut(keys);
  connect(action, &QAction::triggered, this, [what = std::move(what)] { what(); });
  addAction(action);
  return action;
}

std::vector<Offered> Window::offered() const {
  std::vector<Offered> all;
  const auto shown = std::find(made_.begin(), made_.end(), &page());
  const QString title = pages().at(static_cast<std::size_t>(shown - made_.begin())).title;
  for (QAction* action : page().actions()) {
    const QString group = desk::groupOf(*action);
    all.push_back({action, group.isEmpty() ? title : group});
  }
  for (QAction* go : goes_) all.push_back({go, tr("Go to")});
  for (QAction* action : actions())
    if (std::find(goes_.begin(), goes_.end(), action) == goes_.end()) all.push_back({action, tr("Everywhere")});
  return all;
}

void Window::fillMenu() {
  menu_->addAction(act(tr("&Open catalogue…"), QKeySequence(Qt::CTRL | Qt::Key_O), [this] { chooseCatalogue(); }));
  menu_->addMenu(recent_);
  menu_->addAction(
      act(tr("&New demo catalogue…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N), [this] { makeDemo(); }));
  menu_->addAction(act(tr("&Backups…"), QKeySequence(Qt::CTRL | Qt::Key_B), [this] { showBackups(); }));
  menu_->addSeparator();
  menu_->addAction(
      act(tr("&Copy answer as text"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C), [this] { copyAnswer(); }));
  menu_->addSeparator();
  addUndo();
  menu_->addSeparator();
  addChoices();
  menu_->addSeparator();
  addLanguages();
  menu_->addSeparator();
  menu_->addAction(act(tr("&Find what can be done…"), QKeySequence(Qt::Key_F9), [this] { list_->offer(offered()); }));
  menu_->addAction(act(tr("&Keys"), QKeySequence(Qt::Key_F1), [this] { keys_->offer(offered()); }));
  act(tr("Open the menu"), QKeySequence(Qt::Key_F10), [this] { popMenu(); });
  menu_->addAction(act(tr("&About and cautions"), {}, [this] { showAbout(); }));
  menu_->addAction(act(tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { close(); }));
  connect(&settings_, &desk::Settings::recentChanged, this, &Window::fillRecent);
  fillRecent();
}

/// Choices of which one is taken: checkable actions in an exclusive group, kept in step with the settings.
void Window::addChoices() {
  const auto choice = [this](QActionGroup* group, const QString& words, bool on, std::function<void()> take) {
    auto* action = new QAction(words, group);
    action->setCheckable(true);
    action->setChecked(on);
    connect(action, &QAction::triggered, this, [take = std::move(take)] { take(); });
    menu_->addAction(action);
    addAction(action);
    return action;
  };
  const auto withTemperature = [this](TemperatureUnit unit) {
    DisplayUnits units = settings_.units();
    units.temperature = unit;
    settings_.setUnits(units);
  };
  const auto withTorque = [this](TorqueUnit unit) {
    DisplayUnits units = settings_.units();
    units.torque = unit;
    settings_.setUnits(units);
  };
  const DisplayUnits& units = settings_.units();
  auto* temperature = new QActionGroup(this);
  QAction* celsius = choice(temperature, tr("Temperatures in °C"), units.temperature == TemperatureUnit::celsius,
                            [=] { withTemperature(TemperatureUnit::celsius); });
  QAction* fahrenheit = choice(temperature, tr("Temperatures in °F"), units.temperature == TemperatureUnit::fahrenheit,
                               [=] { withTemperature(TemperatureUnit::fahrenheit); });
  const auto toggle = [this, withTemperature] {
    withTemperature(settings_.units().temperature == TemperatureUnit::celsius ? TemperatureUnit::fahrenheit
                                                                              : TemperatureUnit::celsius);
  };
  act(tr("Change between °C and °F"), QKeySequence(Qt::CTRL | Qt::Key_U), toggle);
  connect(units_, &QAbstractButton::clicked, this, toggle);
  connect(&settings_, &desk::Settings::unitsChanged, this, [this, celsius, fahrenheit] {
    const bool metric = settings_.units().temperature == TemperatureUnit::celsius;
    (metric ? celsius : fahrenheit)->setChecked(true);
    units_->setText(unitWords(settings_.units()));
    units_->setAccessibleName(units_->text());
  });
  menu_->addSeparator();
  auto* torque = new QActionGroup(this);
  choice(torque, tr("Torques in N·m"), units.torque == TorqueUnit::newtonMetre,
         [=] { withTorque(TorqueUnit::newtonMetre); });
  choice(torque, tr("Torques in lbf·ft"), units.torque == TorqueUnit::poundFoot,
         [=] { withTorque(TorqueUnit::poundFoot); });
  menu_->addSeparator();
  auto* tone = new QActionGroup(this);
  const desk::ToneChoice now = settings_.tone();
  for (const auto& [words, which] :
       {std::pair{tr("Light or dark as the system is"), desk::ToneChoice::system},
        std::pair{tr("Light"), desk::ToneChoice::light}, std::pair{tr("Dark"), desk::ToneChoice::dark}})
    choice(tone, words, now == which, [this, take = which] { settings_.setTone(take); });
}

/// What the page shown can take back, said by name.
void Window::addUndo() {
  QAction* undo = act(tr("&Undo"), QKeySequence(Qt::CTRL | Qt::Key_Z), [this] { histories_.undo(); });
  QAction* redo = act(tr("&Redo"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), [this] { histories_.redo(); });
  for (QAction* action : {undo, redo}) {
    action->setEnabled(false);
    menu_->addAction(action);
  }
  connect(&histories_, &QUndoGroup::canUndoChanged, undo, &QAction::setEnabled);
  connect(&histories_, &QUndoGroup::canRedoChanged, redo, &QAction::setEnabled);
  connect(&histories_, &QUndoGroup::undoTextChanged, undo,
          [undo](const QString& what) { undo->setText(what.isEmpty() ? tr("&Undo") : tr("&Undo: %1").arg(what)); });
  connect(&histories_, &QUndoGroup::redoTextChanged, redo,
          [redo](const QString& what) { redo->setText(what.isEmpty() ? tr("&Redo") : tr("&Redo: %1").arg(what)); });
}

void Window::addLanguages() {
  auto* languages = menu_->addMenu(tr("&Language"));
  auto* group = new QActionGroup(this);
  for (const auto& [words, language] :
       {std::pair{tr("As the system is"), QString()}, std::pair{QStringLiteral("English"), QStringLiteral("en")},
        std::pair{QStringLiteral("Deutsch"), QStringLiteral("de")}}) {
    auto* action = new QAction(words, group);
    action->setCheckable(true);
    action->setChecked(settings_.language() == language);
    connect(action, &QAction::triggered, this, [this, take = language] {
      settings_.setLanguage(take);
      messageBox(this, tr("The language changes at the next start."))->open();
    });
    languages->addAction(action);
  }
}

void Window::fillRecent() {
  recent_->clear();
  const QStringList files = settings_.recent();
  for (const QString& file : files) {
    QAction* action = recent_->addAction(QFileInfo(file).fileName().replace(QLatin1Char('&'), QStringLiteral("&&")));
    action->setToolTip(file);
    connect(action, &QAction::triggered, this, [this, file] { openCatalogue(file); });
  }
  recent_->setToolTipsVisible(true);
  recent_->setEnabled(!files.isEmpty());
}

void Window::copyAnswer() const {
  const QString text = page().asText();
  if (!text.isEmpty()) QApplication::clipboard()->setText(text);
}

void Window::popMenu() {
  const QSize size = menu_->sizeHint();
  menu_->popup(more_->mapToGlobal(QPoint(more_->width() + space(4), more_->height() - size.height())));
  menu_->setActiveAction(menu_->actions().front());
}

void Window::showAbout() {
  messageBox(
      this,
      tr("Ohmkin %1\n\nWhich temperature sender joins this dash gauge to that engine.\n\n"
         "Let the engine cool before you open anything: coolant under pressure scalds. Disconnect the battery before "
         "you "
         "work behind the dash: a shorted feed burns wires. Keep sparks away from fuel vapour.\n\n"
         "The gauge is an aid, a trimmed one more so. Prove it on the bench or against a thermometer. Local codes and "
         "licensed practice come first.\n\nGPL-3.0-or-later, without any warranty.")
          .arg(QCoreApplication::applicationVersion()))
      ->open();
}

/// A field that has nothing more to take back lets the window's Undo through to the page.
bool Window::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    const auto* field = qobject_cast<QLineEdit*>(watched);
    auto* key = static_cast<QKeyEvent*>(event);  // NOLINT: its type says so
    if (field != nullptr && isAncestorOf(field) &&
        ((key->matches(QKeySequence::Undo) && !field->isUndoAvailable()) ||
         (key->matches(QKeySequence::Redo) && !field->isRedoAvailable()))) {
      event->ignore();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void Window::keepLayout(const desk::Page& page) {
  settings_.setLayout(QString::fromLatin1(page.metaObject()->className()), page.layoutState());
}

void Window::closeEvent(QCloseEvent* event) {
  if (!leaving_ && !unsaved().isEmpty()) {
    event->ignore();
    whenNothingIsLost(tr("&Give it up and quit"), [this] {
      leaving_ = true;
      close();
    });
    return;
  }
  settings_.setGeometry(saveGeometry());
  const auto shown = std::find(made_.begin(), made_.end(), &page());
  settings_.setPage(static_cast<int>(shown - made_.begin()));
  keepLayout(page());
  QWidget::closeEvent(event);
}

}  // namespace ohmkin::app
