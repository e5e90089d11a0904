#include <catalog/bench_equipment.h>
#include <catalog/senders.h>
#include <look/type.h>
#include <measure/bench_page.h>
#include <measure/lanes.h>
#include <parts/scrolling.h>

namespace ohmkin::measure {
namespace {

using look::space;

SharedShop shopOf(const catalog::Catalogue& catalogue) {
  auto shop = std::make_shared<Shop>();
  shop->families = workflow::benchFamilies(catalogue);
  for (const bench::FamilyCurve& family : shop->families.curves) shop->familyNames << desk::plain(family.name);
  for (const catalog::Sender& sender : catalog::senders(catalogue)) shop->parts << desk::plain(sender.id.text);
  for (const catalog::MeterRecord& meter : catalog::meters(catalogue)) shop->meters << desk::plain(meter.name.text);
  for (const catalog::ThermometerRecord& each : catalog::thermometers(catalogue))
    shop->thermometers << desk::plain(each.name.text);
  for (const catalog::BathRecord& bath : catalog::baths(catalogue)) shop->baths << desk::plain(bath.name.text);
  return shop;
}

}  // namespace

BenchPage::BenchPage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      whole_(new parts::BlankSheet(this)),
      stack_(new QStackedWidget(this)),
      parts_(new parts::Segmented(tr("What to do"), this)),
      desks_(new QStackedWidget(this)),
      hand_(new HandDesk(handThread_, settings, this)),
      counter_(new QuickDesk(handThread_, settings, this)),
      fileDesk_(new FileDesk(fileThread_, settings, this)),
      imports_(new ImportList(fileThread_, this)) {
  parts_->setSegments({tr("By hand"), tr("At the counter"), tr("From a file"), tr("Kept")});
  for (QWidget* each : std::initializer_list<QWidget*>{hand_, counter_, fileDesk_, imports_})
    desks_->addWidget(parts::scrolling(each, this));
  auto* work = new QWidget(this);
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(parts_, 0, Qt::AlignLeft);
  column->addWidget(desks_, 1);
  stack_->addWidget(whole_);
  stack_->addWidget(work);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(24), space(24), space(16));
  outer->addWidget(stack_);
  parts::sayNoCatalogue(*whole_, {});
  // A file that is dropped is readings wherever it falls, not a path to be typed into a field.
  for (QLineEdit* entry : findChildren<QLineEdit*>()) entry->setAcceptDrops(false);
  wire();
}

/// A long import is cancelled, so that the window closes at once; nothing of it was written.
BenchPage::~BenchPage() { fileDesk_->stop(); }

void BenchPage::wire() {
  parts::askThrough(*this, *whole_);
  connect(parts_, &parts::Segmented::chosen, this, [this](int part) {
    desks_->setCurrentIndex(part);
    takeKeyboard();
  });
  connect(&handThread_, &desk::CatalogueThread::opened, this, [this](const QString& file) {
    file_ = file;
    fileThread_.open(file);
    readShop();
  });
  connect(&handThread_, &desk::CatalogueThread::openingRefused, this,
          [this](const QString& file, const Refusal& refusal) {
            forget(refusal);
            emit refused(file, desk::refusalSentence(refusal));
          });
  connect(&fileThread_, &desk::CatalogueThread::opened, imports_, &ImportList::catalogueOpened);
  for (desk::CatalogueThread* thread : {&handThread_, &fileThread_})
    connect(thread, &desk::CatalogueThread::failed, this, [this](const Refusal& refusal) { forget(refusal); });
  connect(fileDesk_, &FileDesk::broughtIn, imports_, &ImportList::reload);
  connect(hand_, &HandDesk::kept, imports_, &ImportList::reload);
  // What the part read earlier, and which files are in, is asked anew.
  connect(fileDesk_, &FileDesk::broughtIn, hand_, &HandDesk::refresh);
  connect(imports_, &ImportList::undone, hand_, &HandDesk::refresh);
  connect(imports_, &ImportList::undone, fileDesk_, &FileDesk::refresh);
  connect(&fileDesk_->who(), &QLineEdit::textChanged, imports_, &ImportList::setWho);
  imports_->setWho(fileDesk_->who().text());
  offer(tr("Type readings"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] { takeKeyboard(); });
  offer(tr("Next part of the bench"), QKeySequence(Qt::CTRL | Qt::Key_PageDown),
        [this] { parts_->choose(std::min(parts_->chosenIndex() + 1, parts_->count() - 1)); });
  offer(tr("Previous part of the bench"), QKeySequence(Qt::CTRL | Qt::Key_PageUp),
        [this] { parts_->choose(std::max(parts_->chosenIndex() - 1, 0)); });
  offer(tr("Stop reading the file"), QKeySequence(Qt::Key_Escape), [this] { fileDesk_->stop(); });
}

void BenchPage::openCatalogue(const QString& file) {
  fileDesk_->stop();
  parts::sayOpening(*whole_, file);
  stack_->setCurrentIndex(0);
  handThread_.open(file);
}

void BenchPage::letGo(const std::function<void()>& then) {
  fileDesk_->stop();
  desk::letGo({&handThread_, &fileThread_}, then);
}

void BenchPage::showNoCatalogue() { forget({}); }

void BenchPage::forget(const std::optional<Refusal>& whyNot) {
  file_.clear();
  hand_->forget();
  fileDesk_->forget();
  parts::sayNoCatalogue(*whole_, whyNot);
  stack_->setCurrentIndex(0);
}

void BenchPage::readShop() {
  handThread_.ask(names, [this, file = file_](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    return [this, file, shop = shopOf(open.catalogue)] {
      stack_->setCurrentIndex(1);
      hand_->setShop(file, shop);
      counter_->setShop(shop);
      fileDesk_->setShop(file, shop);
      emit opened(file);
      if (!waiting_.isEmpty()) takeFile(std::exchange(waiting_, QString()));
    };
  });
}

void BenchPage::takeKeyboard() {
  switch (parts_->chosenIndex()) {
    case byHand:
      return hand_->takeKeyboard();
    case atCounter:
      return counter_->takeKeyboard();
    case fromFile:
      return fileDesk_->takeKeyboard();
    default:
      return imports_->takeKeyboard();
  }
}

QString BenchPage::asText() const {
  switch (parts_->chosenIndex()) {
    case byHand:
      return hand_->asText();
    case atCounter:
      return counter_->asText();
    case fromFile:
      return fileDesk_->asText();
    default:
      return imports_->asText();
  }
}

void BenchPage::takeFile(const QString& file) {
  if (!ready()) {
    waiting_ = file;
    return;
  }
  parts_->choose(fromFile);
  fileDesk_->openFile(file);
}

}  // namespace ohmkin::measure
