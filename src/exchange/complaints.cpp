#include <exchange/complaints.h>
#include <fmt/format.h>

namespace ohmkin::exchange {

std::string Complaints::text() const {
  std::string all;
  for (const Refusal& refusal : list_) all += refusal.sentence() + "\n";
  if (more_ > 0) all += fmt::format("… and {} more\n", more_);
  return all;
}

}  // namespace ohmkin::exchange
