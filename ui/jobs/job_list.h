#pragma once
#include <catalog/jobs.h>
#include <parts/card_list.h>

namespace ohmkin::jobs {

using JobModel = parts::CardModel<catalog::JobRecord>;

/// Jobs that were found, open ones first: a ring while it is open, a tick when it is done.
class JobList : public QListView {
  Q_OBJECT

 public:
  explicit JobList(QWidget* parent = nullptr);
  void setJobs(std::vector<catalog::JobRecord> jobs);  ///< chooses none
  void choose(catalog::JobNumber id);                  ///< without saying so; none where it is not in the list
  void step(int rows);
  [[nodiscard]] const JobModel& jobs() const { return model_; }
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void chosen(qint64 id);

 protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  JobModel model_;
  bool filling_ = false;
};

/// "open", "done"; what a screen reader says of a row.
QString stateWord(catalog::JobState state);
QString spoken(const catalog::JobRecord& job);
/// A ring, or a tick in a dot, `size` across.
void drawState(QPainter& painter, const QPointF& centre, double size, catalog::JobState state);

}  // namespace ohmkin::jobs
