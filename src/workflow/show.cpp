#include <catalog/engines.h>
#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/joints.h>
#include <catalog/layouts.h>
#include <catalog/senders.h>
#include <catalog/shop.h>
#include <catalog/vehicles.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/show.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using catalog::Catalogue;
using catalog::SearchHit;

constexpr std::size_t kChoices = 5;

/// Collects what is said of one thing.
class Sheet {
 public:
  Sheet(ShownThing& thing, const DisplayUnits& units) : thing_(thing), units_(units) {}
  void fact(std::string label, std::string text) {
    if (!text.empty()) thing_.facts.push_back({std::move(label), std::move(text)});
  }
  template <class Quantity>
  void measure(const std::string& label, const std::optional<Quantity>& quantity) {
    if (quantity) fact(label, print(*quantity));
  }
  void list(std::string heading, std::vector<std::string> rows) {
    if (rows.empty()) return;
    const std::size_t total = rows.size();
    if (total > kMostShownRows) rows.resize(kMostShownRows);
    thing_.lists.push_back({std::move(heading), std::move(rows), total});
  }
  void source(const catalog::Source& source) { thing_.source = catalog::cite(source); }
  [[nodiscard]] const DisplayUnits& units() const { return units_; }

 private:
  ShownThing& thing_;
  const DisplayUnits& units_;
};

std::string eraText(const catalog::Era& era) {
  if (!era.from && !era.until) return {};
  if (!era.from) return fmt::format("until {}", *era.until - 1);
  if (!era.until) return fmt::format("from {}", *era.from);
  return fmt::format("{}–{}", *era.from, *era.until - 1);
}

std::string ohmsText(const catalog::Family& family) {
  if (!family.coldHot) return {};
  return fmt::format("{} cold, {} hot", print(family.coldHot->cold), print(family.coldHot->hot));
}

void fitted(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  std::vector<std::string> rows;
  for (const auto& use : catalog::originalUses(catalogue, catalog::SenderKey(id))) {
    const auto line = rows.size() < kMostShownRows ? catalog::line(catalogue, use.line) : std::nullopt;
    rows.push_back(line ? fmt::format("{} {} {}, {}", line->makeName, line->name, plainSpan(use.years), use.engine.text)
                        : fmt::format("{} {}, {}", use.line.text, plainSpan(use.years), use.engine.text));
  }
  sheet.list("fitted new in", std::move(rows));
}

void showSender(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto sender = catalog::sender(catalogue, catalog::SenderKey(id));
  if (!sender) return;
  sheet.fact("name", sender->name);
  sheet.fact("kind", std::string(catalog::text(sender->kind)));
  if (const auto family = sender->family ? catalog::family(catalogue, *sender->family) : std::nullopt) {
    sheet.fact("family",
               family->id.text == family->name ? family->name : fmt::format("{}, {}", family->id.text, family->name));
    sheet.fact("resistance", ohmsText(*family));
  }
  sheet.fact("thread", sender->thread.text);
  const auto terminal = catalog::terminal(catalogue, sender->terminal);
  sheet.fact("terminal", terminal ? terminal->name : sender->terminal.text);
  sheet.measure("reach", sender->reach);
  sheet.measure("hex", sender->hex);
  if (sender->torqueLow && sender->torqueHigh)
    sheet.fact("torque", fmt::format("{} to {}", print(*sender->torqueLow, sheet.units()),
                                     print(*sender->torqueHigh, sheet.units())));
  sheet.fact("grounding", std::string(catalog::text(sender->grounding)));
  sheet.fact("fitted new", eraText(sender->fittedNew));
  std::vector<std::string> older;
  for (const auto& step : catalog::replacedParts(catalogue, sender->id))
    older.push_back(fmt::format("{} (since {})", step.replaces.text, step.since));
  sheet.list("stands in for", std::move(older));
  std::vector<std::string> bins;
  for (const auto& bin : catalog::stock(catalogue, sender->id))
    bins.push_back(fmt::format("{} in bin {}", bin.quantity, bin.bin));
  sheet.list("in stock", std::move(bins));
  fitted(sheet, catalogue, id);
  sheet.source(sender->source);
}

