# ohmkin_room(<name> SOURCES <files…> [USES <rooms…>] [LINKS <targets…>] [HIDES <targets…>])
#
# One static library a room. Its headers are reached as <room/header.h> through a link in the build folder that holds
# that room alone, so <catalog/…> cannot be included by a room that does not list catalog under USES.
# LINKS become part of the room's public face, HIDES stay inside it.
function(ohmkin_room name)
  cmake_parse_arguments(ROOM "" "" "SOURCES;USES;LINKS;HIDES" ${ARGN})
  set(doorway "${PROJECT_BINARY_DIR}/doorways/${name}")
  file(MAKE_DIRECTORY "${doorway}")
  file(CREATE_LINK "${CMAKE_CURRENT_SOURCE_DIR}" "${doorway}/${name}" SYMBOLIC)

  if(ROOM_SOURCES)
    set(scope PUBLIC)
    add_library(ohmkin_${name} STATIC ${ROOM_SOURCES})
    target_link_libraries(ohmkin_${name} PRIVATE ohmkin_warnings ${ROOM_HIDES})
  else()
    set(scope INTERFACE)
    add_library(ohmkin_${name} INTERFACE)
  endif()
  add_library(Ohmkin::${name} ALIAS ohmkin_${name})
  target_include_directories(ohmkin_${name} ${scope} "${doorway}")
  list(TRANSFORM ROOM_USES PREPEND "Ohmkin::")
  target_link_libraries(ohmkin_${name} ${scope} ${ROOM_USES} ${ROOM_LINKS})
endfunction()
