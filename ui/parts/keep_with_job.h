#pragma once
#include <catalog/jobs.h>
#include <desk/catalogue_thread.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <QDialog>
#include <QPushButton>
#include <functional>
#include <vector>

/// "Keep with a job…", as every page that has something to keep offers it.
namespace ohmkin::parts {

/// What is written, on the dialog's own thread.
using KeepIn =
    std::function<Expected<catalog::JobDocument>(catalog::Catalogue&, catalog::JobNumber, std::string_view who)>;

/// One line: the reference of an open job, its number, or that of a new one. Enter keeps. Stays open, and says why,
/// where nothing was kept.
class KeepWithJob : public QDialog {
  Q_OBJECT

 public:
  KeepWithJob(const QString& file, const QString& what, KeepIn keep, QWidget* parent);
  [[nodiscard]] Entry& reference() const { return *reference_; }
  [[nodiscard]] QString where() const { return where_->text(); }  ///< what Enter would do
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] QPushButton& keepButton() const { return *keepNow_; }
  [[nodiscard]] bool ready() const { return ready_; }

 signals:
  /// "Kept with job 12, Ann's pickup."
  void kept(const QString& sentence);

 private:
  void take(std::vector<catalog::JobRecord> open);
  [[nodiscard]] const catalog::JobRecord* meant() const;  ///< by what is typed; none: a new one
  void sayWhere();
  void keepIt();
  void refuse(const QString& sentence);

  KeepIn keep_;
  bool ready_ = false;
  std::vector<catalog::JobRecord> open_;
  Entry* reference_;
  Words* where_;
  Words* told_;
  QPushButton* keepNow_;
  desk::CatalogueThread thread_;  // last: it is waited for before the rest goes
};

/// Opens it over the page; `said` is called with the sentence once it is kept.
KeepWithJob* keepWithJob(const QString& file, const QString& what, KeepIn keep, QWidget* page,
                         const std::function<void(const QString&)>& said);

}  // namespace ohmkin::parts
