#pragma once
#include <catalog/joints.h>
#include <catalog/shop.h>
#include <joint/port.h>
#include <joint/terminal.h>
#include <workflow/answer.h>
#include <workflow/judge_electrical.h>
#include <workflow/resolve_dash.h>
#include <workflow/resolve_port.h>
#include <deque>

/// One sender judged for one branch: kind, electrical, thread, terminal, era; then one plain sentence and its rank.
namespace ohmkin::workflow {

class SenderJudge {
 public:
  SenderJudge(const catalog::Catalogue& catalogue, const DashChoice& dash, const PortChoice& port,
              const Question& question, ElectricalJudge& electrical, const MatchOptions& options);

  /// Each sender by its family, and once more for each lot that was measured. In no order.
  std::vector<Candidate> judge(const std::vector<catalog::Sender>& senders);

  /// What a joint comes to, whichever part has it.
  struct JointOutcome {
    JointState state = JointState::look;
    bool joins = true;
    std::size_t partsNeeded = 0;
  };
  [[nodiscard]] JointOutcome screwOf(const catalog::Sender& sender) const;  ///< by its thread and body
  [[nodiscard]] JointOutcome plugOf(const catalog::Sender& sender) const;   ///< by its terminal
  [[nodiscard]] std::string terminalName(const catalog::TerminalKey& terminal) const;

  [[nodiscard]] const std::optional<joint::Terminal>& wireEnd() const { return wireEnd_; }
  [[nodiscard]] const catalog::Thread* thread(const catalog::ThreadKey& key) const;
  [[nodiscard]] const std::vector<joint::Bushing>& bushings() const { return bushings_; }
  [[nodiscard]] const std::vector<catalog::Thread>& threads() const { return threads_; }

 private:
  /// A sender or one lot of it on its way through the judgements.
  struct Case {
    const catalog::Sender* sender = nullptr;
    std::optional<catalog::CurveRecord> lot;
    Candidate candidate;
  };
  Case begin(const catalog::Sender& sender, std::optional<catalog::CurveRecord> lot);
  void finish(Case& one);
  void sayWhoseCurve(const catalog::Sender& sender, const catalog::CurveRecord& lot, Candidate& candidate);
  static void warnOfLots(std::deque<Case>& cases);
  void judgeKind(const catalog::Sender& sender, Candidate& candidate) const;
  void judgeScrew(const catalog::Sender& sender, Candidate& candidate) const;
  void judgePlug(const catalog::Sender& sender, Candidate& candidate) const;
  void judgeNeedle(const catalog::Sender& sender, const catalog::CurveRecord* lot, Candidate& candidate);
  void judgeEra(const catalog::Sender& sender, Candidate& candidate) const;
  void lookOnTheShelf(const catalog::Sender& sender, Candidate& candidate) const;

  const catalog::Catalogue& catalogue_;
  const PortChoice& portChoice_;
  const Question& question_;
  ElectricalJudge& electrical_;
  const MatchOptions& options_;
  std::vector<catalog::Thread> threads_;
  std::vector<catalog::Terminal> terminals_;
  std::vector<joint::Bushing> bushings_;
  std::vector<joint::Pigtail> pigtails_;
  std::optional<joint::Terminal> wireEnd_;
  joint::Port port_;
};

}  // namespace ohmkin::workflow
