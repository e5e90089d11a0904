#pragma once
#include <catalog/key.h>
#include <string_view>

namespace ohmkin::catalog {

enum class SourceKind { published, makerSheet, bench, commonPractice, demo };
std::string_view text(SourceKind kind);  ///< "maker sheet", as in the file

/// Where a fact comes from. Every fact of the catalogue carries its source, so that every verdict can cite it.
struct Source {
  SourceKey id;
  SourceKind kind = SourceKind::demo;
  std::string citation;
  double confidence = 0;  ///< 0 … 1
};

/// For Finding::source: the citation, or "demo: …", or "common practice, no source" with what is cited added.
std::string cite(const Source& source);

}  // namespace ohmkin::catalog
