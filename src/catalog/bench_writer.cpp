#include <catalog/bench_key.h>
#include <catalog/bench_rows.h>
#include <catalog/change.h>
#include <catalog/reading_batch.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

/// Pages of the table kept at hand meanwhile, KiB; without, every batch of a mixed file reads them again.
constexpr int kCacheKib = 64 << 10;
constexpr std::size_t kHashLength = 64;

bool isHash(std::string_view hash) {
  return hash.size() == kHashLength &&
         std::all_of(hash.begin(), hash.end(), [](char c) { return ('0' <= c && c <= '9') || ('a' <= c && c <= 'f'); });
}

void check(const RawReading& r) {
  const bool fine = std::isfinite(r.celsius) && r.celsius > -kZeroCelsius &&
                    (std::isnan(r.ohms) || (std::isfinite(r.ohms) && r.ohms > 0)) && !std::isinf(r.seconds) &&
                    (std::isnan(r.u) || (std::isfinite(r.u) && r.u >= 0)) &&
                    (std::isnan(r.uLnOhms) || (std::isfinite(r.uLnOhms) && r.uLnOhms >= 0));
  if (!fine) throw std::invalid_argument("a reading out of range");
}

/// Larger while it lives.
class LargerCache {
 public:
  explicit LargerCache(SQLite::Database& database)
      : database_(database), before_(database.execAndGet("PRAGMA cache_size").getInt()) {
    database_.exec(fmt::format("PRAGMA cache_size = -{}", kCacheKib));
  }
  ~LargerCache() { database_.tryExec(fmt::format("PRAGMA cache_size = {}", before_)); }
  LargerCache(const LargerCache&) = delete;
  LargerCache& operator=(const LargerCache&) = delete;

 private:
  SQLite::Database& database_;
  int before_;
};

/// Every reference written here is known to lead somewhere, and looking each up again costs a third of the time.
class ReferencesTrusted {
 public:
  explicit ReferencesTrusted(Connection& connection) : connection_(connection) {
    connection_.enforceForeignKeys(false);
  }
  ~ReferencesTrusted() { connection_.enforceForeignKeys(true); }
  ReferencesTrusted(const ReferencesTrusted&) = delete;
  ReferencesTrusted& operator=(const ReferencesTrusted&) = delete;

 private:
  Connection& connection_;
};

}  // namespace

struct BenchWriter::Work {
  Work(Catalogue& c, BenchProvenance p);
  Work(const Work&) = delete;
  Work& operator=(const Work&) = delete;
  ~Work() = default;

  Catalogue& catalogue;
  Connection& connection;
  BenchProvenance by;
  std::optional<BenchFile> file;
  std::string at;
  ImportNumber import;  // 0: by hand
  std::int64_t firstRun = 0;
  std::vector<RunDescription> said;
  std::vector<std::int64_t> readings;  // of each run
  std::int64_t rows = 0;
  std::int64_t curves = 0;
  // Released in this order from below: the statement in the batch, the transaction, then what was set outside of it.
  LargerCache cache;
  ReferencesTrusted trusted;
  std::optional<Change> whole;
  std::optional<ReadingBatch> batch;

  std::size_t placeOf(RunNumber run) const;
  void openImport(const BenchFile& file);
};

BenchWriter::Work::Work(Catalogue& c, BenchProvenance p)
    : catalogue(c),
      connection(c.connection()),
      by(std::move(p)),
      cache(connection.database()),
      trusted(connection),
      whole(std::in_place, connection) {
  at = nowInUtc(connection);
  firstRun = connection.database().execAndGet("SELECT coalesce(max(id), 0) + 1 FROM bench_run").getInt64();
  batch.emplace(connection.database(), RunNumber{firstRun});
}

std::size_t BenchWriter::Work::placeOf(RunNumber run) const {
  const std::int64_t place = run.value - firstRun;
  if (place < 0 || place >= static_cast<std::int64_t>(readings.size()))
    throw std::invalid_argument("a run that was not begun here");
  return static_cast<std::size_t>(place);
}

void BenchWriter::Work::openImport(const BenchFile& wanted) {
  file = wanted;
  change(connection,
         "INSERT INTO bench_import (file, hash, bytes, at, who, meter, bath, plan, rows, curves) "
         "VALUES (?, ?, ?, ?, ?, ?, ?, ?, 0, 0)",
         wanted.file, wanted.hash, wanted.bytes, at, by.who, by.meter, by.bath, wanted.plan);
  import.value = connection.database().getLastInsertRowid();
}

BenchWriter::BenchWriter(std::unique_ptr<Work> work) : work_(std::move(work)) {}
BenchWriter::BenchWriter(BenchWriter&&) noexcept = default;
BenchWriter& BenchWriter::operator=(BenchWriter&&) noexcept = default;
BenchWriter::~BenchWriter() = default;

