#include <catalog/change.h>
#include <catalog/stock_rows.h>
#include <fmt/format.h>

namespace ohmkin::catalog {
namespace {

std::optional<Stock> binOf(const Catalogue& catalogue, const SenderKey& sender, const std::string& bin) {
  return first(ask(catalogue, "SELECT " OHMKIN_STOCK_COLUMNS " FROM stock WHERE sender = ? AND bin = ?", stockOf,
                   sender.text, bin));
}

std::string pieces(int quantity) { return fmt::format("{} piece{}", quantity, quantity == 1 ? "" : "s"); }

Refusal tooMany(std::string where, long long would) {
  return {"quantity-out-of-range", std::move(where), fmt::format("{} pieces", would),
          fmt::format("at most {} in a bin", kMostPieces)};
}

/// What is in the bin afterwards. Under the write lock, so that what is looked at is still so when it is changed.
Expected<int> add(Catalogue& catalogue, const SenderKey& sender, const std::string& bin, int change_) {
  const auto before = binOf(catalogue, sender, bin);
  const int there = before ? before->quantity : 0;
  if (change_ < 0 && there < -change_)
    return refuse("stock-short", sender.text, fmt::format("{} in {}", pieces(there), bin),
                  fmt::format("{} there; nothing was changed", pieces(-change_)));
  if (static_cast<long long>(there) + change_ > kMostPieces)
    return tl::make_unexpected(tooMany(sender.text, static_cast<long long>(there) + change_));
  change(catalogue.connection(),
         "INSERT INTO stock (sender, bin, quantity, minimum, pack) VALUES (?1, ?2, max(?3, 0), 0, 'shop') "
         "ON CONFLICT (sender, bin) DO UPDATE SET quantity = quantity + ?3, pack = 'shop'",
         sender.text, bin, change_);
  return there + change_;
}

Expected<void> checkMovement(const Catalogue& catalogue, const MovementToMake& wanted) {
  const auto& where = wanted.sender.text;
  if (wanted.bin.empty() || (wanted.kind == StockMovementKind::move && wanted.otherBin.empty()))
    return refuse("bin-empty", where, "no bin", "the name of a bin");
  if (wanted.kind == StockMovementKind::move && wanted.bin == wanted.otherBin)
    return refuse("bin-same", where, fmt::format("{} twice", wanted.bin), "two bins");
  const int least = wanted.kind == StockMovementKind::count ? 0 : 1;
  if (wanted.quantity < least || wanted.quantity > kMostPieces)
    return refuse("quantity-out-of-range", where, pieces(wanted.quantity), fmt::format("{} to {}", least, kMostPieces));
  if (wanted.job &&
      ask(
          catalogue, "SELECT 1 FROM job WHERE id = ?", [](Row& row) { return row.whole(); }, wanted.job->value)
          .empty())
    return refuse("job-unknown", fmt::format("job {}", wanted.job->value), "no such job", "the number of a job");
  return {};
}

/// Writes the movement down; `made` but for id, at, who.
StockMovement writtenDown(Catalogue& catalogue, const StockMovement& made, std::string_view who) {
  Connection& connection = catalogue.connection();
  const auto otherBin = made.otherBin.empty() ? std::optional<std::string>() : std::optional(made.otherBin);
  const auto job = made.job ? std::optional(made.job->value) : std::optional<std::int64_t>();
  const auto undoes = made.undoes ? std::optional(made.undoes->value) : std::optional<std::int64_t>();
  change(connection,
         "INSERT INTO stock_movement (at, who, kind, sender, bin, change, left_in_bin, other_bin, note, job, undoes) "
         "VALUES (strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
         std::string(who), std::string(text(made.kind)), made.sender.text, made.bin, made.change, made.leftInBin,
         Maybe{otherBin}, made.note, Maybe{job}, Maybe{undoes});
  return *movement(catalogue, MovementNumber{connection.database().getLastInsertRowid()});
}

/// The change of the bin, and of the other bin of a move.
Expected<void> apply(Catalogue& catalogue, StockMovement& made) {
  // What is taken comes first: where it is short nothing else is looked at.
  if (!made.otherBin.empty() && made.change > 0) {
    if (const auto other = add(catalogue, made.sender, made.otherBin, -made.change); !other)
      return tl::make_unexpected(other.error());
  }
  const auto left = add(catalogue, made.sender, made.bin, made.change);
  if (!left) return tl::make_unexpected(left.error());
  made.leftInBin = *left;
  if (!made.otherBin.empty() && made.change <= 0) {
    if (const auto other = add(catalogue, made.sender, made.otherBin, -made.change); !other)
      return tl::make_unexpected(other.error());
  }
  return {};
}

}  // namespace

Expected<StockMovement> moveStock(Catalogue& catalogue, const MovementToMake& wanted, std::string_view who) {
  try {
    Change whole(catalogue.connection());
    if (const auto fine = checkMovement(catalogue, wanted); !fine) return tl::make_unexpected(fine.error());
    StockMovement made;
    made.kind = wanted.kind;
    made.sender = wanted.sender;
    made.bin = wanted.bin;
    made.note = wanted.note;
    made.job = wanted.job;
    made.change = wanted.kind == StockMovementKind::receipt ? wanted.quantity : -wanted.quantity;
    if (wanted.kind == StockMovementKind::move) made.otherBin = wanted.otherBin;
    if (wanted.kind == StockMovementKind::count) {
      const auto before = binOf(catalogue, wanted.sender, wanted.bin);
      made.change = wanted.quantity - (before ? before->quantity : 0);
    }
    if (const auto done = apply(catalogue, made); !done) return tl::make_unexpected(done.error());
    StockMovement kept = writtenDown(catalogue, made, who);
    whole.commit();
    return kept;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Expected<StockMovement> undoMovement(Catalogue& catalogue, MovementNumber id, std::string_view who) {
  try {
    Change whole(catalogue.connection());
    const auto where = fmt::format("movement {}", id.value);
    const auto before = movement(catalogue, id);
    if (!before) return refuse("movement-unknown", where, "no such movement", "the number of a movement");
    if (before->undoneBy)
      return refuse("movement-undone", where, fmt::format("one that movement {} undid", before->undoneBy->value),
                    "one that stands; nothing was changed");
    StockMovement made = *before;
    made.kind = StockMovementKind::undo;
    made.change = -before->change;
    made.note.clear();
    made.undoes = id;
    if (const auto done = apply(catalogue, made); !done) return tl::make_unexpected(done.error());
    StockMovement kept = writtenDown(catalogue, made, who);
    whole.commit();
    return kept;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Expected<Stock> setMinimum(Catalogue& catalogue, const SenderKey& sender, const std::string& bin, int minimum,
                           std::string_view who) {
  Connection& connection = catalogue.connection();
  try {
    Change whole(connection);
    auto before = binOf(catalogue, sender, bin);
    if (!before) return refuse("bin-unknown", sender.text, fmt::format("'{}'", bin), "a bin that the part lies in");
    if (minimum < 0 || minimum > kMostPieces)
      return refuse("quantity-out-of-range", sender.text, pieces(minimum), fmt::format("0 to {}", kMostPieces));
    change(connection, "UPDATE stock SET minimum = ?, pack = 'shop' WHERE sender = ? AND bin = ?", minimum, sender.text,
           bin);
    logChange(connection, who, "minimum changed", fmt::format("stock {},{}", sender.text, bin),
              fmt::format("{}", before->minimum), fmt::format("{}", minimum));
    whole.commit();
    before->minimum = minimum;
    return *std::move(before);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Expected<void> forgetBin(Catalogue& catalogue, const SenderKey& sender, const std::string& bin, std::string_view who) {
  Connection& connection = catalogue.connection();
  try {
    Change whole(connection);
    const auto before = binOf(catalogue, sender, bin);
    if (!before) return refuse("bin-unknown", sender.text, fmt::format("'{}'", bin), "a bin that the part lies in");
    if (before->quantity > 0)
      return refuse("bin-not-empty", sender.text, fmt::format("{} in {}", pieces(before->quantity), bin),
                    "an empty bin; move them or count them first");
    change(connection, "DELETE FROM stock WHERE sender = ? AND bin = ?", sender.text, bin);
    logChange(connection, who, "bin forgotten", fmt::format("stock {},{}", sender.text, bin),
              fmt::format("minimum {}", before->minimum), {});
    whole.commit();
    return {};
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

}  // namespace ohmkin::catalog
