# Tries each line below as a function body. The first must compile, so that the test cannot pass for a wrong reason.
set(good "auto x = ohmkin::celsius(100) - ohmkin::celsius(20); ohmkin::TemperatureDifference d = x; (void)d;")
set(bad
  "auto x = ohmkin::celsius(100) + ohmkin::celsius(20)"
  "ohmkin::Temperature t = ohmkin::celsius(100) - ohmkin::celsius(20)"
  "ohmkin::TemperatureDifference d = ohmkin::celsius(1)"
  "ohmkin::Temperature t = 95.0"
  "ohmkin::Ohms r = 51.0"
  "ohmkin::Ohms r = ohmkin::volts(12)"
  "bool b = ohmkin::celsius(1) < ohmkin::kelvins(1)")

function(compiles body result)
  set(file "${CMAKE_CURRENT_BINARY_DIR}/must_not_compile_case.cpp")
  file(WRITE "${file}" "#include <quantity/quantity.h>\nint main() { ${body}; }\n")
  execute_process(COMMAND ${COMPILER} -std=c++20 -fsyntax-only -I${INCLUDES}/quantity -I${INCLUDES}/finding "${file}"
                  RESULT_VARIABLE code OUTPUT_QUIET ERROR_QUIET)
  set(${result} ${code} PARENT_SCOPE)
endfunction()

compiles("${good}" code)
if(NOT code EQUAL 0)
  message(FATAL_ERROR "the good line does not compile, so the others prove nothing")
endif()
foreach(body IN LISTS bad)
  compiles("${body}" code)
  if(code EQUAL 0)
    message(FATAL_ERROR "compiles and must not: ${body}")
  endif()
endforeach()
