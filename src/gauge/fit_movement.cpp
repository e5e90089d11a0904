#include <gauge/fit_movement.h>

#include <ceres/tiny_solver.h>
#include <fmt/core.h>
#include <Eigen/Dense>
#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <limits>
#include <numbers>

namespace ohmkin::gauge {
namespace {

constexpr double kRadian = std::numbers::pi / 180;
constexpr int kParameters = 3;
constexpr std::size_t kStarts = 4;
constexpr double kUnlikely = 0.001;  // readings that scatter so much by chance once in a thousand
constexpr double kStandardDeviations = 3;
constexpr double kWorstSweep = 30;  // degrees of standard uncertainty; more says nothing about the sweep
constexpr double kWorstLnOhms = 1;

using Parameters = Eigen::Vector3d;

/// Angle and its derivatives by the parameters (grounded °, sweep °, ln half).
struct CoilShape {
  static double at(const Parameters& p, double ohms, double* by) {
    const double delta = p[1] * kRadian;
    by[0] = 1;
    if (std::isinf(ohms)) {
      by[1] = 1;
      by[2] = 0;
      return p[0] + p[1];
    }
    const double x = ohms / std::exp(p[2]);
    const double square = 1 + x * (2 * std::cos(delta) + x);
    by[1] = x * (x + std::cos(delta)) / square;
    by[2] = -x * std::sin(delta) / square / kRadian;
    return p[0] + std::atan2(x * std::sin(delta), 1 + x * std::cos(delta)) / kRadian;
  }
};

/// Angle and its derivatives by the parameters (rest °, grounded °, ln heater).
struct BimetalShape {
  static double at(const Parameters& p, double ohms, double* by) {
    const double heater = std::exp(p[2]);
    const double share = heater / (heater + ohms);
    by[0] = 1 - share * share;
    by[1] = share * share;
    by[2] = 2 * (p[1] - p[0]) * share * share * (1 - share);
    return p[0] + (p[1] - p[0]) * share * share;
  }
};

template <class Shape>
struct Residuals {
  using Scalar = double;
  enum { NUM_PARAMETERS = kParameters, NUM_RESIDUALS = Eigen::Dynamic };
  const std::vector<BoxReading>& free;

