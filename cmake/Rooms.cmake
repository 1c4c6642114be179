# One static library per room. `ROOMS` names the rooms it may include, `LIBRARIES` the
# libraries its headers show, `PRIVATE_LIBRARIES` those only its sources use.
# tests/architecture holds the same picture and fails on an #include that is not in it.
add_library(tracewright_flags INTERFACE)
target_include_directories(tracewright_flags INTERFACE ${PROJECT_SOURCE_DIR}/src)
target_compile_options(tracewright_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast -Werror
  # Results are the same bytes on every build of the pinned platform (architecture rule 9).
  -ffp-contract=off)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # g++ 12 reports overlaps that are not there inside std::string (GCC bug 105651), and values that may
  # be uninitialised inside std::optional and std::function under sanitizers.
  target_compile_options(tracewright_flags INTERFACE -Wno-restrict -Wno-maybe-uninitialized)
endif()

function(tracewright_room name)
  cmake_parse_arguments(ARG "" "" "ROOMS;LIBRARIES;PRIVATE_LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${name}/*.cpp)
  list(TRANSFORM ARG_ROOMS PREPEND tracewright_)
  if(NOT sources)  # a room whose first source is not written yet
    add_library(tracewright_${name} INTERFACE)
    target_link_libraries(tracewright_${name}
      INTERFACE tracewright_flags ${ARG_ROOMS} ${ARG_LIBRARIES})
    return()
  endif()
  add_library(tracewright_${name} STATIC ${sources})
  target_link_libraries(tracewright_${name}
    PUBLIC tracewright_flags ${ARG_ROOMS} ${ARG_LIBRARIES}
    PRIVATE ${ARG_PRIVATE_LIBRARIES})
endfunction()
