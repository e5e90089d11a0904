#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/field_frame.h>
#include <parts/query_box.h>
#include <parts/words.h>
#include <QAbstractItemView>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QListView>
#include <QStyledItemDelegate>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kFrom = Qt::UserRole + 1;
constexpr int kKind = Qt::UserRole + 2;
constexpr int kNote = Qt::UserRole + 3;
/// As the keyboard of the person says it.
QString shortcut() { return QKeySequence(Qt::CTRL | Qt::Key_L).toString(QKeySequence::NativeText); }

class CompletionDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& /*index*/) const override {
    return {option.rect.width(), static_cast<int>(look::metrics(Text::body).lineSpacing()) + space(14)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box(option.rect);
    if (option.state & QStyle::State_Selected) {
      painter->setPen(QPen(colour(Paint::accent), 1));
      painter->setBrush(colour(Paint::accentWash));
      painter->drawRoundedRect(box.adjusted(2.5, 0.5, -2.5, -0.5), space(6), space(6));
    }
    const double line = look::metrics(Text::body).lineSpacing();
    const QRectF row(box.left() + space(18), box.center().y() - line / 2, box.width() - 2 * space(18), line);
    const QString insert = index.data(Qt::DisplayRole).toString();
    const QString note = index.data(kNote).toString();
    QString aside = index.data(kKind).toString();
    if (!note.isEmpty()) aside = note + QStringLiteral(" · ") + aside;
    const double asideWidth = std::min(look::metrics(Text::small).horizontalAdvance(aside) + 2, row.width() * 0.55);
    drawWords(*painter, row.adjusted(0, 0, -asideWidth - space(16), 0), insert, typeface(Text::body),
              colour(Paint::ink), 1);
    drawWords(*painter, QRectF(row.right() - asideWidth, row.top() + space(1), asideWidth, line), aside,
              typeface(Text::small), colour(Paint::quiet), 1, Qt::AlignRight);
    painter->restore();
  }
};

}  // namespace

QueryBox::QueryBox(QWidget* parent)
    : QWidget(parent),
      edit_(new QLineEdit(this)),
      ways_(new QStandardItemModel(this)),
      completer_(new QCompleter(ways_, this)) {
  QFont large = typeface(Text::body);
  large.setPixelSize(static_cast<int>(QFontInfo(large).pixelSize() * 1.25));
  edit_->setFont(large);
  edit_->setFrame(false);
  edit_->setPlaceholderText(
      tr("Year, vehicle line, cluster option, casting number, date in the casting … in any order"));
  edit_->setAccessibleName(tr("What do you have?"));
  edit_->setAccessibleDescription(
      tr("Year, vehicle line, cluster option, casting number, date in the casting, in any order"));
  edit_->setMaxLength(400);
  edit_->installEventFilter(this);
  tintField(*edit_);

  auto* row = new QHBoxLayout(this);
  const int end = static_cast<int>(look::metrics(Text::small).horizontalAdvance(shortcut())) + space(28);
  row->setContentsMargins(space(18), space(10), end, space(10));
  row->addWidget(edit_);
  setFocusProxy(edit_);

  auto* popup = new QListView;
  popup->setFrameShape(QFrame::StyledPanel);
  popup->setUniformItemSizes(true);
  completer_->setPopup(popup);
  popup->setItemDelegate(new CompletionDelegate(popup));  // after setPopup, which brings its own
  completer_->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
  completer_->setMaxVisibleItems(8);
  completer_->setWidget(edit_);
  connect(completer_, qOverload<const QModelIndex&>(&QCompleter::activated), this, &QueryBox::take);
  connect(edit_, &QLineEdit::textEdited, this, [this] { settled_.clear(); });
  connect(edit_, &QLineEdit::returnPressed, this, &QueryBox::left);
  connect(edit_, &QLineEdit::textChanged, this, [this](const QString& text) {
    if (text.trimmed().isEmpty()) completer_->popup()->hide();
    emit asked(text);
  });
}

void QueryBox::setText(const QString& text) {
  completer_->popup()->hide();
  settled_ = text;
  edit_->setText(text);
}

void QueryBox::takeFocus() {
  edit_->setFocus(Qt::ShortcutFocusReason);
  edit_->selectAll();
}

void QueryBox::offer(const QString& forText, const std::vector<CompletionWords>& ways) {
  if (forText == settled_ || forText != edit_->text() || !edit_->hasFocus() ||
      edit_->cursorPosition() != edit_->text().size())
    return;
  ways_->clear();
  for (const CompletionWords& way : ways) {
    auto* item = new QStandardItem(way.insert);
    item->setData(way.from, kFrom);
    item->setData(way.kind, kKind);
    item->setData(way.note, kNote);
    item->setData(QStringList{way.insert, way.kind, way.note}.join(QStringLiteral(", ")), Qt::AccessibleTextRole);
    ways_->appendRow(item);
  }
  if (ways.empty() || forText.trimmed().isEmpty()) {
    completer_->popup()->hide();
    return;
  }
  completer_->complete(QRect(-space(18), 0, width(), edit_->height() + space(12)));
  // Nothing is chosen until an arrow key says so: Enter then takes the text as it stands.
  completer_->popup()->setCurrentIndex({});
}

bool QueryBox::offering() const { return completer_->popup()->isVisible(); }

void QueryBox::take(const QModelIndex& index) {
  if (!index.isValid()) return;
  const int from = std::clamp(index.data(kFrom).toInt(), 0, static_cast<int>(edit_->text().size()));
  edit_->setText(edit_->text().left(from) + index.data(Qt::DisplayRole).toString() + QLatin1Char(' '));
}

bool QueryBox::eventFilter(QObject* watched, QEvent* event) {
  if (watched == edit_ && (event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut)) update();
  if (watched == edit_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();  // NOLINT: the type was looked at
    if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Down) {
      completer_->popup()->hide();
      emit left();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void QueryBox::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const bool focus = edit_->hasFocus();
  painter.setPen(QPen(colour(focus ? Paint::accent : Paint::edge), focus ? 2 : 1));
  painter.setBrush(colour(Paint::panel));
  const double inset = focus ? 1 : 0.5;
  painter.drawRoundedRect(QRectF(rect()).adjusted(inset, inset, -inset, -inset), look::cornerRadius(),
                          look::cornerRadius());
  painter.setFont(typeface(Text::small));
  painter.setPen(colour(Paint::quiet));
  painter.drawText(rect().adjusted(0, 0, -space(18), 0), static_cast<int>(Qt::AlignRight | Qt::AlignVCenter),
                   shortcut());
}

void QueryBox::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) tintField(*edit_);
}

}  // namespace ohmkin::parts
