# What a developer may choose. Everything has a default that suits packaging/start.
option(OHMKIN_WINDOW "Build the window program (needs Qt Widgets)" ON)
option(OHMKIN_UNITY "Compile a room's files eight at a time: a third of the time from nothing, more after a change" ON)
option(OHMKIN_TESTS "Build the tests (needs Qt Test and RapidCheck)" OFF)
option(OHMKIN_BENCHMARKS "Build the benchmarks (needs Google Benchmark)" OFF)
set(OHMKIN_SANITIZE "" CACHE STRING "Sanitizers, for example address,undefined or thread")
set(OHMKIN_FUZZ OFF CACHE BOOL "Build the libFuzzer targets (clang only)")

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
set(CMAKE_RUNTIME_OUTPUT_DIRECTORY "${PROJECT_BINARY_DIR}/bin")
if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "" FORCE)
endif()
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG")

find_program(OHMKIN_CCACHE ccache)
if(OHMKIN_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${OHMKIN_CCACHE}")
endif()
find_program(OHMKIN_MOLD mold)
if(OHMKIN_MOLD)
  add_link_options(-fuse-ld=mold)
endif()
if(OHMKIN_SANITIZE)
  add_compile_options(-fsanitize=${OHMKIN_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=undefined
                      $<$<CXX_COMPILER_ID:GNU>:-Wno-error=maybe-uninitialized>)  # g++ 12 warns of its own instrumentation
  add_link_options(-fsanitize=${OHMKIN_SANITIZE})
endif()
if(OHMKIN_FUZZ)
  add_compile_options(-fsanitize=fuzzer-no-link)
  add_link_options(-fsanitize=fuzzer-no-link)  # what is no target of libFuzzer's needs the counters as well
endif()

# Linked by every target of ours and by nothing that comes from elsewhere.
add_library(ohmkin_warnings INTERFACE)
target_compile_options(ohmkin_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wnon-virtual-dtor -Wold-style-cast -Woverloaded-virtual
  -Wnull-dereference)
if(NOT OHMKIN_SANITIZE)  # clang warns of more, and instrumented code warns of itself
  target_compile_options(ohmkin_warnings INTERFACE -Werror)
endif()
