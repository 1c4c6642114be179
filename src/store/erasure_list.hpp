#pragma once

#include "store/client_table.hpp"
#include "store/store_error.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// The marks of erased clients, in a file beside the practice and outside every backup, so that a
/// restored backup erases them again. A line is 32 hexadecimal digits; nothing in it tells who it
/// was.
class ErasureList {
  public:
    explicit ErasureList(std::string path) : path_(std::move(path)) {}

    const std::string& path() const { return path_; }
    /// Empty where there is no file. Error: a line that is no mark.
    Stored<std::vector<ClientMark>> marks() const;
    /// On disk when it returns. A mark that is listed already is not listed twice.
    Stored<void> add(std::span<const ClientMark> marks) const;

  private:
    std::string path_;
};

/// The list as a file holds it.
std::string erasure_list_text(std::span<const ClientMark> marks);

/// Where the list of the practice at `path` is kept.
std::string erasure_list_path(const std::string& path);

}  // namespace tracewright
