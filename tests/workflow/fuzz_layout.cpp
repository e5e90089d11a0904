#include <dating/layout.h>
#include <workflow/date_engine.h>
#include <workflow/save_layout.h>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

using namespace ohmkin;

namespace {

void hold(bool so) {
  if (!so) std::abort();
}

}  // namespace

/// Lines: fields of a layout as they are typed, after an empty line a code to try it on.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size > 400) return 0;
  std::string_view rest(reinterpret_cast<const char*>(data), size);
  dating::Layout layout{"fuzz", "typed", dating::FoundOn::head, {}};
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    const std::string_view line = rest.substr(0, end);
    rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
    if (line.empty()) break;
    if (const auto field = workflow::readField(line, "fuzz")) {
      layout.fields.push_back(*field);
      const auto again = workflow::readField(workflow::fieldText(*field), "fuzz");
      hold(again && again->kind == field->kind && again->optional == field->optional && again->text == field->text);
    }
  }
  (void)workflow::readSource(rest, "fuzz");
  if (const auto decoded = workflow::tryLayout(layout, std::string(rest))) {
    for (const auto& reading : decoded->readings) hold(reading.weight > 0 && reading.weight <= 1);
  }
  return 0;
}
