# A sanitizer makes them ten times slower; a test that hangs must still end.
set(OHMKIN_TEST_SECONDS 300)
if(OHMKIN_SANITIZE)
  set(OHMKIN_TEST_SECONDS 1800)
endif()

# ohmkin_test(<room> <tst_name…> [LINKS <targets…>])
#
# Each name is a Qt Test program <name>.cpp in the current folder, run headless. Tests mirror src/: tests/<room>/tst_<unit>.cpp.
# OHMKIN_TEST_DATA is the folder tests/data, where outside reference values are kept with their source.
function(ohmkin_test room)
  cmake_parse_arguments(TEST "" "" "LINKS" ${ARGN})
  foreach(name IN LISTS TEST_UNPARSED_ARGUMENTS)
    add_executable(${room}_${name} ${name}.cpp)
    set_target_properties(${room}_${name} PROPERTIES AUTOMOC ON OUTPUT_NAME ${name})
    target_link_libraries(${room}_${name} PRIVATE Ohmkin::${room} ohmkin_test_support ${TEST_LINKS})
    target_compile_definitions(${room}_${name} PRIVATE OHMKIN_TEST_DATA="${PROJECT_SOURCE_DIR}/tests/data")
    if(OHMKIN_SANITIZE)
      target_compile_options(${room}_${name} PRIVATE -include "${PROJECT_SOURCE_DIR}/tests/support/patience.h")
    endif()
    if(OHMKIN_SANITIZE MATCHES "thread")
      target_sources(${room}_${name} PRIVATE $<TARGET_OBJECTS:ohmkin_qt_shows_its_locks>)
    endif()
    add_test(NAME ${room}/${name} COMMAND ${room}_${name})
    set_tests_properties(${room}/${name} PROPERTIES
      ENVIRONMENT "QT_QPA_PLATFORM=offscreen;RC_PARAMS=seed=1959;XDG_STATE_HOME=${PROJECT_BINARY_DIR}/state" TIMEOUT ${OHMKIN_TEST_SECONDS})
  endforeach()
endfunction()

# ohmkin_benchmark(<room> <bm_name…> [LINKS <targets…>]): Google Benchmark programs, built with OHMKIN_BENCHMARKS, never
# run as tests. The target ohmkin_benchmarks is all of them; packaging/bench builds and runs it.
if(OHMKIN_BENCHMARKS)
  add_custom_target(ohmkin_benchmarks)
endif()
function(ohmkin_benchmark room)
  if(NOT OHMKIN_BENCHMARKS)
    return()
  endif()
  cmake_parse_arguments(BENCHMARK "" "" "LINKS" ${ARGN})
  find_package(benchmark REQUIRED)
  foreach(name IN LISTS BENCHMARK_UNPARSED_ARGUMENTS)
    add_executable(${name} ${name}.cpp)
    target_link_libraries(${name} PRIVATE Ohmkin::${room} benchmark::benchmark benchmark::benchmark_main ohmkin_warnings
                          ${BENCHMARK_LINKS})
    add_dependencies(ohmkin_benchmarks ${name})
    target_compile_definitions(${name} PRIVATE OHMKIN_TEST_DATA="${PROJECT_SOURCE_DIR}/tests/data")
  endforeach()
endfunction()

# ohmkin_fuzz(<room> <fuzz_name> [LINKS <targets…>]): a target for libFuzzer with its corpus in tests/fuzz-corpora/<name>.
# With OHMKIN_FUZZ (clang) it is that, and a short run of it is a test. Without, the corpus and some thousand inputs made
# of it by chance go through it as a test: any compiler can.
function(ohmkin_fuzz room name)
  cmake_parse_arguments(FUZZ "" "" "LINKS" ${ARGN})
  string(REPLACE "fuzz_" "" corpus ${name})
  set(corpus "${PROJECT_SOURCE_DIR}/tests/fuzz-corpora/${corpus}")
  add_executable(${name} ${name}.cpp)
  target_link_libraries(${name} PRIVATE Ohmkin::${room} ohmkin_warnings ${FUZZ_LINKS})
  if(OHMKIN_FUZZ)
    target_link_options(${name} PRIVATE -fsanitize=fuzzer)
    set(found "${CMAKE_CURRENT_BINARY_DIR}/${name}.corpus")
    file(MAKE_DIRECTORY "${found}")
    add_test(NAME ${room}/${name} COMMAND ${name} -max_total_time=5 -timeout=20 -rss_limit_mb=2048 "${found}" "${corpus}")
  else()
    target_sources(${name} PRIVATE "${PROJECT_SOURCE_DIR}/tests/support/fuzz_replay.cpp")
    add_test(NAME ${room}/${name} COMMAND ${name} "${corpus}")
  endif()
  set_tests_properties(${room}/${name} PROPERTIES TIMEOUT ${OHMKIN_TEST_SECONDS} LABELS fuzz)
endfunction()
