#include <fmt/format.h>
#include <sheet/predictions.h>
#include <workflow/wiring_sheet.h>

#include <algorithm>
#include <cctype>
#include <map>

namespace ohmkin::workflow {
namespace {

std::string capitals(std::string text) {
  for (char& c : text) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return text;
}

/// How many severities of each fault show which outcome; single faults come first among the cases.
struct Shows {
  std::map<std::size_t, std::vector<std::size_t>> outcomes;  ///< of each fault
};

Shows shows(const circuit::Predictions& predictions, std::size_t test) {
  Shows all;
  for (std::size_t c = 0; c < predictions.cases().size() && predictions.cases()[c].faults.size() == 1; ++c) {
    auto& counts = all.outcomes[predictions.cases()[c].faults.front()];
    counts.resize(predictions.tests().tests[test].outcomes.size());
    ++counts[circuit::likeliest(predictions.outcomes(test, c))];
  }
  return all;
}

sheet::PredictedTest predicted(const circuit::Predictions& predictions, std::size_t index) {
  const circuit::TradeTest& test = predictions.tests().tests[index];
  const std::size_t good = circuit::likeliest(predictions.healthy(index));
  sheet::PredictedTest made;
  made.title = test.title;
  made.cost = fmt::format("{:g} min{}{}", test.minutes, test.tools.empty() ? "" : "; ", test.tools);
  made.good = test.words[good];
  made.hazard = test.hazard;
  const Shows all = shows(predictions, index);
  for (std::size_t o = 0; o < test.outcomes.size(); ++o) {
    if (o == good) continue;
    sheet::PredictedResult result{test.words[o], {}};
    for (const auto& [fault, counts] : all.outcomes) {
      const std::size_t severities = predictions.faults().faults[fault].severities.size();
      if (counts[o] > 0)
        result.points.push_back(predictions.faults().faults[fault].name + (counts[o] < severities ? "*" : ""));
    }
    if (!result.points.empty()) made.results.push_back(std::move(result));
  }
  return made;
}

}  // namespace

sheet::Pages predictionsSheet(const FaultFinder& finder, const SheetOptions& options) {
  const circuit::Predictions& predictions = finder.predictions();
  sheet::PredictionsSheet made;
  made.heading = {finder.gaugeName(), "", finder.senderName(), "", plainDate(options.day)};
  made.notes = {"Each test solved in this gauge's circuit under every single fault. * only with some degrees of it.",
                "Faults not named under a test show what a good circuit shows.",
                "Minutes are a judgement, not a record; what has to be opened is paid once."};
  made.cautions = {"Open the cooling system only when it is cold. Keep clear of belts and fan.",
                   "Never put battery volts on the lead. Never hold the lead of a regulated gauge to ground.",
                   "Local codes and licensed practice come first."};
  made.setups.push_back({"NOTHING TO OPEN", {}});
  for (const circuit::Setup& setup : predictions.tests().setups)
    made.setups.push_back({capitals(fmt::format("{}, {:g} min once", setup.name, setup.minutes)), {}});
  for (std::size_t t = 0; t < predictions.tests().tests.size(); ++t) {
    const auto& setups = predictions.tests().setups;
    const auto found = std::find_if(setups.begin(), setups.end(), [&](const circuit::Setup& s) {
      return s.code == predictions.tests().tests[t].setup;
    });
    const std::size_t at = found == setups.end() ? 0 : static_cast<std::size_t>(found - setups.begin()) + 1;
    made.setups[at].tests.push_back(predicted(predictions, t));
  }
  return sheet::drawPredictions(made, options.paper);
}

}  // namespace ohmkin::workflow
