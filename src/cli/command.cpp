#include <cli/command.h>

namespace ohmkin::cli {

std::string Arguments::one(std::string_view option, const std::string& otherwise) const {
  const auto found = values.find(option);
  return found == values.end() || found->second.empty() ? otherwise : found->second.back();
}

std::vector<std::string> Arguments::all(std::string_view option) const {
  const auto found = values.find(option);
  return found == values.end() ? std::vector<std::string>{} : found->second;
}

}  // namespace ohmkin::cli
