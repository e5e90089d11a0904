#include <workflow/joints.h>

namespace ohmkin::workflow {
namespace {

joint::ThreadForm formOf(catalog::ThreadForm form) {
  switch (form) {
    case catalog::ThreadForm::npt:
      return joint::ThreadForm::npt;
    case catalog::ThreadForm::bspt:
      return joint::ThreadForm::bspt;
    case catalog::ThreadForm::un:
      return joint::ThreadForm::un;
    case catalog::ThreadForm::metric:
      return joint::ThreadForm::metric;
  }
  return joint::ThreadForm::npt;
}

joint::TerminalKind kindOf(catalog::TerminalKind kind) {
  switch (kind) {
    case catalog::TerminalKind::blade:
      return joint::TerminalKind::blade;
    case catalog::TerminalKind::stud:
      return joint::TerminalKind::stud;
    case catalog::TerminalKind::pin:
      return joint::TerminalKind::pin;
    case catalog::TerminalKind::snap:
      return joint::TerminalKind::snap;
    case catalog::TerminalKind::socket:
      return joint::TerminalKind::socket;
    case catalog::TerminalKind::wire:
      return joint::TerminalKind::wire;
  }
  return joint::TerminalKind::blade;
}

}  // namespace

joint::Thread threadOf(const catalog::Thread& record) {
  return {record.id.text,  formOf(record.form), record.flankAngle,           record.pitch,
          record.diameter, record.tapered,      catalog::cite(record.source)};
}

joint::Terminal terminalOf(const catalog::Terminal& record) {
  return {record.id.text,  record.name, kindOf(record.kind),         record.size,
          record.contacts, record.look, catalog::cite(record.source)};
}

joint::Pigtail pigtailOf(const catalog::Pigtail& record) {
  return {record.id.text, record.harness.text, record.sender.text, catalog::cite(record.source)};
}

joint::Bushing bushingOf(const catalog::Adapter& record) {
  return {record.id.text, record.port.text, record.sender.text, record.immersionLost, catalog::cite(record.source)};
}

joint::SenderBody bodyOf(const catalog::Sender& sender, const catalog::Thread* thread) {
  joint::SenderBody body;
  body.part = sender.id.text;
  if (thread != nullptr) body.thread = threadOf(*thread);
  body.reach = sender.reach;
  body.hex = sender.hex;
  body.torqueLow = sender.torqueLow;
  body.torqueHigh = sender.torqueHigh;
  body.groundsThroughCase = sender.grounding == catalog::Grounding::throughCase;
  body.source = catalog::cite(sender.source);
  return body;
}

}  // namespace ohmkin::workflow
