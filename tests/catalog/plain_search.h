#pragma once
#include <catalog/connection.h>
#include <catalog/search.h>
#include <QtCore/QString>
#include <QtCore/QStringList>
#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

/// The same search done the plain way: every row is looked at, with Qt's Unicode tables for letters and the whole table
/// of distances for letters that are off. Shares nothing with what it is held against but the meaning of the words.
namespace ohmkin::test {

class PlainSearch {
 public:
  explicit PlainSearch(catalog::Connection& connection) : database_(connection.database()) { read(); }

  struct Hit {
    catalog::ThingKind kind;
    std::string id;
    int how;
    int field;
    bool inStock;
    std::int64_t uses;
    friend bool operator==(const Hit&, const Hit&) = default;
  };

  /// All, best first.
  [[nodiscard]] std::vector<Hit> find(const QString& typed) const {
    const Words asked = wordsOf(typed);
    std::vector<Hit> hits;
    if (asked.letters.isEmpty()) return hits;
    for (const Thing& thing : things_) {
      const auto score = scoreOf(asked, thing);
      if (score.first < kNone)
        hits.push_back({thing.kind, thing.id, score.first, score.second, thing.inStock, thing.uses});
    }
    const auto key = [](const Hit& h) { return std::tuple(h.how, h.field, !h.inStock, -h.uses, h.kind, h.id); };
    std::sort(hits.begin(), hits.end(), [&](const Hit& a, const Hit& b) { return key(a) < key(b); });
    return hits;
  }

 private:
  static constexpr int kNone = 99;
  using Score = std::pair<int, int>;  // how, field
  struct Words {
    QString letters;
    QStringList byBlanks;
    QStringList bySigns;
  };
  struct Thing {
    catalog::ThingKind kind;
    std::string id;
    bool inStock = false;
    std::int64_t uses = 0;
    std::vector<std::pair<int, Words>> fields;
  };

  static QString lettersOf(QChar c) {
    static const std::map<char16_t, const char*> special{{u'ß', "ss"}, {u'æ', "ae"}, {u'Æ', "ae"}, {u'ø', "o"},
                                                         {u'Ø', "o"},  {u'ł', "l"},  {u'Ł', "l"},  {u'œ', "oe"},
                                                         {u'Œ', "oe"}, {u'×', "x"}};
    if (const auto found = special.find(c.unicode()); found != special.end()) return QString::fromLatin1(found->second);
    QString out;
    for (const QChar part : QString(c).normalized(QString::NormalizationForm_KD))
      if (part.isLetterOrNumber()) out += part.toLower();
    return out;
  }

  static Words wordsOf(const QString& text) {
    Words words;
    bool word = false, piece = false;
    for (const QChar c : text) {
      if (c.isSpace()) {
        word = piece = false;
        continue;
      }
      if (c.category() == QChar::Mark_NonSpacing) continue;
      const QString letters = lettersOf(c);
      if (letters.isEmpty()) {
        piece = false;
        continue;
      }
      if (!word) words.byBlanks << QString();
      if (!piece) words.bySigns << QString();
      word = piece = true;
      words.letters += letters;
      words.byBlanks.last() += letters;
      words.bySigns.last() += letters;
    }
    return words;
  }

