#pragma once
#include <dating/evidence.h>
#include <dating/factor.h>
#include <dating/possible_days.h>

/// The sums behind the posterior. Inner header of the room. Days are counted from the window's first.
namespace ohmkin::dating {

/// Days on which the vehicle can have been built, if anything is known; cut to the window.
std::optional<Days> vehicleDays(const VehicleDate& vehicle, const Days& window);

class Enumeration {
 public:
  Enumeration(const Evidence& evidence, const Days& window);

  /// Product of every fact over assembly days, normalised; empty where nothing is known or the product is 0 everywhere.
  [[nodiscard]] DayDistribution assembly() const;
  [[nodiscard]] CastingPosterior casting(std::size_t i) const;
  [[nodiscard]] std::optional<double> firstEngine() const;

 private:
  /// Likelihoods of a run of days.
  struct Run {
    int begin = 0;
    Likelihoods at;
  };
  struct Casting {
    Run seen;  ///< of its code and span, by the day it was poured
    double total = 0;
    double stays = 1;
    bool informative = false;
    Factor fact;  ///< by assembly day; `above` is where it was fitted then, `everywhere` where it was changed
  };

  [[nodiscard]] int dayOf(Date day) const { return static_cast<int>((day - window_.from).count()); }
  [[nodiscard]] Run likelihoodOf(const std::vector<Reading>& readings, const Days& limit) const;
  [[nodiscard]] Casting enumerate(const DatedCasting& casting, double stays) const;
  [[nodiscard]] Likelihoods belongs(const Run& seen, bool constant) const;
  void addStamp(const AssemblyStamp& stamp, double reliability);
  void addVehicle(const Days& built, double firstEngine);
  [[nodiscard]] Likelihoods productWithout(std::size_t casting) const;
  [[nodiscard]] bool anythingKnown() const { return engineKnown_ || vehicle_; }

  Days window_;
  int size_;
  std::vector<double> castingLag_;
  std::vector<double> vehicleLag_;
  std::vector<Casting> castings_;
  std::optional<Factor> stamp_;
  std::optional<Factor> vehicle_;  ///< `above` is where the engine is the vehicle's first
  Likelihoods all_;                ///< product of everything
  bool engineKnown_ = false;
};

}  // namespace ohmkin::dating
