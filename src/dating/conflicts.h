#pragma once
#include <dating/evidence.h>
#include <dating/possible_days.h>

/// Facts that no date joins. Inner header of the room.
namespace ohmkin::dating {

/// What one fact, read as it most likely is, says about the day of assembly.
struct Fact {
  std::string name;                    ///< "left head", "assembly stamp"
  std::optional<std::size_t> casting;  ///< which; none: the stamp
  std::vector<Days> said;              ///< days poured or stamped, in order; never empty
  int lag = 0;                         ///< longest number of days before assembly
};

/// The likely readings of a casting inside its span, or the span itself; the stamp's likely readings. Castings of which
/// nothing is known, and those whose code and span disagree, are left out.
std::vector<Fact> factsOf(const Evidence& evidence, const Days& window);

/// True where the code read as it most likely is lies wholly outside the span in which the casting number was poured.
bool codeOutsideSpan(const DatedCasting& casting);

/// The two days nearest one another, one said by each; of pairs as near to a day, as in every decade of a year digit,
/// the one nearest `about`.
struct NearestDays {
  Date one;
  Date other;
};
NearestDays nearest(const Fact& one, const Fact& other, Date about);

/// Pairs of facts that no assembly date joins; where every pair can be joined but not all together, the pair that
/// agrees on the fewest days.
std::vector<std::pair<std::size_t, std::size_t>> disagreements(const std::vector<Fact>& facts);

}  // namespace ohmkin::dating