  [[nodiscard]] int NumResiduals() const { return static_cast<int>(free.size()); }
  bool operator()(const double* parameters, double* residuals, double* jacobian) const {
    const Parameters p(parameters[0], parameters[1], parameters[2]);
    for (std::size_t i = 0; i < free.size(); ++i) {
      std::array<double, kParameters> by{};
      const double angle = Shape::at(p, inOhms(free[i].box), by.data());
      residuals[i] = (angle - free[i].needle.degrees) / free[i].uncertainty;
      if (jacobian == nullptr) continue;
      for (std::size_t j = 0; j < kParameters; ++j) jacobian[j * free.size() + i] = by[j] / free[i].uncertainty;
    }
    return true;
  }
};

struct Start {
  double cost;
  Parameters at;
};

/// What is linear in the angle is solved for; the rest is tried out on a grid.
template <class Shape>
Start solvedFor(const std::vector<BoxReading>& free, const Parameters& grid, const std::vector<int>& linear) {
  Parameters at = grid;
  const auto rows = static_cast<Eigen::Index>(free.size());
  Eigen::MatrixXd by(rows, static_cast<Eigen::Index>(linear.size()));
  Eigen::VectorXd right(rows);
  for (const int j : linear) at[j] = 0;
  for (Eigen::Index i = 0; i < rows; ++i) {
    const BoxReading& reading = free[static_cast<std::size_t>(i)];
    std::array<double, kParameters> all{};
    right[i] = (reading.needle.degrees - Shape::at(at, inOhms(reading.box), all.data())) / reading.uncertainty;
    for (std::size_t j = 0; j < linear.size(); ++j)
      by(i, static_cast<Eigen::Index>(j)) = all[static_cast<std::size_t>(linear[j])] / reading.uncertainty;
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

std::vector<Start> coilStarts(const std::vector<BoxReading>& free) {
  std::vector<Start> starts;
  for (const double ln : lnOhmsGrid(free))
    for (int sweep = 15; sweep < 180; sweep += 15)
      for (const int way : {-1, 1}) starts.push_back(solvedFor<CoilShape>(free, {0, double(way * sweep), ln}, {0}));
  return starts;
}

std::vector<Start> bimetalStarts(const std::vector<BoxReading>& free) {
  std::vector<Start> starts;
  for (const double ln : lnOhmsGrid(free)) starts.push_back(solvedFor<BimetalShape>(free, {0, 0, ln}, {0, 1}));
  return starts;
}

tl::unexpected<Refusal> tooClose() {
  return refuse("readings-too-close", "decade-box readings",
                "readings that do not tell the movement's three numbers apart",
                "readings spread over more of the dial");
}

/// The free readings, if there are enough of them for three parameters.
Expected<std::vector<BoxReading>> enoughFree(const std::vector<BoxReading>& readings) {
  auto free = freeReadings(readings);
  if (!free) return free;
  std::vector<double> different;
  bool somewhere = false;
  for (const BoxReading& reading : *free) {
    const double r = inOhms(reading.box);
    somewhere = somewhere || (r > 0 && std::isfinite(r));
    if (std::find(different.begin(), different.end(), r) == different.end()) different.push_back(r);
  }
  if (different.size() < kParameters || !somewhere)
    return refuse("readings-too-few", "decade-box readings", fmt::format("{} with the needle free", different.size()),
                  "at least three with the needle free, at different ohms, not only grounded and open");
  return free;
}

Parameters parametersOf(const Movement& movement) {
  if (const auto* coil = std::get_if<CrossedCoil>(&movement))
    return {coil->grounded.degrees, coil->sweep.degrees, std::log(inOhms(coil->half))};
  const auto& bimetal = std::get<Bimetal>(movement);
  return {bimetal.rest.degrees, bimetal.grounded.degrees, std::log(inOhms(bimetal.heater))};
}

Finding scatter(const std::vector<BoxReading>& free, const Eigen::VectorXd& residuals) {
  Eigen::Index worst = 0;
  residuals.cwiseAbs().maxCoeff(&worst);
  const BoxReading& reading = free[static_cast<std::size_t>(worst)];
  return {"readings-scatter", Severity::caution,
          fmt::format("The readings scatter more than their uncertainty says; the one farthest off is {:g} Ω.",
                      inOhms(reading.box)),
          fmt::format("{:.1f} standard uncertainties off", std::abs(residuals[worst])), "your reading"};
}

/// Points on a stop must be at it or past it by the law that was found.
void checkStops(const std::vector<BoxReading>& readings, MovementFit& fit) {
  for (const BoxReading& reading : readings) {
    if (reading.rests == Rests::free) continue;
    ++fit.onStops;
    const double past = (deflection(fit.movement, reading.box) - reading.needle).degrees *
                        (reading.rests == Rests::onRightStop ? 1 : -1);
    if (past >= -kStandardDeviations * std::hypot(reading.uncertainty, fit.knowledge(reading.box))) continue;
    fit.findings.push_back(
        {"stop-contradicts-fit", Severity::warning,
         fmt::format(
             "At {:g} Ω the needle was on a stop, but by the other readings it should stand {:.0f}° short of it.",
             inOhms(reading.box), -past),
         "a sticking needle, a wrong reading, or another kind of movement", "your reading"});
  }
}

template <class Shape>
Expected<MovementFit> fitted(const std::vector<BoxReading>& readings, const std::vector<BoxReading>& free,
                             std::vector<Start> starts, Movement (*movementOf)(const Parameters&, Volts),
                             Volts regulated) {
  const Residuals<Shape> residuals{free};
  const std::size_t tried = std::min(kStarts, starts.size());
  std::partial_sort(starts.begin(), starts.begin() + static_cast<std::ptrdiff_t>(tried), starts.end(),
                    [](const Start& a, const Start& b) { return a.cost < b.cost; });
  Start best{std::numeric_limits<double>::infinity(), Parameters::Zero()};
  for (std::size_t i = 0; i < tried; ++i) {
    ceres::TinySolver<Residuals<Shape>> solver;
    solver.options.max_num_iterations = 200;
    solver.options.gradient_tolerance = 1e-12;
    solver.options.parameter_tolerance = 1e-12;
    Parameters at = starts[i].at;
    const auto summary = solver.Solve(residuals, &at);
    if (std::isfinite(summary.final_cost) && summary.final_cost < best.cost) best = {summary.final_cost, at};
  }
  if (!std::isfinite(best.cost)) return tooClose();

  Eigen::VectorXd off(free.size());
  Eigen::MatrixXd jacobian(free.size(), kParameters);
  residuals(best.at.data(), off.data(), jacobian.data());
  const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(jacobian);
  if (qr.rank() < kParameters) return tooClose();
  const Eigen::Matrix3d r = qr.matrixR().topRows<kParameters>().triangularView<Eigen::Upper>();
  const Eigen::Matrix3d inverse = qr.colsPermutation() * r.inverse();
  Eigen::Matrix3d covariance = inverse * inverse.transpose();
  auto movement = checked(movementOf(best.at, regulated));
  if (!movement) return tooClose();
  const bool coil = std::holds_alternative<CrossedCoil>(*movement);
  if (std::sqrt(covariance(2, 2)) > kWorstLnOhms || (coil && std::sqrt(covariance(1, 1)) > kWorstSweep))
    return tooClose();

  MovementFit fit{std::move(*movement), {}, off.squaredNorm(), static_cast<int>(free.size()) - kParameters, 0, {}};
  if (fit.freedom > 0) {
    const boost::math::chi_squared chance(fit.freedom);
    if (boost::math::cdf(boost::math::complement(chance, fit.chiSquare)) < kUnlikely)
      fit.findings.push_back(scatter(free, off));
    covariance *= std::max(1.0, fit.chiSquare / fit.freedom);
  } else {
    fit.findings.push_back({"fit-unchecked", Severity::note,
                            "Three free readings give the movement but leave none to check it by.",
                            "take two or three more", "your reading"});
  }
  Eigen::Map<Eigen::Matrix<double, kParameters, kParameters, Eigen::RowMajor>>(fit.covariance.data()) = covariance;
  checkStops(readings, fit);
  return fit;
}

Movement coilOf(const Parameters& p, Volts) { return CrossedCoil{{p[0]}, {p[1]}, ohms(std::exp(p[2])), {}, {}, {}}; }
Movement bimetalOf(const Parameters& p, Volts regulated) {
  return Bimetal{{p[0]}, {p[1]}, ohms(std::exp(p[2])), regulated};
}

}  // namespace

double MovementFit::knowledge(Ohms sender) const {
  Eigen::Vector3d by;
  const Parameters p = parametersOf(movement);
  if (std::holds_alternative<CrossedCoil>(movement)) CoilShape::at(p, inOhms(sender), by.data());
  else BimetalShape::at(p, inOhms(sender), by.data());
  const Eigen::Map<const Eigen::Matrix<double, kParameters, kParameters, Eigen::RowMajor>> known(covariance.data());
  return std::sqrt(std::max(0.0, by.dot(known * by)));
}

Expected<MovementFit> fitCrossedCoil(const std::vector<BoxReading>& readings) {
  const auto free = enoughFree(readings);
  if (!free) return tl::make_unexpected(free.error());
  return fitted<CoilShape>(readings, *free, coilStarts(*free), coilOf, volts(0));
}

Expected<MovementFit> fitBimetal(const std::vector<BoxReading>& readings, Volts regulated) {
  if (!(inVolts(regulated) > 0) || std::isinf(inVolts(regulated)))
    return refuse("movement-out-of-range", "regulator", fmt::format("{:g} V", inVolts(regulated)), "volts RMS above 0");
  const auto free = enoughFree(readings);
  if (!free) return tl::make_unexpected(free.error());
  return fitted<BimetalShape>(readings, *free, bimetalStarts(*free), bimetalOf, regulated);
}

}  // namespace ohmkin::gauge
