#pragma once
#include <fault/answer_list.h>
#include <fault/likelihood_bars.h>
#include <fault/opened_chain.h>
#include <fault/step_card.h>
#include <fault/test_list.h>
#include <parts/finding_list.h>
#include <parts/names.h>
#include <workflow/fault_document.h>

/// From what the search answers to what the page shows. Chooses words and shapes; weighs nothing of its own.
namespace ohmkin::fault {

/// What is known of one search at a moment: everything the page shows is made from it.
struct Standing {
  const workflow::FaultFinder& finder;
  const workflow::FaultSession& session;
  const workflow::FaultAnswer& answer;
};

/// The symptoms in the order of the card's keys; "any" is its "not sure".
const std::vector<circuit::Symptom>& askedSymptoms();
StepWords symptomStep(const std::optional<circuit::Symptom>& said);
StepWords testStep(const Standing& standing, std::size_t test);
/// What to do, and whether it helped: 1 yes, 2 no.
StepWords repairStep(const Standing& standing);
/// Which of the faults that the repair cures it was.
StepWords causeStep(const Standing& standing);
StepWords doneStep(const Standing& standing);

/// Faults that the repair that helped cures, most likely first.
std::vector<std::size_t> causesOf(const Standing& standing);
/// Repairs that are proposed now: one, or two where two faults are likelier than one.
std::vector<std::string> proposedRepairs(const Standing& standing);

std::vector<LikelihoodRow> likelihoodsOf(const Standing& standing);
/// `test`: the one in hand; none: nothing is examined now.
OpenedCircuit openedOf(const Standing& standing, std::optional<std::size_t> test);
std::vector<AnswerRow> answersOf(const Standing& standing);
std::vector<TestRow> testsOf(const Standing& standing);
std::vector<parts::FindingWords> assumptionsOf(const Standing& standing);
/// What disagrees, in words; empty: nothing does.
QString contradictionOf(const Standing& standing);
QString searchAsText(const Standing& standing);

/// Gauges and families, senders and families, as the entries offer them.
std::vector<parts::NameWords> gaugeNames(const catalog::Catalogue& catalogue);
std::vector<parts::NameWords> senderNames(const catalog::Catalogue& catalogue);

}  // namespace ohmkin::fault
