#include <fault/chain_symbols.h>
#include <fault/opened_chain.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>

namespace ohmkin::fault {
namespace {

using look::colour;
using look::Paint;
using look::Text;
using look::typeface;
double gap(double n) { return look::space(n); }
double line() { return look::metrics(Text::small).lineSpacing(); }

constexpr int kNameLines = 2;

/// What stands where: an upper row from the battery to the engine, under it the ways back to ground.
struct Zone {
  const char* title;
  std::vector<Place> upper;
  std::vector<std::optional<Place>> lower;  ///< as many as the upper
};

std::vector<Zone> zonesOf(const OpenedCircuit& circuit) {
  std::vector<Zone> zones{{QT_TRANSLATE_NOOP("ohmkin::fault::OpenedChain", "Battery and body"),
                           {Place::battery, Place::keySwitch, Place::fuse, Place::feed},
                           {std::nullopt, std::nullopt, Place::bodyGround, Place::clusterGround}},
                          {QT_TRANSLATE_NOOP("ohmkin::fault::OpenedChain", "Dash"),
                           {Place::feedPin, Place::gauge, Place::leadPin},
                           {Place::groundPin, Place::groundCoil, std::nullopt}},
                          {QT_TRANSLATE_NOOP("ohmkin::fault::OpenedChain", "Lead"), {Place::lead}, {std::nullopt}},
                          {QT_TRANSLATE_NOOP("ohmkin::fault::OpenedChain", "Engine"),
                           {Place::connector, Place::sender, Place::thread},
                           {std::nullopt, Place::strap, Place::block}}};
  if (circuit.regulated) {
    zones[1].upper = {Place::feedPin, Place::regulator, Place::gauge, Place::leadPin};
    zones[1].lower = {Place::groundPin, std::nullopt, std::nullopt, std::nullopt};
  }
  return zones;
}

/// Whether something that is not there in a good circuit has to be shown.
bool shows(const PartMark& mark) { return mark.examined || !mark.likelihood.isEmpty(); }

/// Everything's place in a width.
class Plan {
 public:
  Plan(const OpenedCircuit& circuit, double width) : circuit_(circuit), zones_(zonesOf(circuit)) {
    std::size_t columns = 0;
    for (const Zone& zone : zones_) columns += zone.upper.size();
    gap_ = gap(10);
    column_ = (width - gap_ * static_cast<double>(zones_.size() - 1)) / static_cast<double>(columns);
    double x = 0;
    for (const Zone& zone : zones_) {
      const double wide = column_ * static_cast<double>(zone.upper.size());
      cards_.emplace_back(x, 0, wide, height());
      for (std::size_t i = 0; i < zone.upper.size(); ++i) {
        const double middle = x + column_ * (static_cast<double>(i) + 0.5);
        centre(zone.upper[i]) = QPointF(middle, upper());
        if (zone.lower[i]) centre(*zone.lower[i]) = QPointF(middle, lower());
      }
      x += wide + gap_;
    }
    const auto gauge = *at(Place::gauge);
    if (circuit.feedShunt) centre(Place::feedShunt) = gauge - QPointF(0, gap(24));
    if (circuit.groundShunt) centre(Place::groundShunt) = QPointF(gauge.x(), lower() - gap(24));
    if (shows(circuit.at(Place::boardLeak)))
      centre(Place::boardLeak) = QPointF(gauge.x(), upper() - gap(circuit.feedShunt ? 48 : 24));
    if (shows(circuit.at(Place::leadToChassis)))
      centre(Place::leadToChassis) = QPointF(at(Place::lead)->x(), lower() - gap(4));
  }

  [[nodiscard]] std::optional<QPointF> at(Place place) const { return centres_[static_cast<std::size_t>(place)]; }
  [[nodiscard]] const std::vector<Zone>& zones() const { return zones_; }
  [[nodiscard]] const std::vector<QRectF>& cards() const { return cards_; }
  [[nodiscard]] double column() const { return column_; }
  [[nodiscard]] double head() const { return gap(10) + line(); }
  [[nodiscard]] double above() const {
    return gap(34) + (circuit_.feedShunt ? gap(22) : 0) + (shows(circuit_.at(Place::boardLeak)) ? gap(22) : 0);
  }
  [[nodiscard]] double below() const { return gap(14) + (kNameLines + 1) * line(); }
  [[nodiscard]] double upper() const { return head() + above(); }
  [[nodiscard]] double lower() const { return upper() + below() + gap(40) + (circuit_.groundShunt ? gap(24) : 0); }
  [[nodiscard]] double height() const { return lower() + below() + gap(8); }
  /// Symbol and words.
  [[nodiscard]] QRectF box(Place place) const {
    const auto c = at(place);
    if (!c) return {};
    if (place == Place::feedShunt || place == Place::groundShunt || place == Place::boardLeak)
      return {c->x() - column_ / 2, c->y() - gap(9), column_, gap(18)};
    return {c->x() - column_ / 2, c->y() - gap(16), column_, gap(16) + below()};
  }

