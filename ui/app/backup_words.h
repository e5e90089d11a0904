#pragma once
#include <workflow/backup.h>
#include <QStringList>

/// Backups in words for a person.
namespace ohmkin::app {

QString whenTaken(const catalog::Backup& backup);  ///< "25 Nov 2026, 20:44", as the clock is here
QString whyTaken(catalog::BackupReason reason);    ///< "before an update"
QString sizeOf(const catalog::Backup& backup);     ///< "0.6 MB"
/// One sentence: what going back does, and what it loses.
QString whatGoingBackDoes(const catalog::Backup& backup, const Expected<workflow::Apart>& apart);
/// What was done, and where the file is that was there.
QString whatWasPutBack(const catalog::Restored& restored);
/// How much of a damaged file was saved: the sum, then table by table what was lost.
QStringList whatWasSaved(const catalog::Salvage& salvage);

}  // namespace ohmkin::app
