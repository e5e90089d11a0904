#include <QDir>
#include <QFile>
#include <QRegularExpression>
#include <QSet>
#include <QtTest>

/// SQL is written in the program and nowhere else: every text that is run is a literal, or a literal with names put in
/// that come from the catalogue's own tables through sqlName(). Values are bound.

namespace {

/// What may be put into an SQL text beside sqlName(…): built of names that went through sqlName(), of marks for values
/// to be bound, or of the program's own numbers. Whoever adds to it has looked at where the text comes from.
const QSet<QString> kNamesOnly{
    "names",   // "a", "b": sqlName() of each column
    "marks",   // ?, ?
    "where",   // "a" = ? AND "b" = ?
    "order",   // ORDER BY rowid ASC or DESC
    "column",  // salvage: sqlName() of a column
    "parent",  // salvage: sqlName() of a table
    "joined(columns)",
    "joined(shape.key)",
    "listOf(columns)",
    "listOf(names)",
    "listOf(wanted)",
    "listOf(ordered)",
    "listOf(shape.key)",
    "whereAll(shape.key)",  // sqlName() of each
    "listOf(columns, \"t.\")",
    "listOf(columns, \"\", \" = ?\")",
    "listOf(order, \"\", asked_.descending ? \" DESC\" : \"\")",
    "owned ? \"coalesce(sum(pack <> 'shop'), 0)\" : \"0\"",
    "key",   // row_editor_pages: sqlName() of the key
    "name",  // row_editor_pages: sqlName() of the name, or ''
    "kCacheKib",
    "before_",
    "had + 1",
    "static_cast<std::int32_t>(Catalogue::kApplicationId)",  // numbers
};

/// Texts that come to a function already made: its callers are looked at in their turn.
const QSet<QString> kPassedOn{
    "sql",  // connection.cpp, row.h, change.h: literals of the callers
    "rows.all",
    "rows.one",
    "kOlder",                                               // search_documents.cpp: literals
    "std::string(all[static_cast<std::size_t>(had)].sql)",  // a migration
    "insertSql(*shape, columns)",
    "ownerSql(*shape)",  // pack_writer.cpp: built of sqlName()
};

QString withoutComments(const QString& code) {
  static const QRegularExpression stringOrComment("\"(?:[^\"\\\\]|\\\\.)*\"|//[^\n]*|/\\*.*?\\*/",
                                                  QRegularExpression::DotMatchesEverythingOption);
  QString plain;
  qsizetype at = 0;
  for (auto found = stringOrComment.globalMatch(code); found.hasNext();) {
    const auto match = found.next();
    plain += code.mid(at, match.capturedStart() - at);
    if (match.captured().startsWith('"')) plain += match.captured();
    at = match.capturedEnd();
  }
  return plain + code.mid(at);
}

/// The arguments of a call whose opening bracket stands at `open`, split at the commas of its own level.
QStringList argumentsAt(const QString& code, qsizetype open) {
  QStringList all;
  QString one;
  int depth = 0;
  for (qsizetype i = open; i < code.size(); ++i) {
    const QChar c = code[i];
    if (c == '"') {
      const qsizetype begin = i;
      for (++i; i < code.size() && code[i] != '"'; ++i)
        if (code[i] == '\\') ++i;
      one += code.mid(begin, i - begin + 1);
      continue;
    }
    if (c == '(' || c == '{' || c == '[') ++depth;
    if (c == ')' || c == '}' || c == ']') --depth;
    if (depth == 0) break;
    if (depth == 1 && c == ',') {
      all << one.simplified();
      one.clear();
    } else if (!(depth == 1 && i == open)) {
      one += c;
    }
  }
  if (!one.simplified().isEmpty() || !all.isEmpty()) all << one.simplified();
  return all;
}

bool isLiteral(QString text) {
  static const QRegularExpression literal(
      "\"(?:[^\"\\\\]|\\\\.)*\"|\\b[A-Z][A-Z0-9_]+\\b");  // a macro beside a literal is one
  return text.contains(literal) && text.remove(literal).simplified().isEmpty();
}

/// Empty where the text that is run is the program's own.
QString minded(const QString& expression) {
  if (isLiteral(expression) || kPassedOn.contains(expression)) return {};
  static const QRegularExpression either("^.*?\\?\\s*(\".*\")\\s*:\\s*(\".*\")$",
                                         QRegularExpression::DotMatchesEverythingOption);
  if (const auto choice = either.match(expression);
      choice.hasMatch() && isLiteral(choice.captured(1)) && isLiteral(choice.captured(2)))
    return {};
  if (!expression.startsWith("fmt::format(")) return expression;
  const QStringList parts = argumentsAt(expression, expression.indexOf('('));
  if (parts.isEmpty() || !isLiteral(parts.front())) return expression;
  for (const QString& part : parts.mid(1))
    if (!part.startsWith("sqlName(") && !kNamesOnly.contains(part)) return part + " in " + expression;
  return {};
}

struct Call {
  QRegularExpression opening;  ///< up to and with its bracket
  qsizetype sqlAt;             ///< which argument is SQL
};

const QList<Call>& calls() {
  static const QList<Call> all{
      {QRegularExpression("\\b(?:exec|tryExec|execAndGet)\\("), 0},
      {QRegularExpression("SQLite::Statement(?:\\s+\\w+)?\\((?=\\s*[\\w.>()-]+,)"), 1},
      {QRegularExpression("\\b(?:insert|owner|ownerOfWhole)\\.emplace\\("), 1},
      {QRegularExpression("\\bask\\("), 1},
      {QRegularExpression("\\bchange\\("), 1},
      {QRegularExpression("\\.statement\\("), 0},
  };
  return all;
}

QStringList mindedIn(const QString& code, int& seen) {
  QStringList all;
  for (const Call& call : calls()) {
    for (auto found = call.opening.globalMatch(code); found.hasNext();) {
      const QStringList given = argumentsAt(code, found.next().capturedEnd() - 1);
      if (given.size() <= call.sqlAt) continue;                                              // exec() of a prepared one
      if (given[call.sqlAt].startsWith("const ") || given.front().contains("& ")) continue;  // a declaration
      ++seen;
      if (const QString what = minded(given[call.sqlAt]); !what.isEmpty()) all << what;
    }
  }
  return all;
}

}  // namespace

