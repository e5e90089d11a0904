#include <exchange/plan_corrections.h>
#include <quantity/near_miss.h>
#include <algorithm>

namespace ohmkin::exchange {

/// A setting is told where two plans that differ in it come out the same.
Expected<Told> toldBy(const std::string& corrections, std::string_view file) {
  ReadingPlan base;
  ReadingPlan differs;
  differs.encoding = "utf-16le";
  differs.separator = ';';
  differs.decimal = ',';
  differs.thousands = ' ';
  const auto one = parsePlan(corrections, base, file);
  if (!one) return tl::make_unexpected(one.error());
  const auto two = parsePlan(corrections, differs, file);
  Told told;
  if (one->encoding == two->encoding) told.encoding = one->encoding;
  if (one->separator == two->separator) told.separator = one->separator;
  if (one->decimal == two->decimal) told.marks = Marks{one->decimal, one->thousands};
  return told;
}

namespace {

/// The words before = of a line for parsePlan.
std::vector<std::string> wordsNamed(std::string_view line) {
  std::vector<std::string> words;
  for (std::size_t equals = line.find('='); equals != std::string_view::npos; equals = line.find('=', equals + 1)) {
    const std::size_t comma = line.find_last_of(',', equals);
    words.push_back(folded(line.substr(comma == std::string_view::npos ? 0 : comma + 1,
                                       equals - (comma == std::string_view::npos ? 0 : comma + 1))));
  }
  return words;
}

}  // namespace

Expected<void> correct(const std::string& corrections, std::string_view file, Proposal& proposal) {
  auto plan = parsePlan(corrections, proposal.plan, file);
  if (!plan) return tl::make_unexpected(plan.error());
  proposal.columns.resize(plan->columns.size());
  for (std::size_t i = 0; i < plan->columns.size(); ++i)
    if (i >= proposal.plan.columns.size() || plan->columns[i] != proposal.plan.columns[i])
      proposal.columns[i].confidence = 1, proposal.columns[i].reason = "you said so";
  proposal.plan = std::move(*plan);
  const std::vector<std::string> said = wordsNamed(corrections);
  std::erase_if(proposal.questions, [&](const PlanQuestion& question) {
    if (question.answers.empty()) return checkPlan(proposal.plan).has_value();
    const std::vector<std::string> asked = wordsNamed(question.answers.front());
    return std::any_of(asked.begin(), asked.end(), [&](const std::string& word) {
      return std::find(said.begin(), said.end(), word) != said.end();
    });
  });
  return {};
}

}  // namespace ohmkin::exchange
