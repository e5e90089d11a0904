#include <gauge/draw_dial.h>
#include <QTest>
#include <QXmlStreamReader>
#include <limits>
#include <numbers>

using namespace ohmkin;
using namespace ohmkin::gauge;

namespace {

struct Element {
  QString name;
  QString what;  ///< its class
  QXmlStreamAttributes with;
  QString text;
  [[nodiscard]] double number(const char* attribute) const { return with.value(QLatin1String(attribute)).toDouble(); }
};

/// Every element of the drawing; none where it is not well-formed XML. Read by Qt's parser, not by ours.
std::vector<Element> parsed(const std::string& svg) {
  std::vector<Element> elements;
  QXmlStreamReader reader(QString::fromStdString(svg));
  while (!reader.atEnd()) {
    if (reader.readNext() == QXmlStreamReader::StartElement)
      elements.push_back(
          {reader.name().toString(), reader.attributes().value("class").toString(), reader.attributes(), {}});
    else if (reader.isCharacters() && !reader.isWhitespace() && !elements.empty())
      elements.back().text += reader.text().toString();
  }
  return reader.hasError() ? std::vector<Element>() : elements;
}

std::vector<Element> those(const std::string& svg, const QString& name, const QString& what) {
  std::vector<Element> out;
  for (const Element& e : parsed(svg))
    if (e.name == name && e.what.startsWith(what)) out.push_back(e);
  return out;
}

Dial dial() {
  return *Dial::make({{MarkKind::cold, "C", std::nullopt, {-45}},
                      {MarkKind::normalLow, "80", celsius(80), {-5}},
                      {MarkKind::tick, "", celsius(90), {8.25}},
                      {MarkKind::normalHigh, "", celsius(95), {15}},
                      {MarkKind::hot, "110", celsius(110), {38}}},
                     {-52}, {50});
}

double angleOf(double x, double y) { return std::atan2(x, -y) * 180 / std::numbers::pi; }

}  // namespace

class TestDrawDial : public QObject {
  Q_OBJECT
 private slots:
  void one_user_unit_is_one_millimetre() {
    const auto svg = drawDial(dial(), {});
    const Element root = parsed(*svg).front();
    const QStringList box = root.with.value("viewBox").toString().split(' ');
    QCOMPARE(root.with.value("width").toString(), box[2] + "mm");
    QCOMPARE(root.with.value("height").toString(), box[3] + "mm");
  }

  void every_mark_stands_at_its_angle_and_ends_at_the_radius() {
    for (const double radius : {22.5, 40.0, 75.0}) {
      const auto svg = drawDial(dial(), {.radius = radius, .lettering = 3, .title = {}, .notes = {}});
      const auto marks = those(*svg, "line", "mark");
      QCOMPARE(marks.size(), dial().marks().size());
      for (std::size_t i = 0; i < marks.size(); ++i) {
        const double x = marks[i].number("x1");
        const double y = marks[i].number("y1");
        QVERIFY(std::abs(std::hypot(x, y) - radius) < 1e-3);
        QVERIFY(std::abs(angleOf(x, y) - dial().marks()[i].angle.degrees) < 1e-3);
        QVERIFY(std::abs(angleOf(marks[i].number("x2"), marks[i].number("y2")) - dial().marks()[i].angle.degrees) <
                1e-3);
      }
    }
  }

  void the_ruler_is_fifty_millimetres_with_a_line_each() {
    const auto ruler = those(*drawDial(dial(), {}), "line", "ruler");
    QCOMPARE(ruler.size(), std::size_t(52));
    QVERIFY(std::abs(ruler.back().number("x2") - ruler.back().number("x1") - 50) < 1e-9);
    QVERIFY(std::abs(ruler[50].number("x1") - ruler[0].number("x1") - 50) < 1e-9);
  }

