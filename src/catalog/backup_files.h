#pragma once
#include <catalog/backup.h>
#include <catalog/connection.h>

/// Inside this room only: the files behind backup.h.
namespace ohmkin::catalog {

[[noreturn]] void backupFailed(const std::filesystem::path& file, std::string found);

/// SHA-256 of a file, lower-case hexadecimal; empty where it cannot be read.
std::string hashOf(const std::filesystem::path& file);
void writeHash(const std::filesystem::path& file);

/// FILE.backups/2026-11-25T194441Z-daily.ohmkin, a name not yet taken.
std::filesystem::path newBackupName(const std::filesystem::path& catalogue, std::chrono::sys_seconds now,
                                    BackupReason reason);
std::optional<Backup> backupNamed(const std::filesystem::path& file);

/// The bytes written to `file` last through a power cut, its name too.
void syncFile(const std::filesystem::path& file);
void syncFolder(const std::filesystem::path& folder);

Backup backUp(Connection& connection, BackupReason reason);
/// Before the first change of the day.
void backUpOfTheDay(Connection& connection);

}  // namespace ohmkin::catalog
