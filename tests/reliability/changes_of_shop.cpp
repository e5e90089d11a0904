#include "changes.h"

#include <catalog/jobs.h>
#include <catalog/stock.h>
#include <QtCore/QCryptographicHash>
#include <array>
#include <string>

namespace ohmkin::test {
namespace {

template <class Value>
const Value& done(const Expected<Value>& outcome) {
  if (!outcome) qFatal("%s", outcome.error().sentence().c_str());
  return *outcome;
}

catalog::MovementToMake movementOf(catalog::StockMovementKind kind, const char* bin, int quantity) {
  catalog::MovementToMake wanted;
  wanted.kind = kind;
  wanted.sender = catalog::SenderKey{"SN-10.1"};
  wanted.bin = bin;
  wanted.quantity = quantity;
  if (kind == catalog::StockMovementKind::move) wanted.otherBin = "B4";
  return wanted;
}

// The shelf: six changes that go round and round. A1 and B4 hold 2 and 5 at first.
constexpr int kStockRound = 6;
constexpr std::array kInA1{0, 7, 5, 2, 2, 2, 2};  ///< more than at first, after so many of a round
constexpr std::array kInB4{0, 0, 0, 3, 2, 3, 3};

constexpr int kJobRound = 6;
std::string attachmentOf(int change) {
  return R"({"text": ")" + std::string(20'000, static_cast<char>('a' + change % 26)) + R"("})";
}

}  // namespace

void changeStock(catalog::Catalogue& catalogue, int change) {
  using Kind = catalog::StockMovementKind;
  const int rounds = (change - 1) / kStockRound;
  switch ((change - 1) % kStockRound) {
    case 0:
      done(moveStock(catalogue, movementOf(Kind::receipt, "A1", 7), "anna"));
      break;
    case 1:
      done(moveStock(catalogue, movementOf(Kind::sale, "A1", 2), "anna"));
      break;
    case 2:
      done(moveStock(catalogue, movementOf(Kind::move, "A1", 3), "anna"));
      break;
    case 3:  // one less than was written down
      done(moveStock(catalogue, movementOf(Kind::count, "B4", 5 + rounds * kInB4.back() + kInB4[3] - 1), "anna"));
      break;
    case 4:
      done(undoMovement(catalogue, movements(catalogue, 1).front().id, "anna"));
      break;
    default:
      done(setMinimum(catalogue, catalog::SenderKey{"SN-10.1"}, "B4", change, "anna"));
  }
}
int stockChangesIn(catalog::Catalogue& catalogue) {
  const int lines = number(catalogue, "SELECT count(*) FROM change_log");
  const int changes = number(catalogue, "SELECT count(*) FROM stock_movement") + lines;
  const int rounds = changes / kStockRound;
  const auto within = static_cast<std::size_t>(changes % kStockRound);
  const auto holds = [&](const std::string& bin, int pieces) {
    const std::string there = "SELECT quantity FROM stock WHERE sender = 'SN-10.1' AND bin = '" + bin + "'";
    const int atFirst = bin == "A1" ? 2 : 5;
    const int came = number(catalogue, "SELECT coalesce(sum(CASE bin WHEN '" + bin +
                                           "' THEN change ELSE -change END), 0) FROM stock_movement WHERE bin = '" +
                                           bin + "' OR other_bin = '" + bin + "'");
    // What the last movement of the bin itself left in it is there, but for what came from or went to the other.
    const int left = number(catalogue, "SELECT coalesce((SELECT left_in_bin - (" + there +
                                           ") FROM stock_movement m WHERE bin = '" + bin +
                                           "' AND NOT EXISTS (SELECT 1 FROM stock_movement n WHERE n.id > m.id AND "
                                           "n.other_bin = '" +
                                           bin + "') ORDER BY id DESC LIMIT 1), 0)");
    return number(catalogue, there) == pieces && atFirst + came == pieces && left == 0;
  };
  const bool whole =
      lines == rounds && number(catalogue, "SELECT count(*) FROM stock") == 2 &&
      holds("A1", 2 + rounds * kInA1.back() + kInA1[within]) &&
      holds("B4", 5 + rounds * kInB4.back() + kInB4[within]) &&
      number(catalogue, "SELECT minimum FROM stock WHERE bin = 'B4'") == (rounds > 0 ? rounds * kStockRound : 1);
  return whole ? changes : kHalf;
}

// Jobs: opened, a part received for it, a document kept, closed, opened again by undoing, erased; then the next one.
void changeJobs(catalog::Catalogue& catalogue, int change) {
  const int step = (change - 1) % kJobRound;
  if (step == 0) {
    catalog::JobFields said;
    said.reference = "customer " + std::to_string(change);
    said.note = "needs a part";
    done(openJob(catalogue, said, "anna"));
    return;
  }
  const auto job = jobs(catalogue, {}, 1).front();
  switch (step) {
    case 1: {
      auto received = movementOf(catalog::StockMovementKind::receipt, "A1", 1);
      received.job = job.id;
      received.note = "for the customer";
      done(moveStock(catalogue, received, "anna"));
      break;
    }
    case 2: {
      catalog::JobDocument document;
      document.kind = catalog::DocumentKind::attachment;
      document.title = "what was sent";
      document.document = attachmentOf(change);
      document.hash = QCryptographicHash::hash(QByteArray::fromStdString(document.document), QCryptographicHash::Sha256)
                          .toHex()
                          .toStdString();
      done(keepDocument(catalogue, job.id, document, "anna"));
      break;
    }
    case 3: {
      catalog::JobFields said = job.said;
      said.state = catalog::JobState::done;
      done(changeJob(catalogue, job.id, said, "closed", "anna"));
      break;
    }
    case 4:
      done(undoJob(catalogue, job.id, "anna"));
      break;
    default:
      done(eraseJob(catalogue, job.id, "anna"));
  }
}
int jobChangesIn(catalog::Catalogue& catalogue) {
  const int moved = number(catalogue, "SELECT count(*) FROM stock_movement");
  const int changes = number(catalogue, "SELECT count(*) FROM change_log") + moved;
  const int rounds = changes / kJobRound;
  const int within = changes % kJobRound;
  const bool open = within > 0;
  const bool received = within >= 2;
  const bool kept = within >= 3;
  const bool steps =
      moved == rounds + received &&
      number(catalogue, "SELECT count(*) FROM stock_movement WHERE job IS NULL AND note = ''") == rounds &&
      number(catalogue, "SELECT sum(quantity) FROM stock") == 7 + moved &&
      number(catalogue, "SELECT count(*) FROM job_step") == (within < 3    ? 0
                                                             : within == 3 ? 1
                                                                           : 2) &&
      number(catalogue, "SELECT count(*) FROM job_step WHERE undone = 1") == (within == 5);
  const auto all = jobs(catalogue, {"needs part", {}, false}, 10);  // by what the file keeps for searching
  if (!steps || static_cast<int>(all.size()) != open || number(catalogue, "SELECT count(*) FROM job") != open ||
      number(catalogue, "SELECT count(*) FROM job_search") != open ||
      number(catalogue, "SELECT count(*) FROM job_document") != kept)
    return kHalf;
  if (!open) return changes;
  const auto& job = all.front();
  const auto state = within == 4 ? catalog::JobState::done : catalog::JobState::open;
  if (job.said.state != state || job.said.reference != "customer " + std::to_string(rounds * kJobRound + 1))
    return kHalf;
  for (const auto& document : documents(catalogue, job.id)) {
    const auto hash =
        QCryptographicHash::hash(QByteArray::fromStdString(document.document), QCryptographicHash::Sha256).toHex();
    if (document.document != attachmentOf(rounds * kJobRound + 3) || hash.toStdString() != document.hash) return kHalf;
  }
  return changes;
}

}  // namespace ohmkin::test
