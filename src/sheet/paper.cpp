#include <sheet/paper.h>

#include <algorithm>
#include <cctype>

namespace ohmkin::sheet {

PaperSize sizeOf(Paper paper, Way way) {
  const PaperSize upright = paper == Paper::a4 ? PaperSize{210, 297} : PaperSize{215.9, 279.4};
  return way == Way::portrait ? upright : PaperSize{upright.height, upright.width};
}

Expected<Paper> parsePaper(std::string_view text, std::string_view where) {
  std::string small(text);
  std::transform(small.begin(), small.end(), small.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (small == "a4") return Paper::a4;
  if (small == "letter") return Paper::letter;
  return refuse("paper-unknown", std::string(where), "'" + std::string(text) + "'", "A4 or Letter");
}

}  // namespace ohmkin::sheet
