# The page's files inside the program: their bytes between two labels of an assembler file, and a table from path to
# label. Names are fixed, so that a change of the page compiles anew without configuring anew.
function(tracewright_page_files target folder)
  set(assembly ${CMAKE_CURRENT_BINARY_DIR}/page_bytes.S)
  set(table ${CMAKE_CURRENT_BINARY_DIR}/page_files.cpp)
  set(bytes ".section .rodata\n")
  set(declared "")
  set(rows "")
  set(number 0)
  foreach(file IN LISTS ARGN)
    set(label tracewright_page_${number})
    string(APPEND bytes ".global ${label}\n.global ${label}_end\n${label}:\n.incbin \"${folder}/${file}\"\n${label}_end:\n.byte 0\n")
    string(APPEND declared "extern \"C\" const char ${label}[];\nextern \"C\" const char ${label}_end[];\n")
    string(APPEND rows "        PageFile{\"/${file}\", {${label}, static_cast<std::size_t>(${label}_end - ${label})}},\n")
    list(APPEND paths ${folder}/${file})
    math(EXPR number "${number} + 1")
  endforeach()
  string(APPEND bytes ".section .note.GNU-stack,\"\",%progbits\n")
  file(CONFIGURE OUTPUT ${assembly} CONTENT "${bytes}" @ONLY)
  file(CONFIGURE OUTPUT ${table} CONTENT "#include \"serve/page_files.hpp\"

#include <array>
#include <cstddef>

${declared}
namespace tracewright {

std::span<const PageFile> page_files() {
    static const std::array files{
${rows}    };
    return files;
}

}  // namespace tracewright
" @ONLY)
  set_source_files_properties(${assembly} PROPERTIES OBJECT_DEPENDS "${paths}")
  target_sources(${target} PRIVATE ${assembly} ${table} ${paths})
endfunction()
