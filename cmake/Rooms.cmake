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

# Under sanitizers the rooms alone are instrumented: their tests and the command compile to the same bytes as in the release
# build, which a compiler cache gives back at once. What every source includes is read once there; in the release
# build it is not, so that a missing #include fails.
set(tracewright_sanitizing -pthread -O1 -g1 -UNDEBUG -D_GLIBCXX_ASSERTIONS -fno-omit-frame-pointer
  -fsanitize=address,undefined -fno-sanitize-recover=all)
if(TRACEWRIGHT_SANITIZE_ROOMS)
  target_link_options(tracewright_flags INTERFACE -fsanitize=address,undefined)
  file(WRITE ${PROJECT_BINARY_DIR}/rooms_read_once.cpp "int rooms_read_once();\nint rooms_read_once() { return 0; }\n")
  add_library(rooms_read_once OBJECT ${PROJECT_BINARY_DIR}/rooms_read_once.cpp)
  target_link_libraries(rooms_read_once PRIVATE tracewright_flags)
  target_compile_options(rooms_read_once PRIVATE ${tracewright_sanitizing})
  target_precompile_headers(rooms_read_once PRIVATE
    <algorithm> <array> <chrono> <cmath> <cstdint> <functional> <map> <memory> <optional> <span> <string>
    <string_view> <utility> <vector>)
endif()

# Instruments a target of src where the build asks for it.
function(tracewright_sanitize target)
  if(TRACEWRIGHT_SANITIZE_ROOMS)
    target_compile_options(${target} PRIVATE ${tracewright_sanitizing})
    target_precompile_headers(${target} REUSE_FROM rooms_read_once)
  endif()
endfunction()

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
  tracewright_sanitize(tracewright_${name})
  # A matrix may be made in a room and end in its test: both must take memory from the same place.
  if(TRACEWRIGHT_SANITIZE_ROOMS AND "${ARG_ROOMS};${ARG_LIBRARIES};${ARG_PRIVATE_LIBRARIES}" MATCHES "Eigen3|responses")
    target_compile_definitions(tracewright_${name} PRIVATE EIGEN_MALLOC_ALREADY_ALIGNED=1)
  endif()
endfunction()