  void the_hot_field_reaches_from_the_hot_mark_to_the_stop() {
    const auto field = those(*drawDial(dial(), {}), "path", "hot-field");
    QCOMPARE(field.size(), std::size_t(1));
    const QStringList way = field.front().with.value("d").toString().mid(1).replace('A', ' ').simplified().split(' ');
    QVERIFY(std::abs(angleOf(way[0].toDouble(), way[1].toDouble()) - 38) < 1e-2);
    QVERIFY(std::abs(angleOf(way[way.size() - 2].toDouble(), way.back().toDouble()) - 50) < 1e-2);
    QCOMPARE(those(*drawDial(dial(), {}), "path", "normal-field").size(), std::size_t(1));
  }

  void stops_and_pivot_are_there_to_lay_it_on() {
    const auto stops = those(*drawDial(dial(), {}), "circle", "stop");
    QCOMPARE(stops.size(), std::size_t(2));
    QVERIFY(std::abs(angleOf(stops[0].number("cx"), stops[0].number("cy")) + 52) < 1e-2);
    const auto pivot = those(*drawDial(dial(), {}), "line", "pivot");
    QCOMPARE(pivot[0].number("x1") + pivot[0].number("x2"), 0.0);
  }

  void a_number_is_never_parted_from_its_unit() {
    const auto notes = those(*drawDial(dial(), {}), "text", "note");
    QVERIFY(!notes.empty());
    for (const auto& line : notes) QVERIFY2(!line.text.startsWith('%'), qPrintable(line.text));
    QVERIFY(std::any_of(notes.begin(), notes.end(),
                        [](const Element& line) { return line.text.contains(QString::fromUtf8("100\u00a0%")); }));
  }

  void everything_lies_on_the_paper() {
    for (const auto& [low, high] : {std::pair{-52.0, 50.0}, {-140.0, 140.0}}) {
      const auto wide = Dial::make(dial().marks(), {low}, {high});
      const auto svg = drawDial(*wide, {.radius = 60, .lettering = 6, .title = "T", .notes = {"one", "two"}});
      const QStringList box = parsed(*svg).front().with.value("viewBox").toString().split(' ');
      const double left = box[0].toDouble();
      const double top = box[1].toDouble();
      for (const Element& e : parsed(*svg)) {
        if (e.name == "rect") continue;
        for (const char* x : {"x", "x1", "x2", "cx"})
          if (e.with.hasAttribute(x)) QVERIFY(e.number(x) >= left && e.number(x) <= left + box[2].toDouble());
        for (const char* y : {"y", "y1", "y2", "cy"})
          if (e.with.hasAttribute(y)) QVERIFY(e.number(y) >= top && e.number(y) <= top + box[3].toDouble());
      }
    }
  }

  void text_is_printed_as_it_is_whatever_is_in_it() {
    std::vector<Mark> marks = dial().marks();
    marks.back().text = "<H> & \"hot\" 'n'\x01 ü";
    const auto svg = drawDial(*Dial::make(marks, {-52}, {50}), {.title = "</svg><script>", .notes = {"a < b"}});
    const auto figures = those(*svg, "text", "figure");
    QCOMPARE(figures.back().text, QString("<H> & \"hot\" 'n'  ü"));
    QCOMPARE(those(*svg, "text", "title").front().text, QString("</svg><script>"));
    QCOMPARE(those(*svg, "text", "note").back().text, QString("a < b"));
    QVERIFY(those(*svg, "script", "").empty());
  }

  void what_cannot_be_drawn_is_refused() {
    QCOMPARE(drawDial(dial(), {.radius = 5}).error().code, std::string("dial-radius"));
    QCOMPARE(drawDial(dial(), {.radius = 500}).error().code, std::string("dial-radius"));
    QCOMPARE(drawDial(dial(), {.radius = std::numeric_limits<double>::quiet_NaN()}).error().code,
             std::string("dial-radius"));
    QCOMPARE(drawDial(dial(), {.lettering = 0}).error().code, std::string("dial-lettering"));
  }
};

QTEST_APPLESS_MAIN(TestDrawDial)
#include "tst_draw_dial.moc"
