#pragma once
#include <catalog/catalogue.h>

namespace ohmkin::catalog {

/// While it lives, every question is answered from one state of the catalogue, whatever others write meanwhile; and the
/// file is locked once for all of them instead of once for each. Not to be nested.
class Snapshot {
 public:
  explicit Snapshot(const Catalogue& catalogue);
  ~Snapshot();
  Snapshot(const Snapshot&) = delete;
  Snapshot& operator=(const Snapshot&) = delete;

 private:
  const Catalogue& catalogue_;
};

}  // namespace ohmkin::catalog
