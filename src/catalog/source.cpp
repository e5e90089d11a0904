#include <catalog/row.h>
#include <catalog/source.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<SourceKind, 5> kSourceKinds{{{SourceKind::published, "published"},
                                             {SourceKind::makerSheet, "maker sheet"},
                                             {SourceKind::bench, "bench"},
                                             {SourceKind::commonPractice, "common practice"},
                                             {SourceKind::demo, "demo"}}};

}  // namespace

std::string_view text(SourceKind kind) { return wordFor(kSourceKinds, kind); }

std::string cite(const Source& source) {
  switch (source.kind) {
    case SourceKind::demo:
      return source.citation.empty() ? "demo" : "demo: " + source.citation;
    case SourceKind::commonPractice:
      return source.citation.empty() ? "common practice, no source" : "common practice, no source: " + source.citation;
    default:
      return source.citation;
  }
}

Source Row::source() {
  Source source;
  source.id = key<SourceKey>();
  source.kind = oneOf(kSourceKinds);
  source.citation = text();
  source.confidence = number();
  return source;
}

}  // namespace ohmkin::catalog
