#include <desk/catalogue_thread.h>
#include <jobs/document_words.h>
#include <jobs/job_list.h>
#include <look/palette.h>
#include <look/type.h>
#include <parts/words.h>
#include <QPainter>
#include <QPainterPath>
#include <QStyledItemDelegate>

namespace ohmkin::jobs {
namespace {

using desk::plain;
using desk::shown;
using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

int gap() { return space(6); }
int padX() { return space(14); }
int padY() { return space(8); }

QString joined(const QStringList& words) {
  QStringList all = words;
  all.removeAll(QString());
  return all.join(QStringLiteral(" · "));
}

QString second(const catalog::JobRecord& job) {
  const QString about = joined({shown(job.said.vehicle), shown(job.said.engine)});
  return about.isEmpty() ? shown(job.said.seen) : about;
}

QString third(const catalog::JobRecord& job) {
  return joined({JobList::tr("job %1").arg(job.id.value), dayOf(job.opened), plain(job.said.part)});
}

class JobDelegate : public QStyledItemDelegate {
 public:
  explicit JobDelegate(JobList& list) : QStyledItemDelegate(&list), list_(list) {}

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& /*option*/, const QModelIndex& index) const override {
    double high = look::metrics(Text::heading).lineSpacing() + look::metrics(Text::small).lineSpacing() + space(3);
    if (!second(list_.jobs().row(index.row())).isEmpty()) high += look::metrics(Text::body).lineSpacing() + space(1);
    return {list_.viewport()->width(), static_cast<int>(high) + 2 * padY() + gap()};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const bool selected = option.state & QStyle::State_Selected;
    painter->save();
    const QRectF card = parts::drawCard(*painter, option, gap());
    paintWords(*painter, card.adjusted(padX(), padY(), -padX(), -padY()), list_.jobs().row(index.row()), selected);
    parts::drawCardFocus(*painter, option, card, list_);
    painter->restore();
  }

 private:
  static void paintWords(QPainter& painter, const QRectF& box, const catalog::JobRecord& job, bool selected) {
    const QColor quiet = colour(selected ? Paint::ink : Paint::quiet);
    const double head = look::metrics(Text::heading).lineSpacing();
    const double body = look::metrics(Text::body).lineSpacing();
    const double small = look::metrics(Text::small).lineSpacing();
    const QString state = stateWord(job.said.state);
    const double wide = look::metrics(Text::small).horizontalAdvance(state) + 2;
    const double mark = space(12);
    parts::drawWords(painter, QRectF(box.right() - wide, box.top() + (head - small) / 2, wide, small), state,
                     typeface(Text::small), quiet, 1, Qt::AlignRight);
    drawState(painter, {box.right() - wide - space(6) - mark / 2, box.top() + head / 2}, mark, job.said.state);
    parts::drawWords(painter, QRectF(box.left(), box.top(), box.width() - wide - mark - space(16), head),
                     plain(job.said.reference), typeface(Text::heading), colour(Paint::ink), 1);
    double y = box.top() + head;
    if (const QString about = second(job); !about.isEmpty()) {
      parts::drawWords(painter, QRectF(box.left(), y + space(1), box.width(), body), about, typeface(Text::body),
                       colour(Paint::ink), 1);
      y += space(1) + body;
    }
    parts::drawWords(painter, QRectF(box.left(), y + space(2), box.width(), small), third(job), typeface(Text::small),
                     quiet, 1);
  }

  JobList& list_;
};

}  // namespace

QString stateWord(catalog::JobState state) {
  return state == catalog::JobState::open ? JobList::tr("open") : JobList::tr("done");
}

QString spoken(const catalog::JobRecord& job) {
  QStringList all{plain(job.said.reference), stateWord(job.said.state), second(job), third(job)};
  all.removeAll(QString());
  return all.join(QStringLiteral(", "));
}

void drawState(QPainter& painter, const QPointF& centre, double size, catalog::JobState state) {
  const double line = std::max(1.5, size / 7);
  const QRectF round(centre.x() - size / 2 + line / 2, centre.y() - size / 2 + line / 2, size - line, size - line);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const bool open = state == catalog::JobState::open;
  painter.setPen(QPen(colour(open ? Paint::accent : Paint::quiet), line));
  painter.setBrush(open ? QBrush(Qt::NoBrush) : QBrush(colour(Paint::quiet)));
  painter.drawEllipse(round);
  if (!open) {
    QPainterPath tick;
    tick.moveTo(centre.x() - size * 0.22, centre.y() + size * 0.02);
    tick.lineTo(centre.x() - size * 0.05, centre.y() + size * 0.19);
    tick.lineTo(centre.x() + size * 0.24, centre.y() - size * 0.17);
    painter.setPen(QPen(colour(Paint::panel), line, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(tick);
  }
  painter.restore();
}

JobList::JobList(QWidget* parent)
    : QListView(parent), model_([](const catalog::JobRecord& job) { return plain(job.said.reference); }, spoken) {
  setModel(&model_);
  setItemDelegate(new JobDelegate(*this));
  parts::listOfCards(*this);
  setAccessibleName(tr("Jobs, open ones first"));
}

void JobList::setJobs(std::vector<catalog::JobRecord> jobs) {
  filling_ = true;
  model_.setRows(std::move(jobs));
  filling_ = false;
}

void JobList::choose(catalog::JobNumber id) {
  filling_ = true;
  const auto& jobs = model_.rows();
  const auto at = std::find_if(jobs.begin(), jobs.end(), [id](const auto& job) { return job.id == id; });
  const int row = at == jobs.end() ? -1 : static_cast<int>(at - jobs.begin());
  setCurrentIndex(row < 0 ? QModelIndex() : model_.index(row));
  if (row >= 0) scrollTo(currentIndex());
  filling_ = false;
}

void JobList::step(int rows) {
  if (model_.rowCount() == 0) return;
  const int from = currentIndex().isValid() ? currentIndex().row() : (rows > 0 ? -1 : 0);
  setCurrentIndex(model_.index(std::clamp(from + rows, 0, model_.rowCount() - 1)));
  scrollTo(currentIndex());
}

QSize JobList::minimumSizeHint() const { return {space(220), space(120)}; }

void JobList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QListView::currentChanged(current, previous);
  if (!filling_ && current.isValid()) emit chosen(model_.row(current.row()).id.value);
}

void JobList::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  scheduleDelayedItemsLayout();
}

}  // namespace ohmkin::jobs
