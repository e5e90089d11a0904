#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <measure/reading_table.h>
#include <parts/words.h>
#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QRegularExpression>
#include <QStyledItemDelegate>

namespace ohmkin::measure {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kFewestRows = 6;
constexpr int kMostRowsSeen = 10;
constexpr int kMostPasted = 2000;
bool isTick(int column) { return column == hexColumn || column == stirredColumn || column == steadyColumn; }

class CellDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& /*option*/,
                        const QModelIndex& index) const override {
    auto* edit = new QLineEdit(parent);
    edit->setFrame(false);
    edit->setAcceptDrops(false);
    edit->setFont(typeface(Text::body));
    edit->setTextMargins(space(4), 0, space(4), 0);
    edit->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::AccessibleTextRole).toString());
    return edit;
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const auto* table = static_cast<const ReadingTable*>(option.widget);
    const bool wrong = table->wrong(index.row(), index.column());
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box(option.rect);
    if (wrong) painter->fillRect(box, colour(Paint::warningWash));
    else if (option.state & QStyle::State_Selected) painter->fillRect(box, colour(Paint::accentWash));
    painter->setPen(QPen(colour(Paint::line), 1));
    painter->drawLine(QPointF(box.left(), box.bottom() + 0.5), QPointF(box.right(), box.bottom() + 0.5));
    painter->drawLine(QPointF(box.right() + 0.5, box.top()), QPointF(box.right() + 0.5, box.bottom()));
    const double line = look::metrics(Text::body).lineSpacing();
    QRectF words(box.left() + space(7), box.center().y() - line / 2, box.width() - space(12), line);
    if (wrong) {  // not by colour alone
      parts::drawWords(*painter, QRectF(box.right() - space(12), words.top(), space(10), line), QStringLiteral("!"),
                       typeface(Text::strong), colour(Paint::warning), 1);
      words.setRight(words.right() - space(10));
    }
    const QString text = index.data().toString();
    if (isTick(index.column()) && saysYes(text)) {
      const QPointF c = box.center();
      const double r = space(6);
      painter->setPen(QPen(colour(Paint::accent), space(2), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      painter->drawPolyline(
          QPolygonF({c + QPointF(-r * 0.7, 0), c + QPointF(-r * 0.15, r * 0.55), c + QPointF(r * 0.8, -r * 0.6)}));
    } else {
      parts::drawWords(*painter, words, text, typeface(Text::body), colour(wrong ? Paint::warning : Paint::ink), 1,
                       isTick(index.column()) ? Qt::AlignHCenter : Qt::AlignLeft);
    }
    if ((option.state & QStyle::State_HasFocus) && table->hasFocus()) look::drawFocusRing(*painter, box, space(4));
    painter->restore();
  }
};

QStringList cellsOf(const QString& line) {
  if (line.contains(QLatin1Char('\t'))) return line.split(QLatin1Char('\t'));
  if (line.contains(QLatin1Char(';'))) return line.split(QLatin1Char(';'));
  static const QRegularExpression blanks(QStringLiteral("\\s+"));
  return line.trimmed().split(blanks);
}

bool hasDigit(const QString& text) {
  return std::any_of(text.begin(), text.end(), [](QChar c) { return c.isDigit(); });
}

}  // namespace

