#include <dating/decode.h>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "usual_layouts.h"

using namespace ohmkin;
using namespace ohmkin::dating;

namespace {

/// A layout out of bytes: most are unsound, and must be refused rather than harm.
Layout layoutOf(const std::uint8_t*& data, std::size_t& size) {
  Layout layout{"fuzz", "layout of bytes", FoundOn::head, {}};
  for (std::size_t fields = size > 0 ? data[0] % 8U : 0; fields > 0 && size > 3; --fields) {
    Field field{static_cast<FieldKind>(data[1] % 15), {}, data[2] % 2 == 1};
    if (data[2] >= 128) field.text = std::string(1, static_cast<char>(data[3]));
    layout.fields.push_back(std::move(field));
    data += 3;
    size -= 3;
  }
  return layout;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::vector<Layout> usual = dating::test::usualLayouts();
  if (size < 2) return 0;
  const std::size_t which = data[0] % (usual.size() + 1);
  ++data;
  --size;
  const Layout layout = which < usual.size() ? usual[which] : layoutOf(data, size);
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto decoded = decode(layout, text);
  if (!decoded) return 0;
  for (const Reading& reading : decoded->readings)
    if (!(reading.weight > 0 && reading.weight <= 1) || reading.from >= reading.until) std::abort();
  if (!decoded->readings.empty()) assumptions(*decoded, decoded->readings.back());
  if (decoded->readings.empty() && decoded->findings.empty()) std::abort();
  return 0;
}
