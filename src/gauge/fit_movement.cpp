#include <gauge/fit_movement.h>
#include <gauge/movement_shapes.h>
#include <gauge/movement_solver.h>

#include <fmt/core.h>
#include <boost/math/distributions/chi_squared.hpp>

namespace ohmkin::gauge {
namespace {

constexpr std::size_t kStarts = 4;
constexpr double kUnlikely = 0.001;  // readings that scatter so much by chance once in a thousand
constexpr double kStandardDeviations = 3;
constexpr double kWorstSweep = 30;  // degrees of standard uncertainty; more says nothing about the sweep
constexpr double kWorstLnOhms = 1;

struct Start {
  double cost;
  Eigen::Vector3d at;
};

/// What is linear in the angle is solved for; the rest is tried out on a grid.
template <class Shape>
Start solvedFor(const std::vector<BoxReading>& free, const Eigen::Vector3d& grid, const std::vector<int>& linear) {
  Eigen::Vector3d at = grid;
  const auto rows = static_cast<Eigen::Index>(free.size());
  Eigen::MatrixXd by(rows, static_cast<Eigen::Index>(linear.size()));
  Eigen::VectorXd right(rows);
  for (const int j : linear) at[j] = 0;
  for (Eigen::Index i = 0; i < rows; ++i) {
    const BoxReading& reading = free[static_cast<std::size_t>(i)];
    Eigen::Vector3d all;
    right[i] = (reading.needle.degrees - Shape::at(at.data(), reading, all.data())) / reading.uncertainty;
    for (std::size_t j = 0; j < linear.size(); ++j)
      by(i, static_cast<Eigen::Index>(j)) = all[linear[j]] / reading.uncertainty;
  }
  const Eigen::VectorXd solution = by.colPivHouseholderQr().solve(right);
  for (std::size_t j = 0; j < linear.size(); ++j) at[linear[j]] = solution[static_cast<Eigen::Index>(j)];
  return {(by * solution - right).squaredNorm(), at};
}

std::vector<double> lnOhmsGrid(const std::vector<BoxReading>& free) {
  double low = std::numeric_limits<double>::infinity();
  double high = 0;
  for (const BoxReading& reading : free) {
    const double r = inOhms(reading.box);
    if (!(r > 0) || std::isinf(r)) continue;
    low = std::min(low, r);
    high = std::max(high, r);
  }
  std::vector<double> grid;
  for (double ln = std::log(low) - 3; ln <= std::log(high) + 3; ln += 0.4) grid.push_back(ln);
  return grid;
}

std::vector<Eigen::Vector3d> bestOf(std::vector<Start> starts) {
  const std::size_t kept = std::min(kStarts, starts.size());
  std::partial_sort(starts.begin(), starts.begin() + static_cast<std::ptrdiff_t>(kept), starts.end(),
                    [](const Start& a, const Start& b) { return a.cost < b.cost; });
  std::vector<Eigen::Vector3d> out;
  for (std::size_t i = 0; i < kept; ++i) out.push_back(starts[i].at);
  return out;
}

std::vector<Eigen::Vector3d> bimetalStarts(const std::vector<BoxReading>& free) {
  std::vector<Start> starts;
  for (const double ln : lnOhmsGrid(free)) starts.push_back(solvedFor<BimetalShape>(free, {0, 0, ln}, {0, 1}));
  return bestOf(std::move(starts));
}

std::string boxWords(Ohms box) {
  if (std::isinf(inOhms(box))) return "an open lead";
  return inOhms(box) == 0 ? "a grounded lead" : fmt::format("{:g} Ω", inOhms(box));
}

Finding scatter(const std::vector<BoxReading>& free, const Eigen::VectorXd& off) {
  Eigen::Index worst = 0;
  off.head(static_cast<Eigen::Index>(free.size())).cwiseAbs().maxCoeff(&worst);
  const BoxReading& reading = free[static_cast<std::size_t>(worst)];
  return {"readings-scatter", Severity::caution,
          fmt::format("The readings scatter more than their uncertainty says; the one farthest off is that with {}.",
                      boxWords(reading.box)),
          fmt::format("{:.1f} standard uncertainties off", std::abs(off[worst])), "your reading"};
}

/// Points on a stop must be at it or past it by the law that was found.
void checkStops(const std::vector<BoxReading>& readings, MovementFit& fit) {
  for (const BoxReading& reading : readings) {
    if (reading.rests == Rests::free) continue;
    ++fit.onStops;
    Conditions conditions;
    conditions.supply = reading.supply;
    if (std::holds_alternative<Bimetal>(fit.movement)) conditions = {};
    const double past = (deflection(fit.movement, reading.box, conditions) - reading.needle).degrees *
                        (reading.rests == Rests::onRightStop ? 1 : -1);
    if (past >= -kStandardDeviations * std::hypot(reading.uncertainty, fit.knowledge(reading.box))) continue;
    fit.findings.push_back(
        {"stop-contradicts-fit", Severity::warning,
         fmt::format("With {} the needle was on a stop, but by the other readings it should stand {:.0f}° short of it.",
                     boxWords(reading.box), -past),
         "a sticking needle, a wrong reading, or another kind of movement", "your reading"});
  }
}

template <class Shape>
double knowledgeOf(const MovementFit& fit, const BoxReading& at) {
  Numbers<Shape> numbers;
  for (int i = 0; i < Shape::kNumbers; ++i) {
    const FittedNumber& number = fit.numbers[static_cast<std::size_t>(i)];
    numbers[i] = number.unit == "Ω" ? std::log(number.value) : number.value;
  }
  Numbers<Shape> by;
  Shape::at(numbers.data(), at, by.data());
  const Eigen::Map<const Eigen::Matrix<double, Shape::kNumbers, Shape::kNumbers, Eigen::RowMajor>> known(
      fit.covariance.data());
  return std::sqrt(std::max(0.0, by.dot(known * by)));
}

}  // namespace

std::vector<Eigen::Vector3d> coilStarts(const std::vector<BoxReading>& free) {
  std::vector<Start> starts;
  for (const double ln : lnOhmsGrid(free))
    for (int sweep = 15; sweep < 180; sweep += 15)
      for (const int way : {-1, 1}) starts.push_back(solvedFor<CoilShape>(free, {0, double(way * sweep), ln}, {0}));
  return bestOf(std::move(starts));
}

tl::unexpected<Refusal> tooClose() {
  return refuse("readings-too-close", "decade-box readings", "readings that do not tell the movement's numbers apart",
                "readings spread over more of the dial");
}

Expected<std::vector<BoxReading>> enoughFree(const std::vector<BoxReading>& readings, std::size_t fewest) {
  auto free = freeReadings(readings);
  if (!free) return free;
  std::vector<double> different;
  bool somewhere = false;
  for (const BoxReading& reading : *free) {
    const double r = inOhms(reading.box);
    somewhere = somewhere || (r > 0 && std::isfinite(r));
    if (std::find(different.begin(), different.end(), r) == different.end()) different.push_back(r);
  }
  if (free->size() < fewest || different.size() < 3 || !somewhere)
    return refuse("readings-too-few", "decade-box readings", fmt::format("{} with the needle free", free->size()),
                  fmt::format("at least {} with the needle free, at three different ohms, not only grounded and open",
                              fewest == 3 ? "three" : "four"));
  return free;
}

MovementFit reported(const std::vector<BoxReading>& readings, const std::vector<BoxReading>& free,
                     const Eigen::VectorXd& off, Movement movement, std::vector<FittedNumber> numbers,
                     const Eigen::MatrixXd& covariance) {
  MovementFit fit{std::move(movement),
                  std::move(numbers),
                  {},
                  off.squaredNorm(),
                  static_cast<int>(off.size()) - static_cast<int>(covariance.rows()),
                  0,
                  {}};
  double grown = 1;
  if (fit.freedom > 0) {
    const boost::math::chi_squared chance(fit.freedom);
    if (boost::math::cdf(boost::math::complement(chance, fit.chiSquare)) < kUnlikely)
      fit.findings.push_back(scatter(free, off));
    grown = std::max(1.0, fit.chiSquare / fit.freedom);
  } else {
    fit.findings.push_back({"fit-unchecked", Severity::note,
                            "The free readings give the movement but leave none to check it by.",
                            "take two or three more", "your reading"});
  }
  for (Eigen::Index i = 0; i < covariance.rows(); ++i) {
    for (Eigen::Index j = 0; j < covariance.cols(); ++j) fit.covariance.push_back(grown * covariance(i, j));
    FittedNumber& number = fit.numbers[static_cast<std::size_t>(i)];
    number.uncertainty = std::sqrt(grown * covariance(i, i)) * (number.unit == "Ω" ? number.value : 1);
  }
  checkStops(readings, fit);
  return fit;
}

double MovementFit::knowledge(Ohms sender) const {
  BoxReading at;
  at.box = sender;
  if (std::holds_alternative<Bimetal>(movement)) return knowledgeOf<BimetalShape>(*this, at);
  if (std::get<CrossedCoil>(movement).magnet) return knowledgeOf<MagnetShape>(*this, at);
  return knowledgeOf<CoilShape>(*this, at);
}

Expected<MovementFit> fitCrossedCoil(const std::vector<BoxReading>& readings) {
  const auto free = enoughFree(readings, 3);
  if (!free) return tl::make_unexpected(free.error());
  const auto found = solved<CoilShape>(*free, {}, coilStarts(*free));
  if (!found) return tooClose();
  const auto& [at, covariance, off] = *found;
  if (std::sqrt(covariance(2, 2)) > kWorstLnOhms || std::sqrt(covariance(1, 1)) > kWorstSweep) return tooClose();
  auto movement = checked(CrossedCoil{{at[0]}, {at[1]}, ohms(std::exp(at[2])), {}, {}, {}});
  if (!movement) return tooClose();
  return reported(readings, *free, off, std::move(*movement),
                  {{"grounded", "°", at[0]}, {"sweep", "°", at[1]}, {"half", "Ω", std::exp(at[2])}}, covariance);
}

Expected<MovementFit> fitBimetal(const std::vector<BoxReading>& readings, Volts regulated) {
  if (!(inVolts(regulated) > 0) || std::isinf(inVolts(regulated)))
    return refuse("movement-out-of-range", "regulator", fmt::format("{:g} V", inVolts(regulated)), "volts RMS above 0");
  const auto free = enoughFree(readings, 3);
  if (!free) return tl::make_unexpected(free.error());
  const auto found = solved<BimetalShape>(*free, {}, bimetalStarts(*free));
  if (!found) return tooClose();
  const auto& [at, covariance, off] = *found;
  if (std::sqrt(covariance(2, 2)) > kWorstLnOhms) return tooClose();
  auto movement = checked(Bimetal{{at[0]}, {at[1]}, ohms(std::exp(at[2])), regulated});
  if (!movement) return tooClose();
  return reported(readings, *free, off, std::move(*movement),
                  {{"rest", "°", at[0]}, {"grounded", "°", at[1]}, {"heater", "Ω", std::exp(at[2])}}, covariance);
}

}  // namespace ohmkin::gauge