 private:
  std::optional<QPointF>& centre(Place place) { return centres_[static_cast<std::size_t>(place)]; }
  const OpenedCircuit& circuit_;
  std::vector<Zone> zones_;
  std::vector<QRectF> cards_;
  std::array<std::optional<QPointF>, kPlaces> centres_;
  double column_ = 0;
  double gap_ = 0;
};

class Drawing {
 public:
  Drawing(QPainter& painter, const OpenedCircuit& circuit, const Plan& plan)
      : painter_(painter), circuit_(circuit), plan_(plan) {}

  void cards() {
    for (std::size_t i = 0; i < plan_.cards().size(); ++i) {
      painter_.setPen(QPen(colour(Paint::line), 1));
      painter_.setBrush(colour(Paint::panel));
      painter_.drawRoundedRect(plan_.cards()[i].adjusted(0.5, 0.5, -0.5, -0.5), look::cornerRadius(),
                               look::cornerRadius());
      const QRectF title = plan_.cards()[i].adjusted(gap(12), gap(8), -gap(8), 0);
      parts::drawWords(painter_, QRectF(title.topLeft(), QSizeF(title.width(), line())),
                       OpenedChain::tr(plan_.zones()[i].title), typeface(Text::small), colour(Paint::quiet), 1);
    }
  }

  /// Neighbours that the test in hand looks at stand in one frame with the word on it.
  void examined() {
    for (const bool lower : {false, true}) {
      for (const Zone& zone : plan_.zones()) {
        std::optional<QRectF> run;
        for (std::size_t i = 0; i < zone.upper.size(); ++i) {
          const std::optional<Place> place = lower ? zone.lower[i] : std::optional(zone.upper[i]);
          if (place && looksAt(*place)) {
            run = run ? run->united(frameOf(*place)) : frameOf(*place);
            continue;
          }
          if (run) frame(*run);
          run.reset();
        }
        if (run) frame(*run);
      }
    }
    if (circuit_.at(Place::leadToChassis).examined) frame(frameOf(Place::leadToChassis));
  }

  void wires() {
    ink(Qt::SolidLine);
    const QPointF battery = *plan_.at(Place::battery);
    QPointF last = battery;
    double half = symbolHalf(Place::battery);
    for (const Zone& zone : plan_.zones())
      for (const Place place : zone.upper) {
        if (place == Place::battery) continue;
        const QPointF here = *plan_.at(place);
        painter_.drawLine(QPointF(last.x() + half, last.y()), QPointF(here.x() - symbolHalf(place), here.y()));
        last = here;
        half = symbolHalf(place);
      }
    const double left = battery.x() - plan_.column() / 2 + gap(14);
    painter_.drawLine(QPointF(battery.x() - symbolHalf(Place::battery), battery.y()), QPointF(left, battery.y()));
    painter_.drawLine(QPointF(left, battery.y()), QPointF(left, battery.y() + gap(4)));
    drawChassis(painter_, QPointF(left, battery.y() + gap(4)));
    engineReturn(last, half);
    gaugeReturn();
    branches();
  }

  void parts() {
    for (std::size_t i = 0; i < kPlaces; ++i) {
      const auto place = static_cast<Place>(i);
      if (const auto centre = plan_.at(place)) part(place, *centre);
    }
  }

 private:
  void ink(Qt::PenStyle style) {
    painter_.setPen(QPen(colour(Paint::ink), wireWidth(), style, Qt::RoundCap, Qt::RoundJoin));
    painter_.setBrush(Qt::NoBrush);
  }
  [[nodiscard]] bool looksAt(Place place) const {
    if (place == Place::gauge && (circuit_.at(Place::feedShunt).examined || circuit_.at(Place::boardLeak).examined))
      return true;
    if (place == Place::groundCoil && circuit_.at(Place::groundShunt).examined) return true;
    return circuit_.at(place).examined;
  }
  [[nodiscard]] QRectF frameOf(Place place) const {
    QRectF box = plan_.box(place).adjusted(0, -gap(4) - line(), 0, 0);
    if (place == Place::gauge && circuit_.at(Place::feedShunt).examined) box.setTop(box.top() - gap(20));
    if (place == Place::gauge && circuit_.at(Place::boardLeak).examined) box.setTop(box.top() - gap(20));
    if (place == Place::groundCoil && circuit_.at(Place::groundShunt).examined) box.setTop(box.top() - gap(20));
    return box.adjusted(gap(3), 0, -gap(3), gap(2));
  }
  void frame(const QRectF& box) {
    painter_.setPen(QPen(colour(Paint::accent), 1.5));
    painter_.setBrush(colour(Paint::accentWash));
    painter_.drawRoundedRect(box, gap(6), gap(6));
    QFont bold = typeface(Text::small);
    bold.setWeight(QFont::DemiBold);
    parts::drawWords(painter_, QRectF(box.left() + gap(6), box.top() + gap(2), box.width() - gap(8), line()),
                     OpenedChain::tr("test"), bold, colour(Paint::accent), 1);
  }

