# ohmkin_room(<name> SOURCES <files…> [ALONE <files…>] [USES <rooms…>] [LINKS <targets…>] [HIDES <targets…>])
#
# One static library a room. Its headers are reached as <room/header.h> through a link in the build folder that holds
# that room alone, so <catalog/…> cannot be included by a room that does not list catalog under USES.
# ALONE are those of SOURCES that keep a name to themselves which another file has as well: OHMKIN_UNITY leaves them out.
# LINKS become part of the room's public face, HIDES stay inside it.
function(ohmkin_room name)
  cmake_parse_arguments(ROOM "" "" "SOURCES;ALONE;USES;LINKS;HIDES" ${ARGN})
  set(doorway "${PROJECT_BINARY_DIR}/doorways/${name}")
  file(MAKE_DIRECTORY "${doorway}")
  file(CREATE_LINK "${CMAKE_CURRENT_SOURCE_DIR}" "${doorway}/${name}" SYMBOLIC)

  if(ROOM_SOURCES)
    set(scope PUBLIC)
    add_library(ohmkin_${name} STATIC ${ROOM_SOURCES})
    target_link_libraries(ohmkin_${name} PRIVATE ohmkin_warnings ${ROOM_HIDES})
    set_target_properties(ohmkin_${name} PROPERTIES UNITY_BUILD ${OHMKIN_UNITY} UNITY_BUILD_BATCH_SIZE 8)
    set_source_files_properties(${ROOM_ALONE} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
  else()
    set(scope INTERFACE)
    add_library(ohmkin_${name} INTERFACE)
  endif()
  add_library(Ohmkin::${name} ALIAS ohmkin_${name})
  target_include_directories(ohmkin_${name} ${scope} "${doorway}")
  list(TRANSFORM ROOM_USES PREPEND "Ohmkin::")
  target_link_libraries(ohmkin_${name} ${scope} ${ROOM_USES} ${ROOM_LINKS})
  set_property(GLOBAL APPEND PROPERTY OHMKIN_ROOMS ${name})
endfunction()

# ohmkin_write_arrows(<file>)
#
# Which room really links which, "workflow catalog" a line, whatever way the link was made. Called when all rooms are there.
function(ohmkin_write_arrows file)
  get_property(rooms GLOBAL PROPERTY OHMKIN_ROOMS)
  set(arrows "")
  foreach(room IN LISTS rooms)
    foreach(property LINK_LIBRARIES INTERFACE_LINK_LIBRARIES)
      get_target_property(linked ohmkin_${room} ${property})
      foreach(library IN LISTS linked)
        if(library MATCHES "^(Ohmkin::|ohmkin_)([a-z]+)$" AND CMAKE_MATCH_2 IN_LIST rooms)
          list(APPEND arrows "${room} ${CMAKE_MATCH_2}")
        endif()
      endforeach()
    endforeach()
  endforeach()
  list(REMOVE_DUPLICATES arrows)
  list(JOIN arrows "\n" text)
  file(CONFIGURE OUTPUT "${file}" CONTENT "${text}\n" @ONLY)
endfunction()
