#include <catalog/bench_rows.h>
#include <catalog/change.h>
#include <catalog/senders.h>
#include <fmt/format.h>
#include <cmath>

namespace ohmkin::catalog {
namespace {

constexpr std::size_t kHashDigits = 16;  // of 64: enough to tell files apart, short enough to be read out

/// Kelvin inside and back costs the last digits of a °C that was written with one decimal.
double plainCelsius(Temperature t) { return std::round(inCelsius(t) * 1e9) / 1e9; }

/// A file's name may hold anything; a citation is one line.
std::string inOneLine(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F) c = ' ';
  return text;
}

std::string measured(const BenchProvenance& by, const std::string& at, const RunDescription& said) {
  std::string text = fmt::format("measured on the bench {}", at.substr(0, 10));
  if (!by.who.empty()) text += " by " + by.who;
  if (!by.meter.empty()) text += ", meter: " + by.meter;
  if (!by.bath.empty()) text += ", bath: " + by.bath;
  if (!said.title.empty()) text += fmt::format(", run '{}'", said.title);
  return text;
}

void writeRows(Connection& connection, RunNumber run, const SenderKey& sender, const std::string& lot,
               const CurveOrigin& origin, const BenchCurve& curve) {
  change(connection, "INSERT INTO source (id, kind, citation, confidence, pack) VALUES (?, 'bench', ?, ?, 'shop')",
         origin.id, origin.citation, curve.confidence);
  change(connection,
         "INSERT INTO curve (id, sender, lot, model, coefficients, covariance, floor, valid_low, valid_high, source, "
         "pack) "
         "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 'shop')",
         origin.id, sender.text, lot, std::string(text(curve.model)), curve.coefficients,
         fmt::format("{}", fmt::join(curve.covariance, " ")), curve.floor, plainCelsius(curve.valid.low),
         plainCelsius(curve.valid.high), origin.id);
  int ordinal = 0;
  for (const Sample& sample : curve.samples)
    change(connection,
           "INSERT INTO sample (curve, ordinal, temperature, ohms, direction, pack) VALUES (?, ?, ?, ?, ?, 'shop')",
           origin.id, ++ordinal, plainCelsius(sample.at), inOhms(sample.ohms), std::string(text(sample.direction)));
  change(connection, "UPDATE bench_run SET curve = ? WHERE id = ?", origin.id, run.value);
}

std::string whereOf(RunNumber run) { return fmt::format("run {}", run.value); }

}  // namespace

std::string nowInUtc(Connection& connection) {
  SQLite::Statement& asked = connection.statement("SELECT strftime('%Y-%m-%dT%H:%M:%SZ', 'now')");
  const Use use(asked);
  asked.executeStep();
  return asked.getColumn(0).getString();
}

Expected<SenderKey> senderOfPart(const Catalogue& catalogue, const std::string& part, const std::string& where) {
  if (part.empty()) return refuse("part-not-said", where, "no part number", "the part number the curve belongs to");
  if (sender(catalogue, SenderKey{part})) return SenderKey{part};
  const auto alike = sendersNumbered(catalogue, part);
  if (alike.size() == 1) return alike.front().id;
  return refuse("part-unknown", where, fmt::format("the part number '{}'", part),
                alike.empty() ? "one the catalogue has a sender for; the readings can be kept without"
                              : "it written as the catalogue does: several differ only in blanks or signs");
}

CurveOrigin originOfFile(const BenchFile& file, const BenchProvenance& by, const std::string& at,
                         const RunDescription& said, std::int64_t place) {
  const std::string hash = file.hash.substr(0, kHashDigits);
  return {fmt::format("bench-{}-{}", hash, place),
          inOneLine(fmt::format("{}; file {}, SHA-256 {}…", measured(by, at, said), file.file, hash))};
}

CurveOrigin originByHand(Connection& connection, const BenchProvenance& by, const std::string& at,
                         const RunDescription& said) {
  SQLite::Statement& asked = connection.statement("SELECT lower(hex(randomblob(8)))");
  const Use use(asked);
  asked.executeStep();
  return {"bench-" + asked.getColumn(0).getString(), inOneLine(measured(by, at, said) + "; entered by hand")};
}

Expected<CurveKey> writeCurve(Catalogue& catalogue, RunNumber run, const SenderKey& sender, const std::string& lot,
                              const CurveOrigin& origin, const BenchCurve& curve) {
  Connection& connection = catalogue.connection();
  change(connection, "SAVEPOINT measured_curve");
  try {
    writeRows(connection, run, sender, lot, origin, curve);
    change(connection, "RELEASE measured_curve");
    return CurveKey{origin.id};
  } catch (const SQLite::Exception& failure) {
    connection.database().tryExec("ROLLBACK TO measured_curve; RELEASE measured_curve");
    if (!breaksRule(failure)) throw;
    return refuse("curve-refused", whereOf(run), "a curve that breaks a rule", brokenRule(failure));
  }
}

void takeOutCurve(Connection& connection, RunNumber run, const CurveKey& curve) {
  change(connection, "UPDATE bench_run SET curve = NULL WHERE id = ?", run.value);
  change(connection,
         "DELETE FROM sample WHERE curve = ?1 AND EXISTS (SELECT 1 FROM curve WHERE id = ?1 AND pack = 'shop')",
         curve.text);
  change(connection, "DELETE FROM curve WHERE id = ? AND pack = 'shop'", curve.text);
  change(connection,
         "DELETE FROM source WHERE id = ?1 AND pack = 'shop' AND kind = 'bench' "
         "AND NOT EXISTS (SELECT 1 FROM curve WHERE source = ?1)",
         curve.text);
}

}  // namespace ohmkin::catalog
