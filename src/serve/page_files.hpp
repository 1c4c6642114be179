#pragma once

#include <span>
#include <string_view>

namespace tracewright {

/// A file of the page, as it stands in the program.
struct PageFile {
    std::string_view path;  ///< "/page.js"
    std::string_view bytes;
};

/// The page's files; the build puts them in (cmake/PageFiles.cmake).
std::span<const PageFile> page_files();

}  // namespace tracewright
