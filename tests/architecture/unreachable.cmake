# Tries includes on a room's own include path, as its sources see it. ROOM's own header must be found, so that the test
# cannot pass for a wrong reason; each of FORBIDDEN must not be.
function(compiles header result)
  set(file "${FOLDER}/${ROOM}_includes.cpp")
  file(WRITE "${file}" "#include <${header}>\n")
  execute_process(COMMAND ${COMPILER} -std=c++20 -fsyntax-only ${INCLUDES} "${file}"
                  RESULT_VARIABLE code OUTPUT_QUIET ERROR_VARIABLE message)
  set(${result} ${code} PARENT_SCOPE)
  set(message "${message}" PARENT_SCOPE)
endfunction()

string(REPLACE "|" ";" FORBIDDEN "${FORBIDDEN}")
string(REPLACE "|" ";" INCLUDES "${INCLUDES}")
list(REMOVE_ITEM INCLUDES "" /usr/include)  # the compiler's own, which must keep its place in the order
list(TRANSFORM INCLUDES PREPEND "-I")
compiles("${OWN}" code)
if(NOT code EQUAL 0)
  message(FATAL_ERROR "<${OWN}> is not found by its own room, so the others prove nothing\n${message}")
endif()
foreach(header IN LISTS FORBIDDEN)
  compiles("${header}" code)
  if(code EQUAL 0 OR NOT message MATCHES "No such file|file not found")  # g++'s words, clang's
    message(FATAL_ERROR "${ROOM} can reach <${header}>\n${message}")
  endif()
endforeach()
