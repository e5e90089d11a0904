#include <app/backup_sheet.h>
#include <app/backup_words.h>
#include <desk/catalogue_thread.h>
#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

namespace ohmkin::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Backups", text); }

QString moment(const QDateTime& utc) {
  return QLocale().toString(utc.toLocalTime(), QStringLiteral("d MMM yyyy, HH:mm"));
}

/// "12 changes and 3 movements of the shelf"; empty: neither.
QString counted(qint64 changes, qint64 movements) {
  const QString changed = BackupSheet::tr("%n change(s)", nullptr, static_cast<int>(changes));
  const QString moved = BackupSheet::tr("%n movement(s) of the shelf", nullptr, static_cast<int>(movements));
  if (changes > 0 && movements > 0) return tr("%1 and %2").arg(changed, moved);
  return changes > 0 ? changed : movements > 0 ? moved : QString();
}

}  // namespace

QString whenTaken(const catalog::Backup& backup) {
  return moment(QDateTime::fromSecsSinceEpoch(backup.taken.time_since_epoch().count(), Qt::UTC));
}

QString whyTaken(catalog::BackupReason reason) {
  switch (reason) {
    case catalog::BackupReason::daily:
      return tr("before the first change of a day");
    case catalog::BackupReason::beforeMigration:
      return tr("before an update");
    case catalog::BackupReason::byHand:
      return tr("by hand");
    case catalog::BackupReason::replaced:
      return tr("before going back");
  }
  return {};
}

QString sizeOf(const catalog::Backup& backup) {
  return QLocale().formattedDataSize(static_cast<qint64>(backup.bytes), 1, QLocale::DataSizeSIFormat);
}

QString whatGoingBackDoes(const catalog::Backup& backup, const Expected<workflow::Apart>& apart) {
  const QString when = whenTaken(backup);
  if (!apart) {
    if (apart.error().code == "catalogue-missing")
      return tr("The catalogue, which is not there now, is put back as it was on %1.").arg(when);
    return tr("The catalogue goes back to %1; what stands in it now does not read, so that nobody can say what would "
              "be lost.")
        .arg(when);
  }
  const QString lost = counted(apart->changesLost, apart->movementsLost);
  const QString back = counted(apart->changesBack, apart->movementsBack);
  QString said = lost.isEmpty()
                     ? tr("The catalogue goes back to %1: nothing is lost").arg(when)
                     : tr("The catalogue goes back to %1 and loses %2, the newest of %3")
                           .arg(when, lost, moment(QDateTime::fromString(desk::plain(apart->lastLost), Qt::ISODate)));
  if (!back.isEmpty()) said += tr("; it gets back %1").arg(back);
  return said + QLatin1Char('.');
}

QString whatWasPutBack(const catalog::Restored& restored) {
  QString said = tr("The catalogue is as it was on %1.").arg(whenTaken(restored.from));
  if (!restored.kept.empty()) said += QLatin1Char(' ') + tr("What was there before is kept as the newest backup.");
  return said;
}

QStringList whatWasSaved(const catalog::Salvage& salvage) {
  const QLocale locale;
  QStringList said{tr("%1 rows were saved.").arg(locale.toString(static_cast<qint64>(salvage.rows())))};
  for (const catalog::SalvagedTable& table : salvage.tables) {
    if (table.whole) continue;
    QString line =
        tr("%1: %2 rows saved").arg(desk::plain(table.table), locale.toString(static_cast<qint64>(table.rows)));
    if (table.broken > 0)
      line += tr(", %1 left out that break a rule or lack what they refer to")
                  .arg(locale.toString(static_cast<qint64>(table.broken)));
    if (!table.fault.empty()) line += tr("; others may be lost");
    said << line + QLatin1Char('.');
  }
  if (salvage.whole()) said << tr("Nothing was lost.");
  return said;
}

}  // namespace ohmkin::app