ReadingTable::ReadingTable(QWidget* parent) : QTableWidget(parent) {
  setColumnCount(kColumns);
  setHorizontalHeaderLabels(
      {tr("Bath"), tr("Ohms"), tr("Swapped"), tr("Run"), tr("Steady"), tr("Past hex"), tr("Stirred")});
  const QStringList spoken{tr("Bath: a temperature, ice, cubes, boil, or a bath of the shop"),
                           tr("Ohms as the meter shows them; OL where it shows overload"),
                           tr("Ohms with the probes swapped"),
                           tr("Run: h for heating, c for cooling"),
                           tr("Steady: moves less than half a per cent a minute; or the per cent it moves"),
                           tr("Water over the hex, nothing touching the vessel"),
                           tr("Stirred")};
  for (int column = 0; column < kColumns; ++column) {
    horizontalHeaderItem(column)->setToolTip(parts::plainTip(spoken[column]));
    horizontalHeaderItem(column)->setData(Qt::AccessibleTextRole, spoken[column]);
  }
  setItemDelegate(new CellDelegate(this));
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                  QAbstractItemView::EditKeyPressed);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setTabKeyNavigation(false);  // Tab leaves the table; the arrow keys go through it
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  viewport()->setAutoFillBackground(false);
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setDefaultSectionSize(std::max(
      24, static_cast<int>(look::metrics(Text::body).lineSpacing()) + space(10)));  // large enough to be clicked
  setCornerButtonEnabled(false);
  verticalHeader()->setFont(typeface(Text::small));
  verticalHeader()->setHighlightSections(false);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setFont(typeface(Text::small));
  horizontalHeader()->setMinimumSectionSize(space(30));
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  setAccessibleName(tr("Readings"));
  setRowCount(1);
  settle();
  setCurrentCell(0, 0);
  connect(this, &QTableWidget::cellChanged, this, [this] {
    if (filling_) return;
    settle();
    emit changed();
  });
  connect(this, &QTableWidget::currentCellChanged, this, [this](int row) { emit rowChosen(row); });
}

QTableWidgetItem* ReadingTable::cellAt(int row, int column) {
  if (item(row, column) == nullptr) setItem(row, column, new QTableWidgetItem);
  return item(row, column);
}

std::vector<RowText> ReadingTable::rows() const {
  std::vector<RowText> all;
  for (int row = 0; row < rowCount(); ++row) {
    RowText text;
    for (int column = 0; column < kColumns; ++column)
      if (const QTableWidgetItem* cell = item(row, column))
        text.cells.at(static_cast<std::size_t>(column)) = cell->text();
    all.push_back(std::move(text));
  }
  while (!all.empty() && all.back().empty()) all.pop_back();
  return all;
}

void ReadingTable::setRows(const std::vector<RowText>& rows) {
  filling_ = true;
  clearContents();
  setRowCount(static_cast<int>(rows.size()) + 1);
  for (std::size_t row = 0; row < rows.size(); ++row)
    for (int column = 0; column < kColumns; ++column)
      cellAt(static_cast<int>(row), column)->setText(rows[row].cells.at(static_cast<std::size_t>(column)));
  filling_ = false;
  settle();
  setCurrentCell(0, 0);
  emit changed();
}

void ReadingTable::settle() {
  filling_ = true;
  const int used = static_cast<int>(rows().size());
  setRowCount(std::max({kFewestRows, used + 1, currentRow() + 1}));
  for (int row = 0; row < rowCount(); ++row)
    for (int column = 0; column < kColumns; ++column) cellAt(row, column);
  filling_ = false;
  updateGeometry();
}

void ReadingTable::setTroubles(const std::vector<RowTrouble>& troubles) {
  troubles_ = troubles;
  // Not through the model: an open editor would take its text from there anew, and what is being typed would be lost.
  const QSignalBlocker quiet(model());
  for (int row = 0; row < rowCount(); ++row) {
    for (int column = 0; column < kColumns; ++column) {
      QString why;
      for (const RowTrouble& trouble : troubles_)
        if (trouble.row == row && (trouble.column == column || trouble.column < 0)) why = trouble.sentence;
      cellAt(row, column)->setToolTip(parts::plainTip(why));
      cellAt(row, column)->setData(Qt::AccessibleDescriptionRole, why);
    }
  }
  viewport()->update();
}

bool ReadingTable::wrong(int row, int column) const {
  return std::any_of(troubles_.begin(), troubles_.end(), [&](const RowTrouble& trouble) {
    return trouble.row == row && (trouble.column == column || (trouble.column < 0 && column <= ohmsColumn));
  });
}

void ReadingTable::setBathHeading(const QString& words) { horizontalHeaderItem(bathColumn)->setText(words); }

