#include <look/type.h>
#include <parts/blank_sheet.h>
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
      example_(new QPushButton(this)),
      column_(nullptr) {
  QFont large = look::typeface(look::Text::headline);
  large.setPixelSize(static_cast<int>(QFontInfo(large).pixelSize() * 1.3));
  heading_->sized(large);
  auto* open = new QPushButton(tr("&Open a catalogue…"), buttons_);
  auto* demo = new QPushButton(tr("&New demo catalogue…"), buttons_);
  auto* row = new QHBoxLayout(buttons_);
  row->setContentsMargins(0, space(8), 0, 0);
  row->setSpacing(space(8));
  for (QPushButton* button : {open, demo}) {
    button->setMinimumHeight(space(36));
    row->addWidget(button);
  }
  row->addStretch(1);
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
}

void BlankSheet::offer(const QString& example) {
  example_->setText(example);
  example_->setVisible(!example.isEmpty());
}

void BlankSheet::addBelow(QWidget* widget) { column_->addWidget(widget); }

QString BlankSheet::said() const { return heading_->text() + QLatin1Char('\n') + text_->text(); }

void sayNoCatalogue(BlankSheet& sheet, const QString& whyNot) {
  sheet.offer({});
  if (whyNot.isEmpty())
    sheet.say(BlankSheet::tr("No catalogue is open"),
              BlankSheet::tr("Senders, gauges and castings are kept in one file that ends in .ohmkin. Open yours, or "
                             "make the demo catalogue to try everything on."),
              true);
  else sheet.say(BlankSheet::tr("This catalogue cannot be opened"), whyNot, true);
}

void sayOpening(BlankSheet& sheet, const QString& file) {
  sheet.offer({});
  sheet.say(BlankSheet::tr("Opening %1").arg(QFileInfo(file).fileName()), {});
}

}  // namespace ohmkin::parts
