#include <match/chain_words.h>
#include <match/wording.h>

namespace ohmkin::match {
namespace {

using workflow::Basis;
using workflow::Branch;
using workflow::Candidate;
using workflow::JointState;

parts::Fit fitOf(JointState state) {
  switch (state) {
    case JointState::fits:
      return parts::Fit::fits;
    case JointState::withPart:
      return parts::Fit::withPart;
    case JointState::cut:
      return parts::Fit::cut;
    case JointState::look:
      break;
  }
  return parts::Fit::look;
}

parts::Known knownOf(Basis basis) {
  switch (basis) {
    case Basis::seen:
      return parts::Known::seen;
    case Basis::known:
      return parts::Known::known;
    case Basis::inferred:
      return parts::Known::inferred;
    case Basis::conflict:
      return parts::Known::conflict;
    case Basis::notSeen:
      break;
  }
  return parts::Known::notSeen;
}

parts::LinkWords wordsOf(const workflow::Link& link) {
  return {plain(link.title), plain(link.headline), plain(link.detail), plain(link.basisText), knownOf(link.basis)};
}

parts::JointWords wordsOf(const workflow::Joint& joint) {
  const QString words = plain(joint.words);
  return {fitOf(joint.state), words.isEmpty() && joint.state == JointState::look ? tr("look") : words};
}

}  // namespace

parts::Chain chainOf(const Branch& branch, const Candidate* candidate) {
  parts::Chain chain;
  workflow::Link nothing;
  nothing.title = tr("Sender").toStdString();
  nothing.headline = tr("none").toStdString();
  nothing.detail = tr("nothing in this catalogue goes there").toStdString();
  chain.links = {wordsOf(branch.gaugeLink), wordsOf(branch.leadLink),
                 wordsOf(candidate != nullptr ? candidate->link : nothing), wordsOf(branch.portLink),
                 wordsOf(branch.engineLink)};
  if (candidate != nullptr)
    chain.joints = {wordsOf(candidate->electrical), wordsOf(candidate->plug), wordsOf(candidate->screw),
                    wordsOf(branch.era)};
  else
    chain.joints = {wordsOf(workflow::Joint{}), wordsOf(workflow::Joint{}), wordsOf(workflow::Joint{}),
                    wordsOf(branch.era)};
  return chain;
}

std::vector<parts::ChipWords> chipsOf(const QString& text, const workflow::TextReading& reading,
                                      const std::vector<workflow::Chip>& chips) {
  std::vector<parts::ChipWords> all;
  for (const workflow::Chip& chip : chips) {
    parts::ChipKind kind = parts::ChipKind::understood;
    if (chip.basis == Basis::inferred) kind = parts::ChipKind::inferred;
    if (chip.basis == Basis::conflict) kind = parts::ChipKind::conflict;
    if (chip.basis == Basis::notSeen) kind = parts::ChipKind::unknown;
    all.push_back({plain(chip.text), kind});
  }
  const std::string bytes = text.toStdString();
  for (const workflow::TextPiece& piece : reading.pieces) {
    if (!piece.field.empty()) continue;
    // A chip is short; only where there is something to choose from it says more.
    const QString words = piece.couldBe.empty()
                              ? tr("not understood: %1").arg(plain(bytes.substr(piece.from, piece.length)))
                              : plain(workflow::complaint(piece, bytes));
    all.push_back({words, parts::ChipKind::unknown});
  }
  return all;
}

}  // namespace ohmkin::match
