#pragma once
#include <curve/curve.h>
#include <finding/finding.h>
#include <gauge/gauge.h>
#include <pairing/error_table.h>
#include <pairing/trim_proposal.h>
#include <pairing/verdict.h>
#include <quantity/date.h>
#include <quantity/quantity.h>
#include <workflow/question.h>
#include <memory>
#include <optional>
#include <string>
#include <vector>

/// What the match use case returns. Terminal and window render this and compute nothing of their own.
namespace ohmkin::workflow {

/// How a link of the chain came to be known.
enum class Basis {
  seen,      ///< the person saw it
  known,     ///< follows from the catalogue
  inferred,  ///< likely, not certain
  conflict,  ///< two facts disagree
  notSeen    ///< not known: look
};

/// One link of the chain: dash gauge, lead, sender, head port or engine.
struct Link {
  std::string title;      ///< "Dash gauge"
  std::string headline;   ///< "Family A"
  std::string detail;     ///< "crossed coil · 40–125 °C"
  std::string basisText;  ///< "known from the cluster"
  Basis basis = Basis::notSeen;
};

/// A joint between two links, drawn as what it is and said in words as well.
enum class JointState {
  fits,      ///< solid
  withPart,  ///< ring: fits with something added
  cut,       ///< misreads or does not fit
  look       ///< dots: not known
};
struct Joint {
  JointState state = JointState::look;
  std::string words;              ///< "bushing AD-12"
  std::vector<Finding> findings;  ///< the whole judgement behind the words
};

struct Shelf {
  std::string bin;
  int quantity = 0;
};

/// One sender judged for one branch.
struct Candidate {
  std::string part;      ///< part number
  std::string lot;       ///< not empty: this lot, judged by its own bench curve instead of its family's
  std::string measured;  ///< that curve in words: "bench curve of 2026-11-25, lot 3, by Ann"; else empty
  std::string name;
  std::string kind;    ///< "variable sender", …
  std::string family;  ///< name of its resistance family; empty for what has none
  std::string thread;
  std::string terminal;
  pairing::Rank rank = pairing::Rank::refused;
  std::string sentence;           ///< the verdict in one plain sentence
  std::vector<Finding> findings;  ///< kind, electrical, thread, terminal, era: each with evidence and source

  Link link;         ///< the chain's middle card
  Joint electrical;  ///< dash gauge – lead: does the needle tell the truth
  Joint plug;        ///< lead – sender
  Joint screw;       ///< sender – port

  std::vector<std::string> partsNeeded;  ///< adapter bushings, pigtails, by part number
  std::vector<Shelf> shelf;              ///< what the shop has of it
  std::string replacedBy;                ///< the current part where this one is superseded; else empty
  bool fittedNow = false;                ///< the one in the head, as the person says or as the engine had it new
  bool fittedNowSaid = false;            ///< true: the person said so; false: inferred

  // Shared among all senders of one curve: judged once. None for what is not a variable sender, or where the gauge is
  // not known.
  std::shared_ptr<const curve::Curve> curve;
  std::shared_ptr<const pairing::ErrorTable> errors;  ///< as it is, over the band
  std::shared_ptr<const pairing::ErrorTable> wide;    ///< as it is, over the whole dial, where a drawing was asked for
  std::shared_ptr<const pairing::Verdict> verdict;    ///< the electrical judgement alone
  /// The best network, where one would help; refused ones too, with the reason.
  std::shared_ptr<const pairing::TrimProposal> trim;
  [[nodiscard]] bool recommended() const { return rank != pairing::Rank::refused && rank != pairing::Rank::undecided; }
};

/// Variable senders further down the order than the list goes, which are judged alike.
struct Unlisted {
  std::size_t senders = 1;
  std::string best;  ///< part number of the first of them
  std::string lot;   ///< as in Candidate
  bool fittedNow = false;
  std::string family;
  std::string thread;
  std::string terminal;
  JointState screw = JointState::look;
  std::shared_ptr<const curve::Curve> curve;
  std::shared_ptr<const pairing::Verdict> verdict;
};

/// One way the facts can be: with a mid-year change or an unknown casting there are several.
struct Branch {
  std::string title;  ///< what it assumes: "built from 1 Feb 1974 on: cluster C1"; empty where it is the only one
  double weight = 1;  ///< how likely, among the branches; equal where nothing tells
  Link gaugeLink;
  Link leadLink;
  Link portLink;
  Link engineLink;
  Joint era;                                  ///< port – engine: is it the vehicle's first engine, or a later one
  std::shared_ptr<const gauge::Gauge> gauge;  ///< none: a warning lamp only, or nothing known
  std::string gaugeName;
  std::string familyName;
  TemperatureSpan band{celsius(0), celsius(0)};
  std::vector<Candidate> ranked;   ///< best first, and whatever is in the head; not all, where there are very many
  std::size_t considered = 0;      ///< how many senders could go there, listed or not
  std::size_t notListed = 0;       ///< how many come further down the order than `ranked` goes
  std::size_t inHeadLast = 0;      ///< of `ranked`, at its end: listed for being in the head, not for their place
  std::vector<Unlisted> unlisted;  ///< what follows the list without these and may be brought up by a look, best first
  std::vector<Finding> findings;   ///< about the branch as a whole: boiling before the mark, tolerance assumed, …
};

/// The one observation that would decide, or change the order.
struct DecidingLook {
  std::string what;     ///< "Which terminal is on the wire?"
  std::string because;  ///< "A blade keeps this order; a stud rules out BR-2215."
  std::string field;    ///< the Question field it would fill: "terminal"
  double gain = 0;      ///< expected gain, bits
};

/// Something the question was understood to say, for the chips under the text box.
struct Chip {
  std::string text;  ///< "Cluster B2, model years 1967–70"
  Basis basis = Basis::known;
};

struct Answer {
  Question question;
  std::vector<Chip> chips;
  std::vector<Branch> branches;  ///< likeliest first; empty: no answer, and findings say why
  std::optional<DecidingLook> look;
  std::vector<Finding> findings;
  std::vector<std::string> cautions;    ///< always shown, never dismissed
  [[nodiscard]] bool answered() const;  ///< some branch recommends a sender that is not refused
};

/// Where the needles stand with the coolant at `t`: what the gauge shows with its own family (true) and with this
/// candidate.
struct Needles {
  Temperature coolant;
  Angle trueNeedle;                                  ///< where the needle would stand if it told the truth
  std::optional<gauge::Reading> shown;               ///< with the candidate; none outside its curve
  std::optional<TemperatureDifference> uncertainty;  ///< expanded, k = 2
};
enum class Fitted { asItIs, withTrim };  ///< withTrim: with the network of the candidate's proposal, where there is one
Needles needlesAt(const Branch& branch, const Candidate& candidate, Temperature t, Fitted fitted = Fitted::asItIs);

}  // namespace ohmkin::workflow
