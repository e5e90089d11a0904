#include <workflow/layouts.h>

namespace ohmkin::workflow {

dating::Layout layoutOf(const catalog::DateLayoutRecord& record) {
  dating::Layout layout{record.id.text, record.name, dating::FoundOn::head, {}};
  for (const auto place : {dating::FoundOn::head, dating::FoundOn::block, dating::FoundOn::intake,
                           dating::FoundOn::housing, dating::FoundOn::assemblyStamp}) {
    if (dating::text(place) == catalog::text(record.foundOn)) layout.foundOn = place;
  }
  for (const catalog::DateField& field : record.fields) {
    // Both rooms spell the kinds as the file does; a test holds them to it.
    if (const auto kind = dating::fieldKind(catalog::text(field.kind)))
      layout.fields.push_back({*kind, field.text, field.optional});
  }
  return layout;
}

}  // namespace ohmkin::workflow
