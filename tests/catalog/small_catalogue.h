#pragma once
#include <catalog/connection.h>
#include <catalog/migration.h>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>
#include <filesystem>
#include <string>

/// A folder for one test, and a catalogue written by hand in it. Every name in it is made up.
namespace ohmkin::test {

class Folder {
 public:
  [[nodiscard]] std::filesystem::path path(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  std::filesystem::path write(const std::string& name, const QByteArray& bytes) const {
    QFile file(folder_.filePath(QString::fromStdString(name)));
    if (!file.open(QIODevice::WriteOnly)) qFatal("cannot write");
    file.write(bytes);
    return path(name);
  }
  static QByteArray bytes(const std::filesystem::path& file) {
    QFile in(QString::fromStdString(file.string()));
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray("unreadable");
  }
  /// Names of all that lies in it.
  [[nodiscard]] QStringList names() const {
    return QDir(folder_.path())
        .entryList(QDir::AllEntries | QDir::NoDotAndDotDot | QDir::Hidden | QDir::System, QDir::Name);
  }

 private:
  QTemporaryDir folder_;
};

inline constexpr const char* kSmallCatalogue = R"sql(
INSERT INTO pack VALUES ('p', 'A pack', '1', '', '2020-01-01T00:00:00Z');
INSERT INTO source VALUES ('d', 'demo', 'made up', 0.5, 'p'), ('cp', 'common practice', '', 0.3, 'p');
INSERT INTO thread VALUES ('1/4-18 NPT', 'ASME B1.20.1', 'NPT', 60, 1.4111, 13.616, 1, 'd', 'p'), ('M12x1.5', 'ISO 261', 'M', 60, 1.5, 12, 0, 'd', 'p');
INSERT INTO terminal VALUES ('blade', 'blade 6.3 mm', 'blade', 6.3, 1, 'flat', 'd', 'p'), ('stud', 'stud 4 mm', 'stud', NULL, 1, 'a nut', 'd', 'p');
INSERT INTO pigtail VALUES ('PT-1', 'blade', 'stud', 'd', 'p');
INSERT INTO adapter VALUES ('AD-1', '1/4-18 NPT', 'M12x1.5', 6.5, 'd', 'p');
INSERT INTO family VALUES ('fa', 'Family A', 'coolant temperature', 'falling', 0.08, 700, 90, 20, 40, 100, 120, 'two numbers', 'cp', 'p'),
                          ('fb', 'Family B', 'coolant temperature', 'rising', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '', 'd', 'p');
INSERT INTO sender VALUES ('SN-10.1', 'first', 'variable sender', 'fa', '1/4-18 NPT', 'blade', 11, 17, 9, 13, 'case', 1960, 1970, 'd', 'p'),
                          ('SN-102', 'second', 'variable sender', 'fa', 'M12x1.5', 'stud', NULL, NULL, NULL, NULL, 'two-wire', NULL, NULL, 'd', 'p'),
                          ('SN-103', 'third', 'variable sender', 'fa', '1/4-18 NPT', 'stud', NULL, NULL, NULL, NULL, 'case', NULL, NULL, 'd', 'p'),
                          ('SW-1', 'switch', 'warning switch', NULL, '1/4-18 NPT', 'blade', NULL, NULL, NULL, NULL, 'case', NULL, NULL, 'd', 'p');
INSERT INTO curve VALUES ('ca', 'fa', NULL, '', 'table', '', '', 0.01, 20, 120, 'd', 'p'),
                         ('cl', NULL, 'SN-102', 'lot 7', 'steinhart-hart', '0.0012 2.4e-4 1E-7', '1 0 0  0 1 0 0 0 1', 0, 10, 110, 'd', 'p');
INSERT INTO sample VALUES ('ca', 2, 100, 95, 'cooling', 'p'), ('ca', 1, 20, 700, 'heating', 'p');
INSERT INTO stands_in_for VALUES ('SN-102', 'SN-10.1', '1972', 'd', 'p'), ('SN-103', 'SN-102', '1980', 'd', 'p'), ('SN-10.1', 'SN-103', '1990', 'd', 'p');
INSERT INTO gauge VALUES ('g1', 'Gauge one', 'fa', 'crossed coil', 50, -100, 120, 80, NULL, NULL, NULL, NULL, 'stays', NULL, -55, 55, 'd', 'p', 0.02, -60, 90);
INSERT INTO dial_mark VALUES ('g1', 2, 'hot', 'H', 120, 45, 'p'), ('g1', 1, 'cold', 'C', 40, -45, 'p');
INSERT INTO movement_point VALUES ('g1', 1, 0, 50, 'p');
INSERT INTO make VALUES ('mk', 'Tarn', 'p'), ('mo', 'Vell', 'p');
INSERT INTO vehicle_line VALUES ('l1', 'mk', 'Ridge', 'Ridge Half-Ton; R10;  Old Ridge', 1960, 1971, 12, 'negative', 'd', 'p'),
                                ('l2', 'mo', 'Ridge', '', 1955, 1960, 6, 'positive', 'd', 'p');
INSERT INTO cluster VALUES ('c1', 'l1', 'standard', 1960, 1968, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'a lamp', 'd', 'p'),
                           ('c2', 'l1', 'gauge package', 1967, 1968, NULL, '1967-02-01', NULL, 41200, 'g1', 'blade', 18, 2400, 'dial', 'd', 'p'),
                           ('c3', 'l1', 'gauge package', 1967, 1971, '1967-02-01', NULL, 41200, NULL, 'g1', 'stud', NULL, NULL, '', 'd', 'p');
INSERT INTO engine_family VALUES ('e1', 'mk', 'inline six', 82, 90, 'd', 'p');
INSERT INTO original_engine VALUES ('l1', 'e1', 1960, 1966, 'cp', 'p'), ('l1', 'e1', 1968, 1971, 'd', 'p');
INSERT INTO date_layout VALUES ('dl', 'letter first', 'head', 'H 22 1', '1971-08-22', 'd', 'p');
INSERT INTO date_field VALUES ('dl', 2, 'separator', ' ', 1, 'p'), ('dl', 1, 'month letter', '', 0, 'p'), ('dl', 3, 'day', '', 0, 'p');
INSERT INTO casting VALUES ('30-418 A', 'e1', 'head', 'only', '1960-06-01', '1971-07-01', 'dl', 'd', 'p'), ('99', 'e1', 'intake', 'left', '1959-01-01', '1960-01-01', NULL, 'd', 'p');
INSERT INTO port VALUES ('30-418 A', 'front of the head', '1/4-18 NPT', 20, 14, 'gauge sender', -2.5, 'd', 'p'), ('30-418 A', 'back of the head', 'M12x1.5', NULL, NULL, 'plug', NULL, 'd', 'p');
INSERT INTO original_sender (sender, line, engine, year_from, year_until, source, pack) VALUES ('SN-10.1', 'l1', 'e1', 1960, 1966, 'd', 'p');
INSERT INTO stock VALUES ('SN-10.1', 'A1', 2, 0, 'shop'), ('SN-10.1', 'B4', 5, 1, 'shop');
)sql";

/// A catalogue of the rows above.
inline catalog::Catalogue smallCatalogue(const std::filesystem::path& file) {
  return catalog::Catalogue::create(
      file, [](catalog::Catalogue& fresh) { fresh.connection().database().exec(kSmallCatalogue); });
}

}  // namespace ohmkin::test
