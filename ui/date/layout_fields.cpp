#include <date/layout_fields.h>
#include <look/type.h>
#include <parts/panel.h>
#include <QHBoxLayout>
#include <QPushButton>
#include <algorithm>

namespace ohmkin::castings {
namespace {

using dating::Field;
using dating::FieldKind;
using look::space;
using look::Text;
using look::typeface;

constexpr int kKinds = static_cast<int>(FieldKind::separator) + 1;

/// What the text beside a kind is for; empty where there is none.
QString textMeans(FieldKind kind) {
  switch (kind) {
    case FieldKind::monthNumber:
    case FieldKind::day:
      return LayoutFields::tr("00: always two digits");
    case FieldKind::weekday:
      return LayoutFields::tr("1 to 7, or seven letters");
    case FieldKind::shift:
      return LayoutFields::tr("letters that occur; any");
    case FieldKind::fixedText:
      return LayoutFields::tr("the text itself");
    case FieldKind::separator:
      return LayoutFields::tr("signs that occur; any");
    default:
      return {};
  }
}

bool mayBeLeftOut(FieldKind kind) {
  return kind == FieldKind::separator || kind == FieldKind::shift || kind == FieldKind::weekday ||
         kind == FieldKind::fixedText;
}

FieldKind kindIn(const LayoutFields::Row& row) {
  return static_cast<FieldKind>(std::clamp(row.kind->currentIndex(), 0, kKinds - 1));
}

QPushButton* smallButton(const QString& words, const QString& name, QWidget* parent) {
  auto* button = new QPushButton(words, parent);
  button->setFont(typeface(Text::small));
  button->setAccessibleName(name);
  button->setToolTip(name);
  const QFontMetricsF type = look::metrics(Text::small);
  button->setFixedSize(
      static_cast<int>(type.horizontalAdvance(QString(button->text()).remove(QLatin1Char('&')))) + space(24),
      static_cast<int>(type.lineSpacing()) + space(16));
  return button;
}

}  // namespace

LayoutFields::LayoutFields(QWidget* parent)
    : QWidget(parent),
      column_(new QVBoxLayout),
      add_(smallButton(tr("&Add a field"), tr("Add a field at the end"), this)) {
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->setSpacing(space(6));
  column_->setSpacing(space(6));
  outer->addLayout(column_);
  outer->addWidget(add_, 0, Qt::AlignLeft);
  connect(add_, &QAbstractButton::clicked, this, [this] {
    addRow({FieldKind::separator, {}, true});
    rows_.back().kind->setFocus(Qt::OtherFocusReason);
    emit changed();
  });
}

void LayoutFields::addRow(const Field& field) {
  auto* whole = new QWidget(this);
  auto* line = new QHBoxLayout(whole);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(space(8));
  Row row{whole,
          new parts::Choice(tr("Kind of field"), whole),
          new parts::Entry(tr("Text of the field"), whole),
          new parts::Tick(tr("may be left out"), whole),
          smallButton(tr("Up"), tr("One place earlier"), whole),
          smallButton(tr("Remove"), tr("Remove this field"), whole)};
  for (int kind = 0; kind < kKinds; ++kind)
    row.kind->addItem(QString::fromUtf8(dating::text(static_cast<FieldKind>(kind)).data()));
  row.kind->setCurrentIndex(static_cast<int>(field.kind));
  row.text->setText(QString::fromStdString(field.text));
  row.optional->setChecked(field.optional);
  for (QWidget* each : {static_cast<QWidget*>(row.text), static_cast<QWidget*>(row.optional)}) {
    QSizePolicy policy = each->sizePolicy();
    policy.setRetainSizeWhenHidden(true);  // the columns stay where they are
    each->setSizePolicy(policy);
  }
  line->addWidget(row.kind, 4);
  line->addWidget(row.text, 4);
  line->addWidget(row.optional, 0);
  line->addWidget(row.up, 0);
  line->addWidget(row.away, 0);
  explain(row);
  const auto told = [this] {
    if (!filling_) emit changed();
  };
  connect(row.kind, &QComboBox::currentIndexChanged, this, [this, row, told] {
    explain(row);
    told();
  });
  connect(row.text, &QLineEdit::textChanged, this, told);
  connect(row.optional, &QAbstractButton::toggled, this, told);
  const auto placeOf = [this, whole] {
    return std::find_if(rows_.begin(), rows_.end(), [whole](const Row& each) { return each.whole == whole; });
  };
  connect(row.up, &QAbstractButton::clicked, this, [this, placeOf] {
    const auto at = placeOf();
    if (at == rows_.begin() || at == rows_.end()) return;
    std::iter_swap(at, at - 1);
    restack();
    (at - 1)->up->setFocus(Qt::OtherFocusReason);
    emit changed();
  });
  connect(row.away, &QAbstractButton::clicked, this, [this, placeOf, whole] {
    const auto at = placeOf();
    if (at == rows_.end()) return;
    const auto next = rows_.erase(at);
    (next == rows_.end() ? add_ : next->away)->setFocus(Qt::OtherFocusReason);
    whole->deleteLater();
    whole->hide();
    emit changed();
  });
  rows_.push_back(row);
  column_->addWidget(whole);
  setTabOrder(row.away, add_);
}

/// A text is asked for only where the kind has one; what may not be left out has no tick.
void LayoutFields::explain(const Row& row) {
  const FieldKind kind = kindIn(row);
  const QString means = textMeans(kind);
  row.text->setPlaceholderText(means);
  row.text->setAccessibleDescription(means);
  row.text->setVisible(!means.isEmpty());
  if (means.isEmpty()) row.text->clear();
  row.optional->setVisible(mayBeLeftOut(kind));
  if (!mayBeLeftOut(kind)) row.optional->setChecked(false);
}

void LayoutFields::restack() {
  for (const Row& row : rows_) column_->removeWidget(row.whole);
  QWidget* before = nullptr;
  for (const Row& row : rows_) {
    column_->addWidget(row.whole);
    for (QWidget* each :
         {static_cast<QWidget*>(row.kind), static_cast<QWidget*>(row.text), static_cast<QWidget*>(row.optional),
          static_cast<QWidget*>(row.up), static_cast<QWidget*>(row.away)}) {
      if (before != nullptr) setTabOrder(before, each);
      before = each;
    }
  }
}

void LayoutFields::setFields(const std::vector<Field>& fields) {
  filling_ = true;
  for (const Row& row : rows_) {
    row.whole->hide();
    row.whole->deleteLater();
  }
  rows_.clear();
  for (const Field& field : fields) addRow(field);
  restack();
  filling_ = false;
  emit changed();
}

std::vector<Field> LayoutFields::fields() const {
  std::vector<Field> all;
  all.reserve(rows_.size());
  for (const Row& row : rows_) all.push_back({kindIn(row), row.text->text().toStdString(), row.optional->isChecked()});
  return all;
}

}  // namespace ohmkin::castings