class BoundSql : public QObject {
  Q_OBJECT
 private slots:
  void everyTextThatIsRunIsTheProgramsOwn() {
    int seen = 0;
    QStringList complaints;
    const QDir room(OHMKIN_PROJECT "/src/catalog");
    for (const QString& name : room.entryList({"*.cpp", "*.h"})) {
      QFile file(room.filePath(name));
      QVERIFY(file.open(QIODevice::ReadOnly));
      for (const QString& what : mindedIn(withoutComments(QString::fromUtf8(file.readAll())), seen))
        complaints << name + ": " + what;
    }
    for (const QString& complaint : complaints) qWarning("%s", qPrintable(complaint));
    QVERIFY2(complaints.isEmpty(), "SQL built of something that is not a name; bind values, or list it above");
    QVERIFY2(seen > 100, qPrintable(QString::number(seen)));  // it does look at the statements there are
  }

  void whatIsBuiltOfValuesIsFound_data() {
    QTest::addColumn<QString>("code");
    QTest::addColumn<bool>("isMinded");
    QTest::newRow("literal") << "database.exec(\"DELETE FROM t\");" << false;
    QTest::newRow("two literals") << "ask(catalogue, \"SELECT a \" \"FROM t WHERE b = ?\", read, b);" << false;
    QTest::newRow("a name") << "database.exec(fmt::format(\"DELETE FROM {}\", sqlName(table)));" << false;
    QTest::newRow("joined by plus") << "database.exec(\"DELETE FROM t WHERE id = '\" + id + \"'\");" << true;
    QTest::newRow("formatted value") << "database.exec(fmt::format(\"DELETE FROM t WHERE id = '{}'\", id));" << true;
    QTest::newRow("variable") << "SQLite::Statement asked(database, text);" << true;
    QTest::newRow("in a question") << "ask(catalogue, (\"SELECT \" + what).c_str(), read);" << true;
    QTest::newRow("in a change") << "change(connection, text.c_str(), 1);" << true;
  }
  void whatIsBuiltOfValuesIsFound() {
    QFETCH(QString, code);
    QFETCH(bool, isMinded);
    int seen = 0;
    QCOMPARE(!mindedIn(code, seen).isEmpty(), isMinded);
    QCOMPARE(seen, 1);
  }
};

QTEST_APPLESS_MAIN(BoundSql)
#include "tst_bound_sql.moc"
