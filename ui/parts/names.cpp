#include <look/palette.h>
#include <look/type.h>
#include <parts/names.h>
#include <parts/words.h>
#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QPainter>
#include <QStandardItemModel>
#include <QStyledItemDelegate>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kName = Qt::UserRole + 1;
constexpr int kAside = Qt::UserRole + 2;

class NameDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& /*option*/, const QModelIndex& index) const override {
    const double wide = look::metrics(Text::body).horizontalAdvance(index.data(kName).toString()) +
                        look::metrics(Text::small).horizontalAdvance(index.data(kAside).toString());
    return {static_cast<int>(wide) + space(48), static_cast<int>(look::metrics(Text::body).lineSpacing()) + space(12)};
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
    const QRectF row(box.left() + space(12), box.center().y() - line / 2, box.width() - space(24), line);
    const QString aside = index.data(kAside).toString();
    const double asideWide = std::min(look::metrics(Text::small).horizontalAdvance(aside) + 2, row.width() * 0.55);
    drawWords(*painter, row.adjusted(0, 0, -asideWide - space(12), 0), index.data(kName).toString(),
              typeface(Text::body), colour(Paint::ink), 1);
    drawWords(*painter, QRectF(row.right() - asideWide, row.top() + space(1), asideWide, line), aside,
              typeface(Text::small), colour(Paint::quiet), 1, Qt::AlignRight);
    painter->restore();
  }
};

/// Finds by name and by what stands beside it, and puts in the name alone.
class NameCompleter : public QCompleter {
 public:
  using QCompleter::QCompleter;
  [[nodiscard]] QString pathFromIndex(const QModelIndex& index) const override { return index.data(kName).toString(); }
};

void fill(QStandardItemModel& model, const std::vector<NameWords>& names) {
  model.clear();
  for (const NameWords& each : names) {
    auto* item = new QStandardItem(each.name + QLatin1Char(' ') + each.aside);
    item->setData(each.name, kName);
    item->setData(each.aside, kAside);
    item->setData(QStringList{each.name, each.aside}.join(QStringLiteral(", ")), Qt::AccessibleTextRole);
    model.appendRow(item);
  }
}

}  // namespace

void offerNames(Entry& entry, const std::vector<NameWords>& names) {
  auto* completer = new NameCompleter(&entry);
  auto* model = new QStandardItemModel(completer);
  fill(*model, names);
  completer->setModel(model);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  completer->popup()->setItemDelegate(new NameDelegate(completer->popup()));
  delete entry.completer();
  entry.setCompleter(completer);
}

Suggestions::Suggestions(QLineEdit& entry) : QObject(&entry), entry_(entry) {
  completer_.setModel(&names_);
  completer_.setCompletionMode(QCompleter::UnfilteredPopupCompletion);
  completer_.setMaxVisibleItems(8);
  completer_.popup()->setItemDelegate(new NameDelegate(completer_.popup()));
  completer_.setWidget(&entry);
  completer_.popup()->installEventFilter(this);
  connect(&completer_, qOverload<const QModelIndex&>(&QCompleter::activated), this, &Suggestions::take);
  connect(&entry, &QLineEdit::textEdited, this, [this](const QString& text) {
    if (text.trimmed().isEmpty()) completer_.popup()->hide();
    emit asked(text);
  });
}

void Suggestions::offer(const QString& forText, const std::vector<NameWords>& names) {
  if (forText != entry_.text() || !entry_.hasFocus()) return;
  const bool said = names.size() == 1 && names.front().name == forText;
  fill(names_, names);
  if (names.empty() || said || forText.trimmed().isEmpty()) {
    completer_.popup()->hide();
    return;
  }
  completer_.complete();
  completer_.popup()->setCurrentIndex({});  // Enter takes the text as it stands until an arrow key chose
}

void Suggestions::take(const QModelIndex& index) {
  entry_.setText(index.data(kName).toString());
  emit taken();
}

/// The completer hands Enter to the field first, and an Entry keeps it for going on. The kind of event is asked first:
/// the popup has events while the completer, whose popup it is, is no completer any more.
bool Suggestions::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && watched == completer_.popup()) {
    const int key = static_cast<QKeyEvent*>(event)->key();  // NOLINT: the type was looked at
    const QModelIndex chosen = completer_.popup()->currentIndex();
    if ((key == Qt::Key_Return || key == Qt::Key_Enter) && chosen.isValid()) {
      completer_.popup()->hide();
      take(chosen);
      return true;
    }
  }
  return QObject::eventFilter(watched, event);
}

bool Suggestions::offering() const { return completer_.popup()->isVisible(); }

}  // namespace ohmkin::parts
