#include "large_catalogue.h"

#include <catalog/connection.h>
#include <catalog/search_index.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <vector>

namespace ohmkin::test {
namespace {

using catalog::Connection;

constexpr std::array<std::string_view, 8> kThreads{"1/8-27 NPT", "1/4-18 NPT", "3/8-18 NPT", "1/2-14 NPT",
                                                   "M10x1",      "M12x1.5",    "M14x1.5",    "M16x1.5"};
constexpr std::array<std::string_view, 6> kTerminals{"blade-6.3", "blade-4.8", "stud-4", "stud-10", "pin-2", "snap-7"};
constexpr std::array<std::string_view, 8> kSenderNames{
    "temperature sender", "coolant sender, blade terminal", "coolant sender, stud terminal",  "warning switch, coolant",
    "fan switch",         "sender with lamp switch",        "temperature sender, long reach", "cylinder head sender"};
constexpr std::array<std::string_view, 8> kSenderKinds{"variable sender", "variable sender", "variable sender",
                                                       "warning switch",  "fan switch",      "sender with lamp switch",
                                                       "variable sender", "variable sender"};
constexpr std::array<std::string_view, 24> kFirst{"tar", "vel", "rid", "gar", "mor", "sel", "bra", "cor",
                                                  "dun", "fen", "hol", "kes", "lin", "mar", "nor", "ost",
                                                  "pel", "ros", "sta", "tor", "ull", "wen", "yar", "zel"};
constexpr std::array<std::string_view, 20> kMiddle{"a",  "e",  "i",   "o",  "u",  "an", "en",  "in", "or", "ul",
                                                   "am", "el", "ith", "ow", "ea", "ai", "und", "es", "ar", "ok"};
constexpr std::array<std::string_view, 20> kLast{"don",  "wick",  "mere", "ton",  "ley",  "forth", "by",
                                                 "well", "ham",   "gate", "moor", "stow", "dale",  "rig",
                                                 "wold", "combe", "ness", "cote", "löw",  "père"};
constexpr std::array<std::string_view, 10> kBodies{"sedan",    "wagon",  "utility", "panel van", "coupe",
                                                   "half-ton", "tourer", "estate",  "roadster",  "one-ton"};

/// Numbers that look drawn and are the same everywhere (the finaliser of SplitMix64).
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  std::int64_t below(std::int64_t n) { return static_cast<std::int64_t>(next() % static_cast<std::uint64_t>(n)); }
  /// More often small than large.
  std::int64_t skewedBelow(std::int64_t n) { return std::min(below(n), std::min(below(n), below(n))); }

 private:
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15U);
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
  }
  std::uint64_t state_;
};

template <std::size_t N>
std::string_view pick(const std::array<std::string_view, N>& from, std::int64_t i) {
  return from[static_cast<std::size_t>(i) % N];
}

std::string capital(std::string word) {
  if (word[0] >= 'a' && word[0] <= 'z') word[0] = static_cast<char>(word[0] - 'a' + 'A');
  return word;
}

