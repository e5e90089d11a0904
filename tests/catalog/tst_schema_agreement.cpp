#include "small_catalogue.h"

#include <catalog/table_shape.h>
#include <embedded/ohmkin_tables.h>
#include <QtTest>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

using namespace ohmkin;
using nlohmann::json;

/// schema/catalogue-tables.json is what packages are checked against, the SQL what the catalogue holds: one must not
/// drift from the other.
class SchemaAgreementTest : public QObject {
  Q_OBJECT
 private slots:
  void initTestCase();
  void bothHaveTheSameTables();
  void columnsTypesAndRequirementsAgree();
  void keysAndReferencesAgree();
  void whatIsReferredToComesFirst();
  void enumeratedWordsAreTheOnesTheTablesAllow();
  void boundsAreTheOnesTheTablesAllow();

 private:
  std::unique_ptr<test::Folder> folder_;
  std::optional<catalog::Catalogue> catalogue_;
  std::map<std::string, catalog::TableShape> sql_;
  json document_;
};

void SchemaAgreementTest::initTestCase() {
  folder_ = std::make_unique<test::Folder>();
  catalogue_.emplace(catalog::Catalogue::create(folder_->path("a.ohmkin")));
  for (auto& table : catalog::packTables(catalogue_->connection().database())) sql_.emplace(table.name, table);
  document_ = json::parse(tables::files().front().text);
}

void SchemaAgreementTest::bothHaveTheSameTables() {
  std::set<std::string> inSql;
  std::set<std::string> inJson;
  for (const auto& [name, shape] : sql_) inSql.insert(name);
  for (const auto& table : document_["tables"]) QVERIFY(inJson.insert(table["name"].get<std::string>()).second);
  QVERIFY(inSql == inJson);
  QVERIFY(inSql.size() > 20);
}

void SchemaAgreementTest::columnsTypesAndRequirementsAgree() {
  const std::map<std::string, std::string> types{
      {"string", "TEXT"}, {"date", "TEXT"}, {"number", "REAL"}, {"integer", "INTEGER"}, {"boolean", "INTEGER"}};
  for (const auto& table : document_["tables"]) {
    std::vector<catalog::ColumnShape> expected;
    for (const auto& column : sql_.at(table["name"]).columns)
      if (column.name != "pack" && !(table["name"] == "original_sender" && column.name == "id"))
        expected.push_back(column);
    const auto& fields = table["schema"]["fields"];
    QCOMPARE(fields.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
      const std::string label = table["name"].get<std::string>() + "." + expected[i].name;
      QVERIFY2(fields[i]["name"] == expected[i].name, label.c_str());
      QVERIFY2(types.at(fields[i]["type"]) == expected[i].type, label.c_str());
      const bool hasDefault = !std::holds_alternative<std::monostate>(expected[i].absent);
      const bool required = fields[i].value("constraints", json::object()).value("required", false);
      QVERIFY2(required == (expected[i].required && !hasDefault), label.c_str());
    }
  }
}

void SchemaAgreementTest::keysAndReferencesAgree() {
  for (const auto& table : document_["tables"]) {
    const auto& shape = sql_.at(table["name"]);
    QVERIFY2(table["schema"]["primaryKey"].get<std::vector<std::string>>() == shape.key, shape.name.c_str());
    std::set<std::vector<std::string>> inSql;
    std::set<std::vector<std::string>> inJson;
    for (const auto& reference : shape.references)
      if (reference.table != "pack") inSql.insert({reference.column, reference.table, reference.refersTo});
    for (const auto& reference : table["schema"].value("foreignKeys", json::array()))
      inJson.insert(std::vector<std::string>{reference["fields"].get<std::string>(),
                                             reference["reference"]["resource"].get<std::string>(),
                                             reference["reference"]["fields"].get<std::string>()});
    QVERIFY2(inSql == inJson, shape.name.c_str());
  }
}

void SchemaAgreementTest::whatIsReferredToComesFirst() {
  std::set<std::string> seen;
  for (const auto& table : document_["tables"]) {
    for (const auto& reference : table["schema"].value("foreignKeys", json::array()))
      QVERIFY(seen.contains(reference["reference"]["resource"].get<std::string>()));
    seen.insert(table["name"].get<std::string>());
  }
}

/// The CHECK of each column is in the text of its table; every word must be in both.
void SchemaAgreementTest::enumeratedWordsAreTheOnesTheTablesAllow() {
  int compared = 0;
  for (const auto& table : document_["tables"]) {
    SQLite::Statement asked(catalogue_->connection().database(), "SELECT sql FROM sqlite_schema WHERE name = ?");
    asked.bind(1, table["name"].get<std::string>());
    QVERIFY(asked.executeStep());
    const QString sql = QString::fromStdString(asked.getColumn(0).getString());
    for (const auto& field : table["schema"]["fields"]) {
      const QString name = QString::fromStdString(field["name"]);
      const auto match = QRegularExpression("CHECK \\(" + name + " IN \\(([^)]*)\\)\\)").match(sql);
      const auto words = field.value("constraints", json::object()).value("enum", json::array());
      if (field["type"] == "boolean") continue;
      QVERIFY2(match.hasMatch() == !words.empty(), qPrintable(name));
      QStringList inSql = match.captured(1).split(',', Qt::SkipEmptyParts);
      for (QString& word : inSql) word = word.simplified().remove('\'');
      QStringList inJson;
      for (const auto& word : words)
        inJson << QString::fromStdString(word.is_string() ? word.get<std::string>() : word.dump());
      QCOMPARE(inJson, inSql);
      compared += static_cast<int>(inSql.size());
    }
  }
  QVERIFY(compared > 50);
}

void SchemaAgreementTest::boundsAreTheOnesTheTablesAllow() {
  int compared = 0;
  for (const auto& table : document_["tables"]) {
    const std::string sql =
        catalogue_->connection()
            .database()
            .execAndGet("SELECT sql FROM sqlite_schema WHERE name = '" + table["name"].get<std::string>() + "'")
            .getString();
    for (const auto& field : table["schema"]["fields"]) {
      const QString name = QString::fromStdString(field["name"]);
      const auto bounds = field.value("constraints", json::object());
      const QString text = QString::fromStdString(sql);
      const auto check = [&](const QString& pattern, const char* key) {
        const auto match = QRegularExpression("CHECK \\(" + name + pattern).match(text);
        if (!match.hasMatch()) return true;
        ++compared;
        return bounds.contains(key) && bounds[key].get<double>() == match.captured(1).toDouble();
      };
      QVERIFY2(check(" > ([0-9.]+)[ )]", "exclusiveMinimum"), qPrintable(name));
      QVERIFY2(check(" >= ([0-9.]+)\\)", "minimum"), qPrintable(name));
      QVERIFY2(check(" BETWEEN ([0-9.]+) AND", "minimum"), qPrintable(name));
      QVERIFY2(check(" BETWEEN [0-9.]+ AND ([0-9.]+)", "maximum"), qPrintable(name));
    }
  }
  QVERIFY(compared > 20);
}

QTEST_APPLESS_MAIN(SchemaAgreementTest)
#include "tst_schema_agreement.moc"