void ReadingTable::pasteText(const QString& text) {
  QStringList lines = text.split(QLatin1Char('\n'));
  while (!lines.isEmpty() && lines.back().trimmed().isEmpty()) lines.removeLast();
  if (lines.isEmpty()) return;
  // The heading of a block is not a reading.
  if (lines.size() > 1 && !hasDigit(lines.front()) && hasDigit(lines[1])) lines.removeFirst();
  if (lines.size() > kMostPasted) lines = lines.mid(0, kMostPasted);
  filling_ = true;
  const int top = std::max(0, currentRow());
  const int left = std::max(0, currentColumn());
  setRowCount(std::max(rowCount(), top + static_cast<int>(lines.size()) + 1));
  for (int row = 0; row < lines.size(); ++row) {
    const QStringList cells = cellsOf(lines[row]);
    for (int column = 0; column < cells.size() && left + column < kColumns; ++column)
      cellAt(top + row, left + column)->setText(cells[column].trimmed());
  }
  filling_ = false;
  setCurrentCell(top + static_cast<int>(lines.size()), left);
  settle();
  emit changed();
}

void ReadingTable::takeKeyboard() {
  const int row = static_cast<int>(rows().size());
  setCurrentCell(std::min(row, rowCount() - 1), 0);
  setFocus(Qt::ShortcutFocusReason);
}

void ReadingTable::advance() {
  const int row = std::max(0, currentRow());
  if (currentColumn() < ohmsColumn) {
    setCurrentCell(row, currentColumn() + 1);
    return;
  }
  if (row + 1 >= rowCount()) setRowCount(row + 2);
  setCurrentCell(row + 1, bathColumn);
  settle();
}

void ReadingTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
  QTableWidget::closeEditor(editor, hint);
  if (hint == QAbstractItemDelegate::SubmitModelCache) advance();
}

void ReadingTable::toggle(QTableWidgetItem* cell) {
  const QString now = cell->text();
  cell->setText(saysYes(now)    ? (cell->column() == steadyColumn ? QString() : tr("no"))
                : now.isEmpty() ? tr("yes")
                                : QString());
}

void ReadingTable::copyChosen() const {
  QStringList lines;
  for (const auto& range : selectedRanges())
    for (int row = range.topRow(); row <= range.bottomRow(); ++row) {
      QStringList cells;
      for (int column = range.leftColumn(); column <= range.rightColumn(); ++column)
        cells << (item(row, column) != nullptr ? item(row, column)->text() : QString());
      lines << cells.join(QLatin1Char('\t'));
    }
  QApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

void ReadingTable::clearChosen() {
  filling_ = true;
  for (QTableWidgetItem* cell : selectedItems()) cell->setText({});
  filling_ = false;
  settle();
  emit changed();
}

void ReadingTable::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Paste)) return pasteText(QApplication::clipboard()->text());
  if (event->matches(QKeySequence::Copy)) return copyChosen();
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      // The editor lets it through to here and closes by itself; that goes on to the next cell.
      return state() == EditingState ? event->accept() : advance();
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
      return clearChosen();
    case Qt::Key_Space:
      if (currentItem() != nullptr && isTick(currentColumn())) return toggle(currentItem());
      break;
    default:
      break;
  }
  QTableWidget::keyPressEvent(event);
}

void ReadingTable::focusInEvent(QFocusEvent* event) {
  QTableWidget::focusInEvent(event);
  viewport()->update();
}

void ReadingTable::focusOutEvent(QFocusEvent* event) {
  QTableWidget::focusOutEvent(event);
  viewport()->update();
}

void ReadingTable::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  fitColumns();
}

/// Baths and ohms have what the rest leaves.
void ReadingTable::fitColumns() {
  const QFontMetricsF m = look::metrics(Text::small);
  int left = viewport()->width();
  for (int column = swappedColumn; column < kColumns; ++column) {
    const int wide = static_cast<int>(m.horizontalAdvance(horizontalHeaderItem(column)->text())) + space(9);
    horizontalHeader()->resizeSection(column, wide);
    left -= wide;
  }
  horizontalHeader()->resizeSection(bathColumn, std::max(space(60), left / 2));
  horizontalHeader()->resizeSection(ohmsColumn, std::max(space(52), left - left / 2));
}

QSize ReadingTable::sizeHint() const {
  const int rows = std::clamp(rowCount(), kFewestRows, kMostRowsSeen);
  return {space(420), horizontalHeader()->sizeHint().height() + rows * verticalHeader()->defaultSectionSize() + 2};
}

QSize ReadingTable::minimumSizeHint() const { return {space(380), sizeHint().height()}; }

}  // namespace ohmkin::measure
