#include <catalog/joints.h>
#include <catalog/row.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<ThreadForm, 4> kForms{
    {{ThreadForm::npt, "NPT"}, {ThreadForm::bspt, "BSPT"}, {ThreadForm::un, "UN"}, {ThreadForm::metric, "M"}}};
constexpr Words<TerminalKind, 6> kTerminalKinds{{{TerminalKind::blade, "blade"},
                                                 {TerminalKind::stud, "stud"},
                                                 {TerminalKind::pin, "pin"},
                                                 {TerminalKind::snap, "snap"},
                                                 {TerminalKind::socket, "socket"},
                                                 {TerminalKind::wire, "wire"}}};

#define THREADS                                                                                            \
  "SELECT t.id, t.standard, t.form, t.flank_angle, t.pitch, t.diameter, t.tapered, " OHMKIN_SOURCE_COLUMNS \
  " FROM thread t JOIN source s ON s.id = t.source "
#define TERMINALS                                                                   \
  "SELECT t.id, t.name, t.kind, t.size, t.contacts, t.look, " OHMKIN_SOURCE_COLUMNS \
  " FROM terminal t JOIN source s ON s.id = t.source "

Thread readThread(Row& row) {
  Thread t;
  t.id = row.key<ThreadKey>();
  t.standard = row.text();
  t.form = row.oneOf(kForms);
  t.flankAngle = static_cast<int>(row.number());
  t.pitch = millimetres(row.number());
  t.diameter = millimetres(row.number());
  t.tapered = row.flag();
  t.source = row.source();
  return t;
}

Terminal readTerminal(Row& row) {
  Terminal t;
  t.id = row.key<TerminalKey>();
  t.name = row.text();
  t.kind = row.oneOf(kTerminalKinds);
  t.size = row.maybe(millimetres);
  t.contacts = row.whole();
  t.look = row.text();
  t.source = row.source();
  return t;
}

Adapter readAdapter(Row& row) {
  Adapter a;
  a.id = row.key<AdapterKey>();
  a.port = row.key<ThreadKey>();
  a.sender = row.key<ThreadKey>();
  a.immersionLost = millimetres(row.number());
  a.source = row.source();
  return a;
}

Pigtail readPigtail(Row& row) {
  Pigtail p;
  p.id = row.key<PigtailKey>();
  p.harness = row.key<TerminalKey>();
  p.sender = row.key<TerminalKey>();
  p.source = row.source();
  return p;
}

}  // namespace

std::string_view text(ThreadForm form) { return wordFor(kForms, form); }
std::string_view text(TerminalKind kind) { return wordFor(kTerminalKinds, kind); }

std::vector<Thread> threads(const Catalogue& catalogue) { return ask(catalogue, THREADS "ORDER BY t.id", readThread); }

std::optional<Thread> thread(const Catalogue& catalogue, const ThreadKey& key) {
  return first(ask(catalogue, THREADS "WHERE t.id = ?", readThread, key.text));
}

std::vector<Terminal> terminals(const Catalogue& catalogue) {
  return ask(catalogue, TERMINALS "ORDER BY t.name, t.id", readTerminal);
}

std::optional<Terminal> terminal(const Catalogue& catalogue, const TerminalKey& key) {
  return first(ask(catalogue, TERMINALS "WHERE t.id = ?", readTerminal, key.text));
}

std::vector<Terminal> terminalsNamed(const Catalogue& catalogue, std::string_view name) {
  return ask(catalogue, TERMINALS "WHERE lower(t.id) = ?1 OR lower(t.name) = ?1 ORDER BY t.id", readTerminal,
             loweredName(name));
}

std::vector<Adapter> adaptersInto(const Catalogue& catalogue, const ThreadKey& port) {
  return ask(catalogue,
             "SELECT a.id, a.port, a.sender, a.immersion_lost, " OHMKIN_SOURCE_COLUMNS
             " FROM adapter a JOIN source s ON s.id = a.source WHERE a.port = ? ORDER BY a.id",
             readAdapter, port.text);
}

std::vector<Pigtail> pigtailsFor(const Catalogue& catalogue, const TerminalKey& harness) {
  return ask(catalogue,
             "SELECT p.id, p.harness, p.sender, " OHMKIN_SOURCE_COLUMNS
             " FROM pigtail p JOIN source s ON s.id = p.source WHERE p.harness = ? ORDER BY p.id",
             readPigtail, harness.text);
}

}  // namespace ohmkin::catalog