  static int distance(const QString& a, const QString& b) {
    std::vector<std::vector<int>> d(static_cast<std::size_t>(a.size()) + 1,
                                    std::vector<int>(static_cast<std::size_t>(b.size()) + 1));
    for (std::size_t i = 0; i < d.size(); ++i)
      for (std::size_t j = 0; j < d[0].size(); ++j) {
        if (i == 0 || j == 0) {
          d[i][j] = static_cast<int>(i + j);
          continue;
        }
        const QChar x = a[static_cast<qsizetype>(i) - 1], y = b[static_cast<qsizetype>(j) - 1];
        d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (x == y ? 0 : 1)});
        if (i > 1 && j > 1 && x == b[static_cast<qsizetype>(j) - 2] && y == a[static_cast<qsizetype>(i) - 2])
          d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
      }
    return d.back().back();
  }

  static int how(const QString& typed, const QString& term, bool whole) {
    if (typed == term) return whole ? 0 : 2;
    if (term.startsWith(typed)) return whole ? 1 : 3;
    if (typed.size() >= 3 && term.contains(typed)) return 4;
    const int may = typed.size() >= 8 ? 2 : typed.size() >= 4 ? 1 : 0;
    if (may == 0 || std::abs(typed.size() - term.size()) > may) return kNone;
    const int off = distance(typed, term);
    return off > may ? kNone : off == 2 ? 6 : 5;
  }

  static Score scoreOf(const Words& asked, const Thing& thing) {
    Score whole{kNone, kNone};
    for (const auto& [field, words] : thing.fields)
      whole = std::min(whole, Score{how(asked.letters, words.letters, true), field});
    Score all{0, 0};
    for (const QString& word : asked.byBlanks) {
      Score best{kNone, kNone};
      for (const auto& [field, words] : thing.fields)
        for (const QStringList* list : {&words.byBlanks, &words.bySigns})
          for (const QString& term : *list) best = std::min(best, Score{how(word, term, false), field});
      all = std::max(all, best);
    }
    return std::min(whole, all);
  }

  std::vector<QStringList> rows(const std::string& sql) {
    SQLite::Statement statement(database_, sql);
    std::vector<QStringList> all;
    while (statement.executeStep()) {
      QStringList row;
      for (int c = 0; c < statement.getColumnCount(); ++c)
        row << QString::fromStdString(statement.getColumn(c).getString());
      all.push_back(row);
    }
    return all;
  }

  std::map<QString, std::int64_t> counts(const std::string& table, const std::string& column) {
    std::map<QString, std::int64_t> all;
    for (const QStringList& row : rows(std::string("SELECT ").append(column).append(" FROM ").append(table)))
      ++all[row[0]];
    return all;
  }

  /// Fields by their places in catalog::SearchField.
  void add(catalog::ThingKind kind, const QString& id, const std::vector<std::pair<int, QString>>& fields,
           std::int64_t uses = 0, bool inStock = false) {
    Thing thing{kind, id.toStdString(), inStock, uses, {}};
    for (const auto& [field, text] : fields)
      if (!text.isEmpty()) thing.fields.emplace_back(field, wordsOf(text));
    things_.push_back(std::move(thing));
  }

  std::set<QString> olderThan(const QString& part) const {
    std::set<QString> old;
    std::vector<QString> open{part};
    while (!open.empty()) {
      const QString one = open.back();
      open.pop_back();
      const auto found = replaces_.find(one);
      if (found == replaces_.end()) continue;
      for (const QString& older : found->second)
        if (old.insert(older).second) open.push_back(older);
    }
    old.erase(part);
    return old;
  }

  void read() {
    using K = catalog::ThingKind;
    for (const QStringList& r : rows("SELECT sender, replaces FROM stands_in_for")) replaces_[r[0]].insert(r[1]);
    std::set<QString> stocked;
    for (const QStringList& r : rows("SELECT sender FROM stock WHERE quantity > 0")) stocked.insert(r[0]);
    auto ofSender = counts("original_sender", "sender");
    auto ofLine = counts("original_sender", "line");
    auto ofFamily = counts("sender", "family");
    auto ofEngine = counts("casting", "engine");
    std::map<QString, QString> makes;
    for (const QStringList& r : rows("SELECT id, name FROM make")) makes[r[0]] = r[1];
    for (const QStringList& r : rows("SELECT id, name FROM sender")) {
      std::vector<std::pair<int, QString>> fields{{0, r[0]}, {2, r[1]}};
      for (const QString& old : olderThan(r[0])) fields.emplace_back(1, old);
      add(K::sender, r[0], fields, ofSender[r[0]], stocked.contains(r[0]));
    }
    for (const QStringList& r : rows("SELECT id, name FROM gauge")) add(K::gauge, r[0], {{0, r[0]}, {2, r[1]}});
    for (const QStringList& r : rows("SELECT id, name, cold_ohms, hot_ohms FROM family"))
      add(K::family, r[0],
          {{0, r[0]},
           {2, r[1]},
           {5, r[2].isEmpty() ? QString() : QString::number(r[2].toDouble()) + "-" + QString::number(r[3].toDouble())}},
          ofFamily[r[0]]);
    std::map<QString, QStringList> lines;
    for (const QStringList& r : rows("SELECT id, make, name, also FROM vehicle_line")) {
      lines[r[0]] = r;
      std::vector<std::pair<int, QString>> fields{
          {0, r[0]}, {2, r[2]}, {2, makes[r[1]] + " " + r[2]}, {4, makes[r[1]]}};
      for (const QString& also : r[3].split(';', Qt::SkipEmptyParts)) fields.emplace_back(3, also.trimmed());
      add(K::line, r[0], fields, ofLine[r[0]]);
    }
    for (const QStringList& r : rows("SELECT id, option, line FROM cluster"))
      add(K::cluster, r[0], {{0, r[0]}, {2, r[1]}, {6, lines[r[2]][2]}, {4, makes[lines[r[2]][1]]}});
    for (const QStringList& r : rows("SELECT id, role FROM casting")) add(K::casting, r[0], {{0, r[0]}, {2, r[1]}});
    for (const QStringList& r : rows("SELECT id, make, name FROM engine_family"))
      add(K::engine, r[0], {{0, r[0]}, {2, r[2]}, {2, makes[r[1]] + " " + r[2]}, {4, makes[r[1]]}}, ofEngine[r[0]]);
    for (const auto& [id, name] : makes) add(K::make, id, {{0, id}, {2, name}});
    for (const QStringList& r : rows("SELECT id, standard FROM thread")) add(K::thread, r[0], {{0, r[0]}, {2, r[1]}});
    for (const QStringList& r : rows("SELECT id, name FROM terminal")) add(K::terminal, r[0], {{0, r[0]}, {2, r[1]}});
    for (const QStringList& r : rows("SELECT id, port, sender FROM adapter"))
      add(K::adapter, r[0], {{0, r[0]}, {7, r[1]}, {7, r[2]}});
    for (const QStringList& r : rows("SELECT id, harness, sender FROM pigtail"))
      add(K::pigtail, r[0], {{0, r[0]}, {7, r[1]}, {7, r[2]}});
    for (const QStringList& r : rows("SELECT id, name, found_on, example FROM date_layout"))
      add(K::dateLayout, r[0], {{0, r[0]}, {2, r[1]}, {7, r[2]}, {8, r[3]}});
  }

  SQLite::Database& database_;
  std::map<QString, std::set<QString>> replaces_;
  std::vector<Thing> things_;
};

}  // namespace ohmkin::test
