#include <catalog/connection.h>
#include <catalog/snapshot.h>

namespace ohmkin::catalog {

Snapshot::Snapshot(const Catalogue& catalogue) : catalogue_(catalogue) {
  try {
    catalogue.connection().database().exec("BEGIN");
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Snapshot::~Snapshot() { catalogue_.connection().database().tryExec("COMMIT"); }

}  // namespace ohmkin::catalog
