#include <catalog/bench_key.h>
#include <catalog/bench_rows.h>
#include <catalog/change.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

/// Readings held back before they go in by key: few of a file in order, which are then still at hand; of one in which
/// the runs are mixed as many as memory is granted, 56 MB, since every batch after the first goes in between what is
/// there.
constexpr std::size_t kBatchInOrder = 16'384;
constexpr std::size_t kBatchMixed = 1'000'000;
constexpr std::size_t kAhead = 8;  // rows
/// Pages of the table kept at hand meanwhile, KiB; without, every batch of a mixed file reads them again.
constexpr int kCacheKib = 64 << 10;
constexpr std::size_t kHashLength = 64;

struct Held {
  std::int64_t key = 0;
  double celsius = 0;
  double ohms = 0;
  double seconds = 0;
  double u = 0;
  double uLnOhms = 0;
  int direction = -1;  // as RunDirection; −1: not said
};

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
  std::vector<Held> batch;
  bool inOrder = true;
  std::int64_t rows = 0;
  std::int64_t curves = 0;
  // Released in this order from below: the statement, the transaction, then what was set outside of it.
  LargerCache cache;
  ReferencesTrusted trusted;
  std::optional<Change> whole;
  std::optional<SQLite::Statement> insert;

  std::size_t placeOf(RunNumber run) const;
  void openImport(const BenchFile& file);
  void put(const Held& held);
  std::vector<std::uint32_t> byKey() const;
  void flush();
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
  insert.emplace(connection.database(),
                 "INSERT INTO bench_reading (id, temperature, ohms, seconds, direction, u, u_ln_ohms) "
                 "VALUES (?, ?, ?, ?, ?, ?, ?)");
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

void BenchWriter::Work::put(const Held& held) {
  constexpr int kOhms = 3;
  SQLite::Statement& statement = *insert;
  statement.reset();
  statement.bind(1, held.key);
  statement.bind(2, held.celsius);
  int place = kOhms;
  const auto bindOrNothing = [&](double value) {
    if (std::isnan(value)) statement.bind(place++);
    else statement.bind(place++, value);
  };
  bindOrNothing(held.ohms);
  bindOrNothing(held.seconds);
  if (held.direction < 0) statement.bind(place++);
  else statement.bindNoCopy(place++, held.direction == 0 ? "heating" : "cooling");
  bindOrNothing(held.u);
  bindOrNothing(held.uLnOhms);
  statement.exec();
}

/// Where the readings of the batch stand by key. Those of one run come in order, so that counting them a run is enough.
std::vector<std::uint32_t> BenchWriter::Work::byKey() const {
  std::vector<std::uint32_t> next(readings.size() + 1);
  const auto place = [&](const Held& held) { return static_cast<std::size_t>(runOf(held.key).value - firstRun); };
  for (const Held& held : batch) ++next[place(held) + 1];
  for (std::size_t run = 1; run < next.size(); ++run) next[run] += next[run - 1];
  std::vector<std::uint32_t> order(batch.size());
  for (std::uint32_t i = 0; i < batch.size(); ++i) order[next[place(batch[i])]++] = i;
  return order;
}

void BenchWriter::Work::flush() {
  if (inOrder) {
    for (const Held& held : batch) put(held);
  } else {
    const auto order = byKey();
    for (std::size_t i = 0; i < order.size(); ++i) {
      // Rows scattered over more memory than the processor keeps at hand: waiting for each would take a third of the
      // time.
      const auto* ahead = reinterpret_cast<const char*>(&batch[order[std::min(i + kAhead, order.size() - 1)]]);
      __builtin_prefetch(ahead);
      __builtin_prefetch(ahead + sizeof(Held) - 1);
      put(batch[order[i]]);
    }
  }
  insert->reset();
  batch.clear();
  inOrder = true;
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
  const std::int64_t key = readingKey(run, ++count);
  if (w.batch.empty()) w.batch.reserve(kBatchMixed);  // only what is used of it becomes memory
  w.inOrder = w.inOrder && (w.batch.empty() || w.batch.back().key < key);
  w.batch.push_back({key, reading.celsius, reading.ohms, reading.seconds, reading.u, reading.uLnOhms,
                     reading.direction ? static_cast<int>(*reading.direction) : -1});
  ++w.rows;
  if (w.batch.size() < (w.inOrder ? kBatchInOrder : kBatchMixed)) return;
  try {
    w.flush();
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
    w.flush();
    for (std::size_t place = 0; place < w.readings.size(); ++place)
      change(w.connection, "UPDATE bench_run SET rows = ? WHERE id = ?", w.readings[place],
             w.firstRun + static_cast<std::int64_t>(place));
    change(w.connection, "UPDATE bench_import SET rows = ?, curves = ? WHERE id = ?", w.rows, w.curves, w.import.value);
    logChange(w.connection, w.by.who, w.file ? "bench file imported" : "bench readings entered",
              w.file ? fmt::format("bench_import {}", w.import.value) : fmt::format("bench_run {}", w.firstRun), {},
              fmt::format("{}{} rows, {} runs, {} curves", w.file ? w.file->file + ", " : std::string(), w.rows,
                          w.readings.size(), w.curves));
    w.insert.reset();
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
