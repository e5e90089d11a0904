# ohmkin_stands_alone(<program>)
#
# The program carries the C++ library, fmt and SQLite in itself and loads nothing but C's own. Finding, mapping and
# relocating them at every start took a seventh of a match: 0.8 of 5.6 ms. What Debian does not ship as an archive, or
# in another version, stays shared. Not for programs that load C++ plugins (the window), nor under a sanitizer.
option(OHMKIN_STANDALONE "Link the C++ library, fmt and SQLite into ohmkin itself" ON)

function(ohmkin_stands_alone program)
  if(NOT OHMKIN_STANDALONE OR OHMKIN_SANITIZE)
    return()
  endif()
  target_link_options(${program} PRIVATE -static-libstdc++ -static-libgcc LINKER:--as-needed)

  # These come before the rooms' shared ones on the command line and leave nothing for them to resolve.
  find_package(fmt REQUIRED)
  if(fmt_VERSION VERSION_GREATER_EQUAL 9 AND fmt_VERSION VERSION_LESS 10)
    add_library(ohmkin_fmt OBJECT "${CMAKE_CURRENT_FUNCTION_LIST_DIR}/fmt_library.cpp")
    target_link_libraries(ohmkin_fmt PRIVATE fmt::fmt)
    target_sources(${program} PRIVATE $<TARGET_OBJECTS:ohmkin_fmt>)
  endif()
  find_library(OHMKIN_SQLITE_ARCHIVE libsqlite3.a)
  mark_as_advanced(OHMKIN_SQLITE_ARCHIVE)
  if(OHMKIN_SQLITE_ARCHIVE)
    target_link_libraries(${program} PRIVATE "$<LINK_LIBRARY:WHOLE_ARCHIVE,${OHMKIN_SQLITE_ARCHIVE}>" m)
  endif()
endfunction()