void showGauge(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto gauge = catalog::gauge(catalogue, catalog::GaugeKey(id));
  if (!gauge) return;
  sheet.fact("name", gauge->name);
  sheet.fact("built for family", gauge->family.text);
  sheet.fact("movement", std::string(catalog::text(gauge->movement)));
  sheet.fact("key off", std::string(catalog::text(gauge->keyOff)));
  std::vector<std::string> marks;
  for (const auto& mark : gauge->marks)
    marks.push_back(fmt::format("{}{}{}", catalog::text(mark.kind), mark.text.empty() ? "" : " " + mark.text,
                                mark.at ? ", " + print(*mark.at, sheet.units()) : std::string()));
  sheet.list("dial", std::move(marks));
  sheet.source(gauge->source);
}

void showFamily(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto family = catalog::family(catalogue, catalog::FamilyKey(id));
  if (!family) return;
  sheet.fact("name", family->name);
  sheet.fact("measures", std::string(catalog::text(family->measurand)));
  sheet.fact("resistance", ohmsText(*family));
  sheet.fact("with the heat", family->falling ? "ohms fall" : "ohms rise");
  if (family->tolerance) sheet.fact("tolerance", fmt::format("{:.3g} %", *family->tolerance * 100));
  sheet.fact("note", family->note);
  std::vector<std::string> senders;
  for (const auto& sender : catalog::sendersOfFamily(catalogue, family->id))
    senders.push_back(fmt::format("{}, {}", sender.id.text, sender.name));
  sheet.list("senders", std::move(senders));
  sheet.source(family->source);
}

void showLine(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto line = catalog::line(catalogue, catalog::LineKey(id));
  if (!line) return;
  sheet.fact("name", line->makeName + " " + line->name);
  sheet.fact("also", fmt::format("{}", fmt::join(line->also, ", ")));
  sheet.fact("model years", plainSpan(line->years));
  sheet.fact("grounded pole", std::string(catalog::text(line->groundedPole)));
  std::vector<std::string> clusters;
  for (const auto& cluster : catalog::clusters(catalogue, line->id))
    clusters.push_back(fmt::format("{}: {}, {}{}", cluster.id.text, cluster.option, plainSpan(cluster.years),
                                   cluster.gauge ? ", gauge " + cluster.gauge->text : std::string(", a lamp only")));
  sheet.list("clusters", std::move(clusters));
  sheet.source(line->source);
}

void showCasting(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  for (const auto& casting : catalog::castingsNumbered(catalogue, id)) {
    if (casting.id.text != id) continue;
    sheet.fact("role", std::string(catalog::text(casting.role)));
    sheet.fact("side", std::string(catalog::text(casting.side)));
    const auto engine = catalog::engineFamily(catalogue, casting.engine);
    sheet.fact("engine", engine ? fmt::format("{}, {} {}", engine->id.text, engine->makeName, engine->name)
                                : casting.engine.text);
    if (casting.layout) sheet.fact("date layout", casting.layout->text);
    std::vector<std::string> ports;
    for (const auto& port : catalog::ports(catalogue, casting.id))
      ports.push_back(fmt::format("{}: {}, {}", port.location, port.thread.text, catalog::text(port.usedBy)));
    sheet.list("ports", std::move(ports));
    sheet.source(casting.source);
  }
}

void showEngine(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto engine = catalog::engineFamily(catalogue, catalog::EngineKey(id));
  if (!engine) return;
  sheet.fact("name", engine->makeName + " " + engine->name);
  sheet.fact("thermostat", print(engine->thermostat, sheet.units()));
  std::vector<std::string> castings;
  for (const auto& casting : catalog::castingsOf(catalogue, engine->id))
    castings.push_back(fmt::format("{}, {}", casting.id.text, catalog::text(casting.role)));
  sheet.list("castings", std::move(castings));
  sheet.source(engine->source);
}

void showThread(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto thread = catalog::thread(catalogue, catalog::ThreadKey(id));
  if (!thread) return;
  sheet.fact("standard", thread->standard);
  sheet.fact("form", fmt::format("{}, {}°, {}", catalog::text(thread->form), thread->flankAngle,
                                 thread->tapered ? "tapered" : "parallel"));
  sheet.source(thread->source);
}

