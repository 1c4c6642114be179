#include "store/left_over.hpp"

#include <filesystem>

namespace tracewright {

Stored<void> nothing_left_over_beside(const std::string& path) {
    for (const char* ending : {"-wal", "-shm", "-journal"}) {
        std::error_code none;
        if (std::filesystem::exists(path + ending, none)) {
            return store_error(
                StoreErrorKind::exists,
                path + ending +
                    ": found what is left over of another practice of this name, expected none: "
                    "it would be played back into this one. Put it aside, or choose another name");
        }
    }
    return {};
}

}  // namespace tracewright
