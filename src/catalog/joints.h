#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/quantity.h>
#include <optional>
#include <vector>

/// Threads, terminals, and the parts that join unlike ones.
namespace ohmkin::catalog {

enum class ThreadForm { npt, bspt, un, metric };
std::string_view text(ThreadForm form);  ///< "NPT", "BSPT", "UN", "M"

struct Thread {
  ThreadKey id;
  std::string standard;
  ThreadForm form = ThreadForm::npt;
  int flankAngle = 60;  ///< degrees
  Length pitch;
  Length diameter;  ///< at the crest, in the plane where it is gauged
  bool tapered = false;
  Source source;
};

enum class TerminalKind { blade, stud, pin, snap, socket, wire };
std::string_view text(TerminalKind kind);

struct Terminal {
  TerminalKey id;
  std::string name;  ///< as a person says it: "blade 6.3 mm"
  TerminalKind kind = TerminalKind::blade;
  std::optional<Length> size;
  int contacts = 1;
  std::string look;  ///< how to tell it at the wire end
  Source source;
};

struct Pigtail {
  PigtailKey id;
  TerminalKey harness;  ///< the wire end it takes
  TerminalKey sender;   ///< the sender's terminal it fits
  Source source;
};

struct Adapter {
  AdapterKey id;
  ThreadKey port;    ///< the port it screws into
  ThreadKey sender;  ///< the sender it takes
  Length immersionLost;
  Source source;
};

std::vector<Thread> threads(const Catalogue& catalogue);  ///< by designation
std::optional<Thread> thread(const Catalogue& catalogue, const ThreadKey& key);
std::vector<Terminal> terminals(const Catalogue& catalogue);  ///< by name
std::optional<Terminal> terminal(const Catalogue& catalogue, const TerminalKey& key);
/// By id or name, letter case aside; more than one where a name is shared.
std::vector<Terminal> terminalsNamed(const Catalogue& catalogue, std::string_view name);

std::vector<Adapter> adaptersInto(const Catalogue& catalogue, const ThreadKey& port);
std::vector<Pigtail> pigtailsFor(const Catalogue& catalogue, const TerminalKey& harness);

}  // namespace ohmkin::catalog
