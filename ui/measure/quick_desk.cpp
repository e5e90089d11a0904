#include <look/type.h>
#include <measure/answer_view.h>
#include <measure/lanes.h>
#include <measure/quick_desk.h>
#include <QGridLayout>

namespace ohmkin::measure {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

QuickDesk::QuickDesk(desk::CatalogueThread& thread, desk::Settings& settings, QWidget* parent)
    : QWidget(parent),
      thread_(thread),
      settings_(settings),
      ohms_(new parts::Entry(tr("Ohms of the cold sender"))),
      room_(new parts::Entry(tr("Temperature of the room"))),
      known_(new parts::Choice(tr("How well the temperature is known"))),
      said_((new parts::Words)->sized(typeface(Text::heading))),
      remain_(new parts::ChipRow),
      findings_(new parts::FindingList) {
  ohms_->setPlaceholderText(tr("as the meter shows, for example 720"));
  room_->setPlaceholderText(tr("20 °C"));
  known_->addItem(tr("a counter's thermometer, ± 2 K"), 2.0);
  known_->addItem(tr("just room temperature, ± 5 K"), 5.0);
  known_->addItem(tr("measured beside it, ± 0.5 K"), 0.5);
  auto* form = new QWidget;
  auto* grid = new QGridLayout(form);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(3));
  grid->addWidget(parts::fieldName(tr("Ohms, cold"), form), 0, 0);
  grid->addWidget(parts::fieldName(tr("At"), form), 0, 1);
  grid->addWidget(parts::fieldName(tr("Which is"), form), 0, 2);
  grid->addWidget(ohms_, 1, 0);
  grid->addWidget(room_, 1, 1);
  grid->addWidget(known_, 1, 2);
  for (int column = 0; column < 3; ++column) grid->setColumnStretch(column, 1);
  auto* asked = headedPanel(tr("A cold sender at the counter"), {form}, this);
  findings_->setMinimumHeight(space(110));
  answer_ = headedPanel({}, {said_, remain_, findings_}, this);
  remain_->setAccessibleName(tr("Families that remain"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(asked);
  column->addWidget(answer_);
  column->addStretch(1);
  setMaximumWidth(space(900));
  for (parts::Entry* entry : {ohms_, room_}) connect(entry, &QLineEdit::textChanged, this, &QuickDesk::asked);
  connect(ohms_, &parts::Entry::left, this, [this](int way) {
    if (way > 0) room_->setFocus();
  });
  connect(room_, &parts::Entry::left, this,
          [this](int way) { (way > 0 ? static_cast<QWidget*>(known_) : ohms_)->setFocus(); });
  connect(known_, &QComboBox::currentIndexChanged, this, &QuickDesk::asked);
  connect(&settings_, &desk::Settings::unitsChanged, this, &QuickDesk::asked);
  refuse({});
}

void QuickDesk::setShop(const SharedShop& shop) {
  shop_ = shop;
  asked();
}

void QuickDesk::refuse(const QString& sentence) {
  thread_.drop(counter);
  said_->setText(sentence.isEmpty() ? tr("One resistance, read before anything is heated, already leaves few families.")
                                    : sentence);
  said_->sized(typeface(Text::body))->painted(Paint::quiet);
  remain_->display({});
  findings_->display({});
  findings_->hide();
}

void QuickDesk::asked() {
  if (!shop_) return;
  const QString typed = ohms_->text().trimmed();
  if (typed.isEmpty()) return refuse({});
  const auto read = parseOhms(typed.toStdString(), tr("Ohms, cold").toStdString());
  if (!read) return refuse(desk::refusalSentence(read.error()));
  Temperature room = celsius(20);
  if (!room_->text().trimmed().isEmpty()) {
    const auto at = parseTemperature(room_->text().trimmed().toStdString(), settings_.units().temperature,
                                     tr("Temperature of the room").toStdString());
    if (!at) return refuse(desk::refusalSentence(at.error()));
    room = *at;
  }
  thread_.ask(counter,
              [this, shop = shop_, shown = *read, room, u = kelvins(known_->currentData().toDouble()),
               units = settings_.units()](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                const auto check = workflow::quickCheck(open.catalogue, shop->families, {}, room, shown, u, units);
                if (!check) return [this, why = desk::refusalSentence(check.error())] { refuse(why); };
                return [this, check = *check] { display(check); };
              });
}

void QuickDesk::display(const bench::QuickCheck& check) {
  said_->sized(typeface(Text::heading))->painted(Paint::ink);
  said_->setText(check.remain.empty()
                     ? tr("None of the families")
                     : tr("%1 of %2 families remain").arg(check.remain.size()).arg(shop_->families.curves.size()));
  std::vector<parts::ChipWords> chips;
  chips.reserve(check.remain.size());
  for (const std::size_t family : check.remain)
    chips.push_back({desk::plain(shop_->families.curves[family].name), parts::ChipKind::understood});
  for (const std::size_t family : check.silent)
    chips.push_back({tr("%1: its curve does not reach so far").arg(desk::plain(shop_->families.curves[family].name)),
                     parts::ChipKind::unknown});
  remain_->display(chips);
  parts::Remarks remarks;
  remarks.add({}, check.findings);
  findings_->display(remarks.take());
  findings_->setVisible(!findings_->findings().empty());
}

QString QuickDesk::asText() const {
  QStringList lines{said_->text()};
  for (const parts::ChipWords& chip : remain_->chips()) lines << QStringLiteral("  ") + chip.text;
  for (const parts::FindingWords& finding : findings_->findings()) lines << finding.sentence;
  return remain_->chips().empty() ? QString() : lines.join(QLatin1Char('\n'));
}

}  // namespace ohmkin::measure
