#include <catalog/bench_writer.h>
#include <catalog/change.h>

namespace ohmkin::catalog {

void rememberHabit(Catalogue& catalogue, const ReadingHabit& habit) {
  Connection& connection = catalogue.connection();
  try {
    Change whole(connection);
    const auto before = readingHabit(catalogue, habit.signature);
    change(connection,
           "INSERT INTO reading_habit (signature, plan, logger, at, who) "
           "VALUES (?, ?, ?, strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?) ON CONFLICT (signature) DO UPDATE SET "
           "plan = excluded.plan, logger = excluded.logger, at = excluded.at, who = excluded.who",
           habit.signature, habit.plan, habit.logger, habit.who);
    logChange(connection, habit.who, "reading remembered", "reading_habit " + habit.signature,
              before ? before->plan : std::string(), habit.plan);
    whole.commit();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

void forgetHabit(Catalogue& catalogue, std::string_view signature, std::string_view who) {
  Connection& connection = catalogue.connection();
  try {
    Change whole(connection);
    const auto before = readingHabit(catalogue, signature);
    if (!before) return;
    change(connection, "DELETE FROM reading_habit WHERE signature = ?", before->signature);
    logChange(connection, who, "reading forgotten", "reading_habit " + before->signature, before->plan, {});
    whole.commit();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

}  // namespace ohmkin::catalog
