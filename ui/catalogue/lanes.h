#pragma once

namespace ohmkin::shelves {

/// Lanes of the clerks: of one only the newest question counts.
enum Lane {
  finding,
  moreFound,
  showing,
  reading,
  checking,
  naming,
  usage,
  history,
  listing,
  shelving,
  moving,
  logging,
  counting
};

}  // namespace ohmkin::shelves
