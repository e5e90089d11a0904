#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/blank_sheet.h>
#include <parts/flow_layout.h>
#include <workflow/backup.h>
#include <QFileInfo>
#include <QFontInfo>
#include <QHBoxLayout>

namespace ohmkin::parts {

using look::space;

BlankSheet::BlankSheet(QWidget* parent)
    : QWidget(parent),
      heading_(new Words({}, this)),
      text_(new Words({}, this)),
      buttons_(new QWidget(this)),
      copies_(new QPushButton(tr("Go back to a &backup…"), buttons_)),
      salvage_(new QPushButton(tr("&Save what still reads…"), buttons_)),
      example_(new QPushButton(this)),
      column_(nullptr) {
  QFont large = look::typeface(look::Text::headline);
  large.setPixelSize(static_cast<int>(QFontInfo(large).pixelSize() * 1.3));
  heading_->sized(large);
  auto* open = new QPushButton(tr("&Open a catalogue…"), buttons_);
  auto* demo = new QPushButton(tr("&New demo catalogue…"), buttons_);
  auto* row = new FlowLayout(space(8), buttons_);
  row->setContentsMargins(0, space(8), 0, 0);
  for (QPushButton* button : {copies_, salvage_, open, demo}) {
    button->setMinimumHeight(space(36));
    row->addWidget(button);
  }
  offerRescue(false, false);
  connect(copies_, &QPushButton::clicked, this, &BlankSheet::copiesRequested);
  connect(salvage_, &QPushButton::clicked, this, &BlankSheet::salvageRequested);
  connect(open, &QPushButton::clicked, this, &BlankSheet::openRequested);
  connect(demo, &QPushButton::clicked, this, &BlankSheet::demoRequested);
  connect(example_, &QPushButton::clicked, this, &BlankSheet::exampleTaken);
  example_->setMinimumHeight(space(36));
  example_->hide();

  auto* sheet = new QWidget(this);
  sheet->setMaximumWidth(space(640));
  column_ = new QVBoxLayout(sheet);
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(space(8));
  column_->addWidget(heading_);
  column_->addWidget(text_);
  column_->addWidget(buttons_);
  column_->addSpacing(space(8));
  column_->addWidget(example_, 0, Qt::AlignLeft);
  auto* middle = new QHBoxLayout;
  middle->addStretch(1);
  middle->addWidget(sheet, 8);
  middle->addStretch(1);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, space(24), 0, 0);
  outer->addStretch(1);
  outer->addLayout(middle);
  outer->addStretch(3);
}

void BlankSheet::say(const QString& heading, const QString& text, bool openButtons) {
  heading_->setText(heading);
  text_->setText(text);
  text_->setVisible(!text.isEmpty());
  buttons_->setVisible(openButtons);
  offerRescue(false, false);
}

void BlankSheet::offerRescue(bool copies, bool salvage) {
  copies_->setVisible(copies);
  salvage_->setVisible(salvage);
}

void BlankSheet::offer(const QString& example) {
  example_->setText(example);
  example_->setVisible(!example.isEmpty());
}

void BlankSheet::addBelow(QWidget* widget) { column_->addWidget(widget); }

QString BlankSheet::said() const { return heading_->text() + QLatin1Char('\n') + text_->text(); }

void sayNoCatalogue(BlankSheet& sheet, const std::optional<Refusal>& whyNot) {
  sheet.offer({});
  if (whyNot) {
    sheet.say(BlankSheet::tr("This catalogue cannot be opened"), desk::refusalSentence(*whyNot), true);
    sheet.offerRescue(workflow::copiesMayHelp(*whyNot), workflow::salvageMayHelp(*whyNot));
  } else {
    sheet.say(BlankSheet::tr("No catalogue is open"),
              BlankSheet::tr("Senders, gauges and castings are kept in one file that ends in .ohmkin. Open yours, or "
                             "make the demo catalogue to try everything on."),
              true);
  }
}

void askThrough(desk::Page& page, BlankSheet& sheet) {
  QObject::connect(&sheet, &BlankSheet::openRequested, &page, &desk::Page::openRequested);
  QObject::connect(&sheet, &BlankSheet::demoRequested, &page, &desk::Page::demoRequested);
  QObject::connect(&sheet, &BlankSheet::copiesRequested, &page, &desk::Page::copiesRequested);
  QObject::connect(&sheet, &BlankSheet::salvageRequested, &page, &desk::Page::salvageRequested);
}

void sayOpening(BlankSheet& sheet, const QString& file) {
  sheet.offer({});
  sheet.say(BlankSheet::tr("Opening %1").arg(QFileInfo(file).fileName()), {});
}

}  // namespace ohmkin::parts