  void engineReturn(const QPointF& thread, double half) {
    const QPointF block = *plan_.at(Place::block);
    const QPointF strap = *plan_.at(Place::strap);
    const double right = thread.x() + plan_.column() / 2 - gap(8);
    painter_.drawPolyline(
        QPolygonF({QPointF(thread.x() + half, thread.y()), QPointF(right, thread.y()), QPointF(right, block.y()),
                   QPointF(block.x() + symbolHalf(Place::block), block.y())}));
    painter_.drawLine(QPointF(block.x() - symbolHalf(Place::block), block.y()),
                      QPointF(strap.x() + symbolHalf(Place::strap), strap.y()));
    const QPointF end(plan_.at(Place::connector)->x() + gap(6), strap.y());
    painter_.drawLine(QPointF(strap.x() - symbolHalf(Place::strap), strap.y()), end);
    painter_.drawLine(end, end + QPointF(0, gap(10)));
    drawChassis(painter_, end + QPointF(0, gap(10)));
  }

  void gaugeReturn() {
    ink(Qt::SolidLine);
    const QPointF pin = *plan_.at(Place::groundPin);
    QPointF from = pin;
    if (const auto coil = plan_.at(Place::groundCoil)) {
      const double post = postX();
      painter_.drawPolyline(QPolygonF({QPointF(post, plan_.upper()), QPointF(post, plan_.lower()),
                                       QPointF(coil->x() + symbolHalf(Place::groundCoil), coil->y())}));
      node({post, plan_.upper()});
      ink(Qt::SolidLine);
      from = *coil - QPointF(symbolHalf(Place::groundCoil), 0);
    } else if (const auto regulator = plan_.at(Place::regulator)) {
      // Between the words of the two rows: the housing's own way to ground.
      const double x = regulator->x() - plan_.column() / 2 + gap(4);
      from = QPointF(x, pin.y());
      painter_.drawPolyline(QPolygonF({QPointF(regulator->x() - gap(10), regulator->y() + gap(9)),
                                       QPointF(regulator->x() - gap(10), regulator->y() + gap(12)),
                                       QPointF(x, regulator->y() + gap(12)), from}));
    }
    for (const Place place : {Place::groundPin, Place::clusterGround, Place::bodyGround}) {
      const QPointF here = *plan_.at(place);
      painter_.drawLine(from, QPointF(here.x() + symbolHalf(place), here.y()));
      from = QPointF(here.x() - symbolHalf(place), here.y());
    }
    const QPointF end(plan_.at(Place::keySwitch)->x() + gap(10), from.y());
    painter_.drawLine(from, end);
    painter_.drawLine(end, end + QPointF(0, gap(10)));
    drawChassis(painter_, end + QPointF(0, gap(10)));
  }

  void branches() {
    for (const Place place : {Place::feedShunt, Place::groundShunt, Place::boardLeak}) {
      const auto at = plan_.at(place);
      if (!at) continue;
      const bool low = place == Place::groundShunt;
      const bool leak = place == Place::boardLeak;
      const double y = low ? plan_.lower() : plan_.upper();
      const double reach = leak ? plan_.column() * 0.72 : gap(26);
      ink(leak ? Qt::DashLine : Qt::SolidLine);
      painter_.drawPolyline(QPolygonF(
          {QPointF(at->x() - reach, y), QPointF(at->x() - reach, at->y()), QPointF(at->x() - gap(14), at->y())}));
      painter_.drawPolyline(QPolygonF(
          {QPointF(at->x() + gap(14), at->y()), QPointF(at->x() + reach, at->y()), QPointF(at->x() + reach, y)}));
      node({at->x() - reach, y});
      node({at->x() + reach, y});
    }
    if (const auto chassis = plan_.at(Place::leadToChassis)) {
      ink(Qt::DashLine);
      const double x = chassis->x() - plan_.column() / 2 + gap(10);
      painter_.drawPolyline(QPolygonF({QPointF(x, plan_.upper()), QPointF(x, chassis->y()), *chassis,
                                       *chassis + QPointF(gap(18), 0), *chassis + QPointF(gap(18), gap(5))}));
      drawChassis(painter_, *chassis + QPointF(gap(18), gap(6)));
    }
  }