/// Each i below 1,000,003 its own, in no order to be seen.
std::int64_t scattered(std::int64_t i) { return (i * 700'001 + 17) % 1'000'003; }

std::string lineId(std::int64_t i) { return fmt::format("line-{:05}", i); }
std::string engineId(std::int64_t i) { return fmt::format("engine-{:04}", i); }
std::string gaugeId(std::int64_t i) { return fmt::format("GA-{:04}", i); }
std::string familyId(std::int64_t i) { return fmt::format("F{:02}", i); }
std::string makeId(std::int64_t i) { return fmt::format("make-{:02}", i); }
int firstYear(std::int64_t line) { return 1950 + static_cast<int>(line * 7 % 30); }
constexpr int kYears = 14;
std::int64_t engineOf(std::int64_t line, std::int64_t which, const LargeSizes& n) {
  return (line / 3 + which * 5) % n.engines;
}

class Filler {
 public:
  Filler(Connection& connection, const LargeSizes& sizes) : connection_(connection), n_(sizes) {}

  void fill() {
    few();
    families();
    senders();
    gauges();
    vehicles();
    engines();
    chains();
    whereUsed();
    stock();
  }

 private:
  template <class... Values>
  static void row(SQLite::Statement& statement, const Values&... values) {
    statement.reset();
    int at = 1;
    (bindOne(statement, at++, values), ...);
    statement.exec();
  }
  static void bindOne(SQLite::Statement& statement, int at, std::int64_t value) { statement.bind(at, value); }
  static void bindOne(SQLite::Statement& statement, int at, int value) { statement.bind(at, value); }
  static void bindOne(SQLite::Statement& statement, int at, double value) { statement.bind(at, value); }
  static void bindOne(SQLite::Statement& statement, int at, std::string_view value) {
    statement.bind(at, std::string(value));
  }
  static void bindOne(SQLite::Statement& statement, int at, std::nullptr_t) { statement.bind(at); }

  SQLite::Database& db() { return connection_.database(); }

  void few() {
    db().exec(
        "INSERT INTO pack VALUES ('large', 'A large catalogue', '1', '', '2020-01-01T00:00:00Z');"
        "INSERT INTO source VALUES ('made-up', 'demo', 'made up by a program', 0.5, 'large');"
        "INSERT INTO thread VALUES ('1/8-27 NPT', 'made up', 'NPT', 60, 0.9407, 10.242, 1, 'made-up', 'large'),"
        "('1/4-18 NPT', 'made up', 'NPT', 60, 1.4111, 13.616, 1, 'made-up', 'large'),"
        "('3/8-18 NPT', 'made up', 'NPT', 60, 1.4111, 17.055, 1, 'made-up', 'large'),"
        "('1/2-14 NPT', 'made up', 'NPT', 60, 1.8143, 21.224, 1, 'made-up', 'large'),"
        "('M10x1', 'made up', 'M', 60, 1, 10, 0, 'made-up', 'large'),"
        "('M12x1.5', 'made up', 'M', 60, 1.5, 12, 0, 'made-up', 'large'),"
        "('M14x1.5', 'made up', 'M', 60, 1.5, 14, 0, 'made-up', 'large'),"
        "('M16x1.5', 'made up', 'M', 60, 1.5, 16, 0, 'made-up', 'large');"
        "INSERT INTO terminal VALUES ('blade-6.3', 'blade 6.3 mm', 'blade', 6.3, 1, 'flat', 'made-up', 'large'),"
        "('blade-4.8', 'blade 4.8 mm', 'blade', 4.8, 1, 'flat', 'made-up', 'large'),"
        "('stud-4', 'stud 4 mm', 'stud', 4, 1, 'a nut', 'made-up', 'large'),"
        "('stud-10', 'stud 10-32', 'stud', 4.8, 1, 'a nut', 'made-up', 'large'),"
        "('pin-2', 'pin 2 mm', 'pin', 2, 2, 'round', 'made-up', 'large'),"
        "('snap-7', 'snap 7 mm', 'snap', 7, 1, 'a cap', 'made-up', 'large');"
        "INSERT INTO pigtail VALUES ('PT-01', 'blade-6.3', 'stud-4', 'made-up', 'large');"
        "INSERT INTO adapter VALUES ('AD-01', '3/8-18 NPT', '1/8-27 NPT', 6, 'made-up', 'large');"
        "INSERT INTO date_layout VALUES ('letter-first', 'letter, day, year digit', 'head', 'H221', '1971-08-22', "
        "'made-up', 'large');"
        "INSERT INTO date_field VALUES ('letter-first', 1, 'month letter', '', 0, 'large'), ('letter-first', 2, 'day', "
        "'00', 0, 'large'),"
        "('letter-first', 3, 'year digit', '', 0, 'large')");
  }

  void families() {
    SQLite::Statement put(db(),
                          "INSERT INTO family VALUES (?, ?, 'coolant temperature', 'falling', 0.08, ?, ?, 20, 40, 100, "
                          "120, '', 'made-up', 'large')");
    for (std::int64_t i = 0; i < n_.families; ++i)
      row(put, familyId(i), fmt::format("Family {}, {} to {} ohms", i, 400 + 20 * i, 40 + i),
          400.0 + 20.0 * static_cast<double>(i), 40.0 + static_cast<double>(i));
  }

  void senders() {
    SQLite::Statement put(db(),
                          "INSERT INTO sender VALUES (?, ?, ?, ?, ?, ?, 24, 19, 15, 20, 'case', ?, ?, 'made-up', "
                          "'large')");
    Draw draw(1);
    for (std::int64_t i = 0; i < n_.senders; ++i) {
      const std::int64_t name = draw.skewedBelow(8);
      const std::int64_t family = draw.skewedBelow(n_.families);
      const std::int64_t from = 1950 + draw.below(40);
      const std::string_view kind = pick(kSenderKinds, name);
      const bool curved = kind == "variable sender" || kind == "sender with lamp switch";
      const std::string_view thread = pick(kThreads, draw.skewedBelow(8));
      const std::string_view terminal = pick(kTerminals, draw.skewedBelow(6));
      const std::string number = largeSenderNumber(i);
      if (curved) row(put, number, pick(kSenderNames, name), kind, familyId(family), thread, terminal, from, from + 12);
      else row(put, number, pick(kSenderNames, name), kind, nullptr, thread, terminal, from, from + 12);
    }
  }

  void gauges() {
    SQLite::Statement put(db(),
                          "INSERT INTO gauge (id, name, family, movement, grounded, sweep, half, key_off, tolerance, "
                          "low_stop, high_stop, source, pack) VALUES (?, ?, ?, 'crossed coil', 70, -140, ?, 'stays', "
                          "0.05, -66, 64, 'made-up', 'large')");
    SQLite::Statement mark(db(), "INSERT INTO dial_mark VALUES (?, ?, ?, ?, ?, ?, 'large')");
    for (std::int64_t i = 0; i < n_.gauges; ++i) {
      const std::string id = gaugeId(i);
      row(put, id, fmt::format("{} gauge, C to H", largeLineName(i * 7)), familyId(i % n_.families),
          90.0 + static_cast<double>(i % 30));
      row(mark, id, 1, "cold", "C", 40.0, -45.0);
      row(mark, id, 2, "normal low", "", 75.0, 5.0);
      row(mark, id, 3, "normal high", "", 100.0, 30.0);
      row(mark, id, 4, "hot", "H", 120.0, 48.0);
    }
  }

  void vehicles() {
    SQLite::Statement make(db(), "INSERT INTO make VALUES (?, ?, 'large')");
    for (std::int64_t i = 0; i < n_.makes; ++i) row(make, makeId(i), largeMakeName(i));
    SQLite::Statement line(db(),
                           "INSERT INTO vehicle_line VALUES (?, ?, ?, ?, ?, ?, 12, 'negative', 'made-up', 'large')");
    SQLite::Statement cluster(db(),
                              "INSERT INTO cluster VALUES (?, ?, ?, ?, ?, NULL, NULL, NULL, NULL, ?, 'blade-6.3', 18, "
                              "2400, ?, 'made-up', 'large')");
    constexpr std::array<std::string_view, 3> kOptions{"standard", "gauge package", "sport"};
    for (std::int64_t i = 0; i < n_.lines; ++i) {
      const int from = firstYear(i);
      const std::string name = largeLineName(i);
      row(line, lineId(i), makeId(i % n_.makes), name,
          i % 3 == 0 ? fmt::format("{}; R{}", name.substr(0, name.find(' ')), 100 + i) : std::string(), from,
          from + kYears);
      for (std::int64_t c = 0; c < 3; ++c) {
        const std::string id = fmt::format("cluster-{:05}-{}", i, c);
        if (c == 0) row(cluster, id, lineId(i), pick(kOptions, c), from, from + kYears, nullptr, "a lamp");
        else
          row(cluster, id, lineId(i), pick(kOptions, c), from, from + kYears, gaugeId((i + c) % n_.gauges), "a dial");
      }
    }
  }

  void engines() {
    SQLite::Statement engine(db(), "INSERT INTO engine_family VALUES (?, ?, ?, 82, 90, 'made-up', 'large')");
    for (std::int64_t i = 0; i < n_.engines; ++i)
      row(engine, engineId(i), makeId(i % n_.makes),
          fmt::format("{}, {}.{} l",
                      i % 3 == 0   ? "inline six"
                      : i % 3 == 1 ? "V8"
                                   : "inline four",
                      1 + i % 6, i % 10));
    SQLite::Statement casting(db(),
                              "INSERT INTO casting VALUES (?, ?, ?, 'only', ?, ?, 'letter-first', 'made-up', 'large')");
    SQLite::Statement port(
        db(), "INSERT INTO port VALUES (?, 'front of the head', ?, 12, 34, 'gauge sender', 0, 'made-up', 'large')");
    for (std::int64_t i = 0; i < n_.castings; ++i) {
      const std::string id = largeCastingNumber(i);
      const int from = 1945 + static_cast<int>(i * 3 % 40);
      row(casting, id, engineId(i % n_.engines), i % 4 == 3 ? "block" : "head", fmt::format("{}-06-01", from),
          fmt::format("{}-07-01", from + 12));
      if (i % 4 != 3) row(port, id, pick(kThreads, i % 8));
    }
    SQLite::Statement original(db(), "INSERT OR IGNORE INTO original_engine VALUES (?, ?, ?, ?, 'made-up', 'large')");
    for (std::int64_t i = 0; i < n_.lines; ++i)
      for (std::int64_t e = 0; e < 4; ++e)
        row(original, lineId(i), engineId(engineOf(i, e, n_)), firstYear(i), firstYear(i) + kYears);
  }

  /// Every eighth part begins a chain of two to six.
  void chains() {
    SQLite::Statement put(db(), "INSERT INTO stands_in_for VALUES (?, ?, ?, 'made-up', 'large')");
    for (std::int64_t i = 0; i + 6 < n_.senders; i += 8)
      for (std::int64_t step = 0; step < 1 + i / 8 % 5; ++step)
        row(put, largeSenderNumber(i + step + 1), largeSenderNumber(i + step), fmt::format("{}", 1970 + 4 * step));
  }

  void whereUsed() {
    SQLite::Statement put(db(),
                          "INSERT INTO original_sender (sender, line, engine, year_from, year_until, source, pack) "
                          "VALUES (?, ?, ?, ?, ?, 'made-up', 'large')");
    Draw draw(2);
    std::int64_t written = 0;
    for (std::int64_t line = 0; line < n_.lines; ++line) {
      const std::int64_t wanted = n_.rows * (line + 1) / n_.lines - written;
      const std::int64_t groups = 4 * kYears;
      std::set<std::int64_t> engines;
      for (std::int64_t e = 0; e < 4; ++e) engines.insert(engineOf(line, e, n_));
      std::vector<std::int64_t> of(engines.begin(), engines.end());
      while (of.size() < 4) of.push_back(of.back() + 1 < n_.engines ? of.back() + 1 : 0);
      for (std::int64_t g = 0; g < groups; ++g) {
        const std::int64_t count = wanted * (g + 1) / groups - wanted * g / groups;
        const int year = firstYear(line) + static_cast<int>(g % kYears);
        const std::int64_t first = draw.skewedBelow(n_.senders);
        for (std::int64_t k = 0; k < count; ++k)
          row(put, largeSenderNumber((first + k * 37) % n_.senders), lineId(line),
              engineId(of[static_cast<std::size_t>(g / kYears)]), year, year + 1 + static_cast<int>(k % 3));
        written += count;
      }
    }
  }

  void stock() {
    SQLite::Statement put(db(), "INSERT INTO stock VALUES (?, ?, ?, 1, 'shop')");
    for (std::int64_t i = 0; i < n_.senders; i += 20)
      row(put, largeSenderNumber(i), fmt::format("B{:03}", i % 400), i / 20 % 7);
  }

  Connection& connection_;
  const LargeSizes& n_;
};

/// An index is made faster at the end, and then by the very words it had.
std::string takeIndexAway(SQLite::Database& database, const std::string& name) {
  std::string sql = database.execAndGet("SELECT sql FROM sqlite_schema WHERE name = '" + name + "'").getString();
  database.exec("DROP INDEX " + name);
  return sql;
}

}  // namespace

LargeSizes::LargeSizes(std::int64_t whereUsedRows)
    : rows(whereUsedRows),
      senders(std::max<std::int64_t>(200, rows * 6 / 100)),
      lines(std::max<std::int64_t>(10, rows * 3 / 1000)),
      clusters(3 * lines),
      castings(std::max<std::int64_t>(20, rows * 8 / 1000)),
      engines(std::max<std::int64_t>(10, rows / 1000)),
      gauges(std::max<std::int64_t>(10, lines / 10)) {}

std::string largeSenderNumber(std::int64_t sender) {
  const std::int64_t x = scattered(sender);
  switch (sender % 5) {
    case 0:
      return fmt::format("BR-{:06}", x);
    case 1:
      return fmt::format("{:03}.{:04}.1", x / 10'000, x % 10'000);
    case 2:
      return fmt::format("KT{:06}-{}", x, static_cast<char>('A' + x % 5));
    case 3:
      return fmt::format("{}-{:04}/{}", 8'00 + x / 10'000, x % 10'000, static_cast<char>('A' + x % 3));
    default:
      return fmt::format("MS {} {:03}", 1000 + x / 1'000, x % 1'000);
  }
}

std::string largeCastingNumber(std::int64_t casting) { return fmt::format("{:07}", 3'000'000 + scattered(casting)); }

std::string largeLineName(std::int64_t line) {
  const std::int64_t x = scattered(line);
  return capital(fmt::format("{}{}{}", pick(kFirst, x), pick(kMiddle, x / 24), pick(kLast, x / 480))) + " " +
         std::string(pick(kBodies, line));
}

std::string largeMakeName(std::int64_t make) {
  return capital(fmt::format("{}{}{}", pick(kFirst, make * 5), pick(kMiddle, make * 3), pick(kLast, make + 7)));
}

catalog::Catalogue largeCatalogue(const std::filesystem::path& file, std::int64_t whereUsedRows,
                                  SearchIndexMade index) {
  const LargeSizes sizes(whereUsedRows);
  return catalog::Catalogue::create(file, [&](catalog::Catalogue& fresh) {
    Connection& connection = fresh.connection();
    SQLite::Database& database = connection.database();
    database.exec("PRAGMA synchronous = OFF; PRAGMA cache_size = -200000");
    connection.enforceForeignKeys(false);
    SQLite::Transaction whole(database);
    const std::string bySender = takeIndexAway(database, "original_sender_by_sender");
    Filler(connection, sizes).fill();
    database.exec(bySender);
    if (index == SearchIndexMade::yes) catalog::rebuildIndex(connection);
    whole.commit();
    connection.enforceForeignKeys(true);
    database.exec("PRAGMA cache_size = -2000; PRAGMA synchronous = FULL");
  });
}

}  // namespace ohmkin::test
