# ohmkin_embed(<target> NAMESPACE <ohmkin::x> FILES <files…>)
#
# A static library that holds the files' bytes. Its header <embedded/<target>.h> declares, in the namespace given,
#   std::span<const EmbeddedFile> files();     name (without folder) and text of each, in the order given
# The bytes come in by the assembler's .incbin: nothing to parse, nothing to copy, paged in when first read.
function(ohmkin_embed target)
  cmake_parse_arguments(EMBED "" "NAMESPACE" "FILES" ${ARGN})
  set(folder "${PROJECT_BINARY_DIR}/embedded/${target}")
  set(header "${folder}/embedded/${target}.h")
  set(source "${folder}/${target}.cpp")
  set(assembly "")
  set(externs "")
  set(entries "")
  set(index 0)
  set(paths "")
  foreach(file IN LISTS EMBED_FILES)
    get_filename_component(path "${file}" ABSOLUTE)
    get_filename_component(name "${file}" NAME)
    list(APPEND paths "${path}")
    set(symbol "${target}_${index}")
    string(APPEND assembly
      "asm(\".section .rodata\\n${symbol}_begin:\\n.incbin \\\"${path}\\\"\\n${symbol}_end:\\n.byte 0\\n.previous\\n\");\n")
    string(APPEND externs "extern const char ${symbol}_begin[];\nextern const char ${symbol}_end[];\n")
    string(APPEND entries "    {\"${name}\", {${symbol}_begin, static_cast<std::size_t>(${symbol}_end - ${symbol}_begin)}},\n")
    math(EXPR index "${index} + 1")
  endforeach()
  file(CONFIGURE OUTPUT "${header}" @ONLY CONTENT [[
#pragma once
#include <span>
#include <string_view>

namespace @EMBED_NAMESPACE@ {
struct EmbeddedFile {
  std::string_view name;
  std::string_view text;
};
std::span<const EmbeddedFile> files();
}  // namespace @EMBED_NAMESPACE@
]])
  file(CONFIGURE OUTPUT "${source}" @ONLY CONTENT [[
#include <embedded/@target@.h>
#include <array>
#include <cstddef>
extern "C" {
@externs@}
@assembly@
namespace @EMBED_NAMESPACE@ {
std::span<const EmbeddedFile> files() {
  static const std::array<EmbeddedFile, @index@> all{{
@entries@  }};
  return all;
}
}  // namespace @EMBED_NAMESPACE@
]])
  set_source_files_properties("${source}" PROPERTIES OBJECT_DEPENDS "${paths}")
  add_library(${target} STATIC "${source}")
  set_target_properties(${target} PROPERTIES INTERPROCEDURAL_OPTIMIZATION OFF)  # it would lose the symbols of the assembler text
  target_include_directories(${target} PUBLIC "${folder}")
endfunction()
