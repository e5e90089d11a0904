#pragma once
#include <catalog/jobs.h>
#include <QAbstractListModel>
#include <QListView>
#include <vector>

namespace ohmkin::jobs {

class JobModel : public QAbstractListModel {
  Q_OBJECT

 public:
  using QAbstractListModel::QAbstractListModel;
  void setJobs(std::vector<catalog::JobRecord> jobs);
  [[nodiscard]] const catalog::JobRecord& job(int row) const { return jobs_.at(static_cast<std::size_t>(row)); }
  [[nodiscard]] int rowOf(catalog::JobNumber id) const;  ///< −1: not in it
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

 private:
  std::vector<catalog::JobRecord> jobs_;
};

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
