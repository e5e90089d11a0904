#include <date/usual_lags.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/words.h>
#include <QGridLayout>
#include <QHBoxLayout>
#include <algorithm>
#include <cmath>

namespace ohmkin::castings {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr double kLongest = 3650;  // days: a casting that lay ten years is no longer a lag
constexpr int kEarliest = 1900;    // as the use case has it where nothing is set
constexpr int kLatest = 2030;

const dating::Beliefs& usual() {
  static const dating::Beliefs all;
  return all;
}

QString number(double value) { return QString::number(value, 'g', 6); }

/// A number between two others; what is empty is the usual one.
Expected<double> read(parts::Entry& entry, double usually, double least, double most, const QString& unit) {
  bool sound = true;
  const QString text = entry.text().trimmed();
  const double value =
      text.isEmpty() ? usually : QString(text).replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&sound);
  sound = sound && std::isfinite(value) && value >= least && value <= most;
  entry.setWrong(!sound);
  if (sound) return value;
  return refuse("lag-out-of-range", entry.accessibleName().toStdString(), "'" + text.toStdString() + "'",
                UsualLags::tr("%1 to %2 %3").arg(number(least), number(most), unit).trimmed().toStdString());
}

}  // namespace

UsualLags::UsualLags(QWidget* parent)
    : QWidget(parent),
      fold_(new QPushButton(tr("Usual lags…"), this)),
      sheet_(new parts::Panel(parts::Panel::Kind::sheet, this)),
      casting_(new parts::Entry(tr("Days from casting to assembly"), sheet_)),
      vehicle_(new parts::Entry(tr("Days from assembly to vehicle"), sheet_)),
      first_(new parts::Entry(tr("Vehicles that still have their first engine"), sheet_)),
      from_(new parts::Entry(tr("Earliest year thought possible"), sheet_)),
      until_(new parts::Entry(tr("Latest year thought possible"), sheet_)),
      told_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)) {
  fold_->setCheckable(true);
  fold_->setFont(typeface(Text::small));
  fold_->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  fold_->setToolTip(parts::plainTip(tr("What is thought usual, and may be set where you know better (Ctrl+J)")));
  auto* grid = new QGridLayout(sheet_);
  grid->setContentsMargins(space(16), space(12), space(16), space(14));
  grid->setHorizontalSpacing(space(12));
  grid->setVerticalSpacing(space(4));
  const auto put = [&](int column, const QString& words, parts::Entry* entry) {
    auto* label = (new parts::Words(words, sheet_))->sized(typeface(Text::small))->painted(Paint::quiet);
    grid->addWidget(label, 0, column, Qt::AlignBottom);
    grid->addWidget(entry, 1, column);
    grid->setColumnStretch(column, 1);
    connect(entry, &QLineEdit::textChanged, this, [this] {
      tell();
      if (!filling_) emit changed();
    });
  };
  put(0, tr("Casting to assembly, days"), casting_);
  put(1, tr("Assembly to vehicle, days"), vehicle_);
  put(2, tr("Still the first engine, %"), first_);
  put(3, tr("Not before, year"), from_);
  put(4, tr("Not after, year"), until_);
  auto* usualAgain = new QPushButton(tr("As usual"), sheet_);
  usualAgain->setToolTip(parts::plainTip(tr("Back to what is thought usual")));
  usualAgain->setMinimumHeight(casting_->sizeHint().height());
  grid->addWidget(usualAgain, 1, 5);
  connect(usualAgain, &QPushButton::clicked, this, &UsualLags::reset);
  auto* head = new QHBoxLayout;
  head->setSpacing(space(12));
  head->addWidget(fold_);
  head->addWidget(told_, 1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addLayout(head);
  column->addWidget(sheet_);
  sheet_->hide();
  connect(fold_, &QPushButton::toggled, this, [this](bool open) {
    sheet_->setVisible(open);
    if (open) casting_->setFocus(Qt::OtherFocusReason);
  });
  reset();
}

void UsualLags::reset() {
  filling_ = true;
  casting_->setText(number(usual().castingToAssembly.median));
  vehicle_->setText(number(usual().assemblyToVehicle.median));
  first_->setText(number(usual().firstEngine * 100));
  from_->setText(QString::number(kEarliest));
  until_->setText(QString::number(kLatest));
  filling_ = false;
  tell();
  emit changed();
}

/// Folded or not, what is assumed is said.
void UsualLags::tell() {
  workflow::DateQuestion asked;
  const auto sound = fill(asked);
  if (!sound) {
    told_->setText(desk::refusalSentence(sound.error()));
    told_->painted(Paint::warning);
    return;
  }
  const bool set = asked.beliefs.source != usual().source || asked.window.from || asked.window.until;
  const QString words =
      tr("Usually %1 days from casting to assembly, %2 more to the vehicle; %3 % keep the first engine.")
          .arg(number(asked.beliefs.castingToAssembly.median), number(asked.beliefs.assemblyToVehicle.median),
               number(asked.beliefs.firstEngine * 100));
  told_->setText(words + QLatin1Char(' ') + (set ? tr("As you set it.") : tr("A judgement, from memory.")));
  told_->painted(Paint::quiet);
}

Expected<void> UsualLags::fill(workflow::DateQuestion& question) const {
  const auto casting = read(*casting_, usual().castingToAssembly.median, 1, kLongest, tr("days"));
  const auto vehicle = read(*vehicle_, usual().assemblyToVehicle.median, 1, kLongest, tr("days"));
  const auto first = read(*first_, usual().firstEngine * 100, 1, 99, QStringLiteral("%"));
  const auto from = read(*from_, kEarliest, kEarliest, kLatest, {});
  const auto until = read(*until_, kLatest, from ? *from : kEarliest, kLatest, {});
  for (const auto* each : {&casting, &vehicle, &first, &from, &until})
    if (!*each) return tl::make_unexpected(each->error());
  const auto take = [](dating::Lag& lag, double median) {
    if (median == lag.median) return;
    // What is slow stays as many times slower than what is usual.
    lag.longest = static_cast<int>(std::min(kLongest, std::ceil(lag.longest * median / lag.median)));
    lag.median = median;
    lag.source = tr("as set by you").toStdString();
  };
  take(question.beliefs.castingToAssembly, *casting);
  take(question.beliefs.assemblyToVehicle, *vehicle);
  if (*first != usual().firstEngine * 100) question.beliefs.firstEngine = *first / 100;
  if (*casting != usual().castingToAssembly.median || *vehicle != usual().assemblyToVehicle.median ||
      *first != usual().firstEngine * 100)
    question.beliefs.source = tr("as set by you").toStdString();
  if (*from != kEarliest) question.window.from = date(static_cast<int>(*from), 1, 1);
  if (*until != kLatest) question.window.until = date(static_cast<int>(*until) + 1, 1, 1);
  return {};
}

}  // namespace ohmkin::castings
