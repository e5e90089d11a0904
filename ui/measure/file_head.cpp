#include <look/palette.h>
#include <look/type.h>
#include <measure/file_head.h>
#include <measure/keep_form.h>
#include <parts/words.h>
#include <workflow/person.h>
#include <QGridLayout>
#include <QLocale>
#include <QPainter>

namespace ohmkin::measure {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kPerMille = 1000;

/// A line that fills.
class FillingLine : public QProgressBar {
 public:
  using QProgressBar::QProgressBar;

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    const double high = space(6);
    const QRectF trough(0, (height() - high) / 2, width(), high);
    painter.setBrush(look::colour(Paint::line));
    painter.drawRoundedRect(trough, high / 2, high / 2);
    painter.setBrush(look::colour(Paint::accent));
    const double part = static_cast<double>(value() - minimum()) / std::max(1, maximum() - minimum());
    painter.drawRoundedRect(QRectF(trough.topLeft(), QSizeF(std::max(high, trough.width() * part), high)), high / 2,
                            high / 2);
  }
};

}  // namespace

FileHead::FileHead(QWidget* parent)
    : Panel(Kind::sheet, parent),
      name_((new parts::Words({}, this))->sized(typeface(Text::headline))),
      sentence_(new parts::Words({}, this)),
      already_((new parts::Words({}, this))->painted(Paint::quiet)),
      outcome_(new parts::Words({}, this)),
      meter_(new parts::Entry(tr("Meter"), this)),
      bath_(new parts::Entry(tr("Thermometer in the bath"), this)),
      who_(new parts::Entry(tr("Brought in by"), this)),
      open_(new QPushButton(tr("&Open another…"), this)),
      bringIn_(new QPushButton(tr("&Bring in"), this)),
      cancel_(new QPushButton(tr("Cancel"), this)) {
  for (QPushButton* button : {open_, bringIn_, cancel_}) button->setMinimumHeight(space(36));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(16), space(12), space(16), space(14));
  column->setSpacing(space(8));
  auto* top = new QHBoxLayout;
  top->setSpacing(space(8));
  top->addWidget(name_, 1);
  top->addWidget(bringIn_, 0, Qt::AlignTop);
  top->addWidget(open_, 0, Qt::AlignTop);
  column->addLayout(top);
  column->addWidget(sentence_);
  column->addWidget(already_);
  column->addWidget(makeFields());
  column->addWidget(makeProgress());
  column->addWidget(outcome_);
  for (QWidget* hidden : std::initializer_list<QWidget*>{already_, outcome_, progress_}) hidden->hide();
  connect(open_, &QPushButton::clicked, this, &FileHead::openAsked);
  connect(bringIn_, &QPushButton::clicked, this, &FileHead::bringInAsked);
  connect(cancel_, &QPushButton::clicked, this, &FileHead::cancelAsked);
  for (parts::Entry* entry : {meter_, bath_})
    connect(entry, &QLineEdit::editingFinished, this, &FileHead::equipmentChanged);
}

QWidget* FileHead::makeFields() {
  meter_->setPlaceholderText(tr("not said; a name, ± 0.8 %"));
  bath_->setPlaceholderText(tr("not said; a name, ± 0.5 K"));
  who_->setText(QString::fromStdString(workflow::personLoggedIn()));
  auto* fields = new QWidget(this);
  auto* grid = new QGridLayout(fields);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(3));
  grid->addWidget(parts::fieldName(tr("Meter"), fields), 0, 0);
  grid->addWidget(parts::fieldName(tr("Thermometer in the bath"), fields), 0, 1);
  grid->addWidget(parts::fieldName(tr("Brought in by"), fields), 0, 2);
  grid->addWidget(meter_, 1, 0);
  grid->addWidget(bath_, 1, 1);
  grid->addWidget(who_, 1, 2);
  for (int column = 0; column < 3; ++column) grid->setColumnStretch(column, 1);
  return fields;
}

QWidget* FileHead::makeProgress() {
  progress_ = new QWidget(this);
  bar_ = new FillingLine(progress_);
  bar_->setRange(0, kPerMille);
  bar_->setAccessibleName(tr("Progress"));
  progressWords_ = (new parts::Words({}, progress_))->painted(Paint::quiet);
  auto* row = new QHBoxLayout(progress_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(12));
  row->addWidget(progressWords_, 2);
  row->addWidget(bar_, 5);
  row->addWidget(cancel_);
  return progress_;
}

void FileHead::setEquipment(const QStringList& meters, const QStringList& thermometers) {
  complete(*meter_, meters);
  complete(*bath_, thermometers);
}

void FileHead::name(const QString& file, const QString& whole) {
  name_->setText(file);
  name_->setToolTip(parts::plainTip(whole));
}

void FileHead::say(const QString& sentence, bool refused) {
  sentence_->painted(refused ? Paint::warning : Paint::ink)->setText(sentence);
}

void FileHead::sayAlready(const QString& sentence) {
  already_->setText(sentence);
  already_->setVisible(!sentence.isEmpty());
}

void FileHead::tell(const QString& outcome, bool refused) {
  outcome_->painted(refused ? Paint::warning : Paint::accent)->setText(outcome);
  outcome_->setVisible(!outcome.isEmpty());
}

void FileHead::setWorking(bool working, const QString& words) {
  progress_->setVisible(working);
  bar_->setValue(0);
  progressWords_->setText(words);
}

void FileHead::setProgress(const workflow::ImportProgress& progress) {
  const double part =
      progress.ofBytes == 0 ? 1 : static_cast<double>(progress.bytes) / static_cast<double>(progress.ofBytes);
  bar_->setValue(static_cast<int>(kPerMille * part));
  progressWords_->setText(tr("%1 rows").arg(QLocale().toString(static_cast<qulonglong>(progress.rows))));
}

}  // namespace ohmkin::measure
