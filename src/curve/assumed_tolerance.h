#pragma once

namespace ohmkin::curve {

/// Part-to-part tolerance of a sender's ohms, as a part, where the trade states none: ±10 %. Common practice, no
/// source; wherever it is taken the answer says so.
inline constexpr double kAssumedTolerance = 0.10;

}  // namespace ohmkin::curve