Expected<BenchWriter> BenchWriter::begin(Catalogue& catalogue, const BenchFile& file, const BenchProvenance& by) {
  if (!isHash(file.hash)) throw std::invalid_argument("not a SHA-256: " + file.hash);
  try {
    BenchWriter writer(std::make_unique<Work>(catalogue, by));
    if (const auto before = standingImport(catalogue, file.hash))
      return refuse("import-again", file.file,
                    fmt::format("a file already imported on {} by {}{}", before->at, before->who,
                                before->file == file.file ? std::string() : fmt::format(" as {}", before->file)),
                    "another one; nothing was changed");
    writer.work_->openImport(file);
    return writer;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

BenchWriter BenchWriter::byHand(Catalogue& catalogue, const BenchProvenance& by) {
  try {
    return BenchWriter(std::make_unique<Work>(catalogue, by));
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

RunNumber BenchWriter::beginRun(const RunDescription& said) {
  Work& w = *work_;
  const RunNumber run{w.firstRun + static_cast<std::int64_t>(w.readings.size())};
  const auto direction =
      said.direction ? std::optional(std::string(text(*said.direction))) : std::optional<std::string>();
  const auto import = w.import.value > 0 ? std::optional(w.import.value) : std::optional<std::int64_t>();
  try {
    change(w.connection,
           "INSERT INTO bench_run (id, import, part, lot, family, direction, title, note, at, who, meter, bath, rows) "
           "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)",
           run.value, Maybe{import}, said.part, said.lot, said.family, Maybe{direction}, said.title, said.note, w.at,
           w.by.who, w.by.meter, w.by.bath);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, w.catalogue.file());
  }
  w.said.push_back(said);
  w.readings.push_back(0);
  return run;
}

void BenchWriter::add(RunNumber run, const RawReading& reading) {
  Work& w = *work_;
  std::int64_t& count = w.readings[w.placeOf(run)];
  check(reading);
  if (count == kMostReadingsOfRun) throw std::invalid_argument("more readings than a run can have");
  ++w.rows;
  try {
    w.batch->add(run, ++count, reading);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, w.catalogue.file());
  }
}

Expected<CurveKey> BenchWriter::addCurve(RunNumber run, const BenchCurve& curve) {
  Work& w = *work_;
  const std::size_t place = w.placeOf(run);
  const RunDescription& said = w.said[place];
  try {
    const auto sender = senderOfPart(w.catalogue, said.part, fmt::format("run {}", place + 1));
    if (!sender) return tl::make_unexpected(sender.error());
    const CurveOrigin origin = w.file ? originOfFile(*w.file, w.by, w.at, said, static_cast<std::int64_t>(place) + 1)
                                      : originByHand(w.connection, w.by, w.at, said);
    auto kept = writeCurve(w.catalogue, run, *sender, said.lot, origin, curve);
    if (kept) ++w.curves;
    return kept;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, w.catalogue.file());
  }
}

void BenchWriter::remember(std::string_view signature, std::string_view logger) {
  Work& w = *work_;
  if (!w.file) throw std::logic_error("readings by hand have no file to remember");
  try {
    change(w.connection,
           "INSERT INTO reading_habit (signature, plan, logger, at, who) VALUES (?, ?, ?, ?, ?) "
           "ON CONFLICT (signature) DO UPDATE SET plan = excluded.plan, logger = excluded.logger, at = excluded.at, "
           "who = excluded.who",
           std::string(signature), w.file->plan, std::string(logger), w.at, w.by.who);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, w.catalogue.file());
  }
}

std::int64_t BenchWriter::rows() const { return work_->rows; }

ImportRecord BenchWriter::keep() {
  Work& w = *work_;
  try {
    w.batch->flush();
    for (std::size_t place = 0; place < w.readings.size(); ++place)
      change(w.connection, "UPDATE bench_run SET rows = ? WHERE id = ?", w.readings[place],
             w.firstRun + static_cast<std::int64_t>(place));
    change(w.connection, "UPDATE bench_import SET rows = ?, curves = ? WHERE id = ?", w.rows, w.curves, w.import.value);
    logChange(w.connection, w.by.who, w.file ? "bench file imported" : "bench readings entered",
              w.file ? fmt::format("bench_import {}", w.import.value) : fmt::format("bench_run {}", w.firstRun), {},
              fmt::format("{}{} rows, {} runs, {} curves", w.file ? w.file->file + ", " : std::string(), w.rows,
                          w.readings.size(), w.curves));
    w.batch.reset();
    w.whole->commit();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, w.catalogue.file());
  }
  ImportRecord record;
  record.id = w.import;
  if (w.file) {
    record.file = w.file->file;
    record.hash = w.file->hash;
    record.bytes = w.file->bytes;
    record.plan = w.file->plan;
  }
  record.at = w.at;
  record.who = w.by.who;
  record.meter = w.by.meter;
  record.bath = w.by.bath;
  record.rows = w.rows;
  record.curves = w.curves;
  work_.reset();
  return record;
}

}  // namespace ohmkin::catalog
