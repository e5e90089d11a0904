#pragma once
#include <workflow/find_fault.h>
#include <string>
#include <string_view>
#include <vector>

/// A search for a fault as text: what is kept with a job and goes on another day.
namespace ohmkin::workflow {

/// One search as it stands. Tests, outcomes, repairs and faults by their codes, which do not change; a circuit that
/// has no such test or outcome is told by answersOf().
struct FaultSession {
  struct Seen {
    std::string test;
    std::string outcome;         ///< empty: looked at, but not sure
    std::size_t afterTried = 0;  ///< how many of the repairs tried were made before it
    friend bool operator==(const Seen&, const Seen&) = default;
  };
  FaultQuestion question;                   ///< movement and jobs are not part of the text: they are asked for anew
  std::optional<circuit::Symptom> symptom;  ///< none: not asked yet
  std::vector<Seen> seen;                   ///< in the order they were given, each test once
  std::vector<std::string> paid;            ///< set-ups made: "hood"
  std::vector<std::string> tried;           ///< repairs made that did not help, in their order
  std::string helped;                       ///< the repair that put things right; empty: none yet
  std::string cause;                        ///< the fault it was, where the person said so; empty: not said
};

/// JSON, "schema": "ohmkin.fault-session", "version": 1; the same session makes the same text.
std::string faultDocument(const FaultSession& session);

/// `where` is the file's or the job's name, for messages. Refuses what is no such document, a newer version, more than
/// 256 KiB, lists longer than 200, codes longer than 64 characters or of other characters than a-z, 0-9 and "-", names
/// longer than 200 bytes, numbers out of range, a test answered twice, a set-up or a repair named twice.
Expected<FaultSession> readFaultDocument(std::string_view text, std::string_view where);

/// The answers as this circuit has them. Refuses tests, outcomes, set-ups, repairs and a cause that are not there.
Expected<std::vector<circuit::Answer>> answersOf(const FaultFinder& finder, const FaultSession& session,
                                                 std::string_view where);
/// The repairs tried as the book has them; refuses as answersOf() does.
Expected<std::vector<std::size_t>> triedOf(const FaultFinder& finder, const FaultSession& session,
                                           std::string_view where);
/// Leaves out what this circuit does not have: another gauge was named since. How many answers, set-ups and repairs.
std::size_t leaveOutUnknown(const FaultFinder& finder, FaultSession& session);
/// finder.answer() for what the session holds; none of its codes may be unknown. `any` where no symptom was said.
Expected<FaultAnswer> answerOf(const FaultFinder& finder, const FaultSession& session, std::string_view where);

}  // namespace ohmkin::workflow
