#pragma once
#include <finding/finding.h>
#include <quantity/quantity.h>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// The wire's end and the sender's terminal.
namespace ohmkin::joint {

enum class TerminalKind { blade, stud, pin, snap, socket, wire };

/// A style of terminal; a wire end and a sender of one style go together.
struct Terminal {
  std::string id;
  std::string name;  ///< as a person says it: "blade 6.3 mm"
  TerminalKind kind = TerminalKind::blade;
  std::optional<Length> size;  ///< width of the tab, diameter of stud or pin
  int contacts = 1;
  std::string look;    ///< how to tell it at the wire end
  std::string source;  ///< citation, handed on into findings
};

/// A short lead that joins a wire end of one style to a sender of another.
struct Pigtail {
  std::string id;
  std::string harness;  ///< id of the style it takes
  std::string sender;   ///< id of the style it fits
  std::string source;
};

enum class TerminalFit {
  fits,
  needsPigtail,
  doesNotFit,
  notSeen  ///< wire end, or a size, not known: look. Never counted as wrong
};

struct PlugJudgement {
  TerminalFit fit = TerminalFit::notSeen;
  std::string pigtail;  ///< part number, where one is needed
  std::vector<Finding> findings;
};

/// `wire` is none where nobody looked; `sender` none where the catalogue does not say. A pigtail is proposed only where
/// the styles do not go together by themselves. Two contacts on a one-wire harness are said apart: that sender does not
/// ground through its thread.
PlugJudgement judgePlug(const std::optional<Terminal>& wire, const std::optional<Terminal>& sender,
                        std::span<const Pigtail> pigtails);

}  // namespace ohmkin::joint
