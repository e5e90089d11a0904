#pragma once
#include <pairing/error_table.h>
#include <pairing/limits.h>

/// Where a pair stands against the limits: nominal mismatch, with what is not known of curves and trim (k = 2) against
/// it.
namespace ohmkin::pairing {

enum class Standing {
  within,   ///< with its uncertainty
  unclear,  ///< nominally within, but the uncertainty reaches beyond
  beyond    ///< nominally beyond
};

struct Standings {
  Standing late = Standing::unclear;
  Standing low = Standing::unclear;
  Standing high = Standing::unclear;
  [[nodiscard]] bool within() const {
    return late == Standing::within && low == Standing::within && high == Standing::within;
  }
};

Standings against(const ErrorTable& table, const Limits& limits);

}  // namespace ohmkin::pairing