void showTerminal(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto terminal = catalog::terminal(catalogue, catalog::TerminalKey(id));
  if (!terminal) return;
  sheet.fact("name", terminal->name);
  sheet.fact("kind", std::string(catalog::text(terminal->kind)));
  sheet.measure("size", terminal->size);
  sheet.fact("contacts", fmt::format("{}", terminal->contacts));
  sheet.fact("look", terminal->look);
  sheet.source(terminal->source);
}

void showLayout(Sheet& sheet, const Catalogue& catalogue, const std::string& id) {
  const auto layout = catalog::dateLayout(catalogue, catalog::LayoutKey(id));
  if (!layout) return;
  sheet.fact("name", layout->name);
  sheet.fact("found on", std::string(catalog::text(layout->foundOn)));
  sheet.fact("example", fmt::format("'{}' is {}", layout->example, plainDate(layout->exampleDate)));
  sheet.source(layout->source);
}

/// What it is found by is what there is to say.
void showPlainly(Sheet& sheet, const SearchHit& hit) {
  for (const auto& one : hit.fields)
    if (one.field != SearchField::number) sheet.fact(std::string(catalog::text(one.field)), one.text);
}

ShownThing shown(const Catalogue& catalogue, const SearchHit& hit, const DisplayUnits& units) {
  ShownThing thing;
  thing.kind = hit.kind;
  thing.id = hit.id;
  Sheet sheet(thing, units);
  switch (hit.kind) {
    case FoundKind::sender:
      showSender(sheet, catalogue, hit.id);
      break;
    case FoundKind::gauge:
      showGauge(sheet, catalogue, hit.id);
      break;
    case FoundKind::family:
      showFamily(sheet, catalogue, hit.id);
      break;
    case FoundKind::line:
      showLine(sheet, catalogue, hit.id);
      break;
    case FoundKind::casting:
      showCasting(sheet, catalogue, hit.id);
      break;
    case FoundKind::engine:
      showEngine(sheet, catalogue, hit.id);
      break;
    case FoundKind::thread:
      showThread(sheet, catalogue, hit.id);
      break;
    case FoundKind::terminal:
      showTerminal(sheet, catalogue, hit.id);
      break;
    case FoundKind::dateLayout:
      showLayout(sheet, catalogue, hit.id);
      break;
    default:
      showPlainly(sheet, hit);
  }
  if (hit.kind == FoundKind::sender) thing.leadsTo = leadsTo(catalogue, hit.id);
  return thing;
}

std::string choice(const SearchHit& hit) { return fmt::format("{} {}", catalog::text(hit.kind), hit.id); }

}  // namespace

Expected<ShownThing> showThing(const Catalogue& catalogue, const std::string& id, const std::vector<FoundKind>& kinds,
                               const DisplayUnits& units) {
  catalog::Search search(catalogue);
  const auto hits = search.find({id, kinds, 200, {}}).hits;
  const auto meant = [&](const auto& test) {
    std::vector<SearchHit> some;
    std::copy_if(hits.begin(), hits.end(), std::back_inserter(some), test);
    return some;
  };
  auto same = meant([&](const SearchHit& hit) { return hit.id == id; });
  if (same.empty())
    same = meant([](const SearchHit& h) { return h.how == MatchedHow::exactly && h.field == SearchField::number; });
  if (same.empty())
    same = meant([](const SearchHit& h) { return h.how == MatchedHow::exactly && h.field == SearchField::name; });
  if (same.size() == 1) return shown(catalogue, same.front(), units);
  std::vector<std::string> choices;
  for (const SearchHit& hit : same.empty() ? hits : same)
    if (choices.size() < kChoices) choices.push_back(choice(hit));
  if (same.empty())
    return refuse("thing-unknown", "ID", "'" + id + "'", "a number or name of the catalogue" + perhaps(choices));
  return refuse("thing-ambiguous", "ID", fmt::format("'{}', which is {} things", id, same.size()),
                fmt::format("one of them by --kind or its exact number: {}{}", fmt::join(choices, "; "),
                            same.size() > choices.size() ? "; …" : ""));
}

}  // namespace ohmkin::workflow