  /// The gauge's sender post.
  [[nodiscard]] double postX() const { return plan_.at(Place::gauge)->x() + plan_.column() / 2 + gap(2); }
  void node(const QPointF& at) {
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(colour(Paint::ink));
    painter_.drawEllipse(at, gap(2.5), gap(2.5));
  }

  void part(Place place, const QPointF& centre) {
    const PartMark& mark = circuit_.at(place);
    drawSymbol(painter_, centre, place, circuit_.regulated, mark.suspicion);
    if (!mark.likelihood.isEmpty())
      drawLikelihood(painter_, centre + QPointF(symbolHalf(place) + gap(7), -gap(9)), gap(4.5), mark.suspicion);
    if (place == Place::feedShunt || place == Place::groundShunt || place == Place::boardLeak) return;
    const double half = plan_.column() / 2 - gap(2);
    QRectF words(centre.x() - half, centre.y() + gap(13), 2 * half, kNameLines * line());
    // The way down from the gauge's post passes here.
    const double used = parts::drawWords(painter_, words, mark.name, typeface(Text::small), colour(Paint::ink),
                                         kNameLines, Qt::AlignHCenter);
    if (mark.likelihood.isEmpty()) return;
    QFont bold = typeface(Text::small);
    bold.setWeight(QFont::DemiBold);
    parts::drawWords(painter_, QRectF(words.left(), words.top() + used, words.width(), line()), mark.likelihood, bold,
                     colour(Paint::warning), 1, Qt::AlignHCenter);
  }

  QPainter& painter_;
  const OpenedCircuit& circuit_;
  const Plan& plan_;
};

}  // namespace

OpenedChain::OpenedChain(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setFocusPolicy(Qt::TabFocus);  // so that a screen reader comes by; there is nothing to press
  setAccessibleName(tr("The circuit, from the battery to the engine"));
}

void OpenedChain::display(const OpenedCircuit& circuit) {
  if (circuit == circuit_) return;
  circuit_ = circuit;
  QStringList looked;
  QStringList suspected;
  for (const PartMark& mark : circuit.places) {
    if (mark.examined) looked << mark.name;
    if (!mark.likelihood.isEmpty()) suspected << mark.name + QStringLiteral(": ") + mark.likelihood;
  }
  QStringList all;
  if (!looked.isEmpty()) all << tr("This test looks at: %1.").arg(looked.join(QStringLiteral(", ")));
  if (!suspected.isEmpty()) all << tr("Suspected: %1.").arg(suspected.join(QStringLiteral("; ")));
  setAccessibleDescription(all.join(QLatin1Char(' ')));
  updateGeometry();
  update();
}

QSize OpenedChain::sizeHint() const {
  return {static_cast<int>(gap(1000)), static_cast<int>(Plan(circuit_, gap(1000)).height()) + 1};
}

QSize OpenedChain::minimumSizeHint() const { return {static_cast<int>(gap(720)), sizeHint().height()}; }

QRectF OpenedChain::boxOf(Place place) const { return Plan(circuit_, width()).box(place); }

void OpenedChain::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Plan plan(circuit_, width());
  Drawing drawing(painter, circuit_, plan);
  drawing.cards();
  drawing.examined();
  drawing.wires();
  drawing.parts();
  if (hasFocus()) look::drawFocusRing(painter, rect(), look::cornerRadius());
}

bool OpenedChain::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  const auto* help = static_cast<QHelpEvent*>(event);  // NOLINT: the type was looked at
  const Plan plan(circuit_, width());
  for (std::size_t i = kPlaces; i-- > 0;) {
    const PartMark& mark = circuit_.places[i];
    if (!plan.box(static_cast<Place>(i)).contains(help->pos())) continue;
    QStringList words{mark.name};
    if (!mark.likelihood.isEmpty()) words << mark.likelihood;
    if (mark.examined) words << tr("looked at by this test");
    QToolTip::showText(help->globalPos(), parts::plainTip(words.join(QStringLiteral(", "))), this);
    return true;
  }
  QToolTip::hideText();
  return true;
}

}  // namespace ohmkin::fault
