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
    add_test(NAME ${room}/${name} COMMAND ${room}_${name})
    set_tests_properties(${room}/${name} PROPERTIES
      ENVIRONMENT "QT_QPA_PLATFORM=offscreen;RC_PARAMS=seed=1959;XDG_STATE_HOME=${PROJECT_BINARY_DIR}/state" TIMEOUT 300)
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
