#include "store/whole_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace tracewright {

namespace {

class Descriptor {
  public:
    Descriptor(const std::string& path, int flags) : number_(::open(path.c_str(), flags, 0600)) {}
    ~Descriptor() {
        if (number_ >= 0) {
            ::close(number_);
        }
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    bool opened() const { return number_ >= 0; }
    bool write(std::span<const std::uint8_t> bytes) const {
        while (!bytes.empty()) {
            const ssize_t written = ::write(number_, bytes.data(), bytes.size());
            if (written < 0 && errno != EINTR) {
                return false;
            }
            bytes = bytes.subspan(written < 0 ? 0 : static_cast<std::size_t>(written));
        }
        return true;
    }
    bool sync() const { return ::fsync(number_) == 0; }

  private:
    int number_;
};

tl::unexpected<StoreError> not_written(const std::string& path, int error) {
    const bool full = error == ENOSPC || error == EDQUOT;
    return store_error(full ? StoreErrorKind::no_room : StoreErrorKind::read_only,
                       path + ": found no way to write here (" + std::strerror(error) +
                           "), expected a folder with room and the right to write");
}

std::string folder_of(const std::string& path) {
    const auto folder = std::filesystem::path(path).parent_path().string();
    return folder.empty() ? "." : folder;
}

}  // namespace

Stored<void> put_in_place(const std::string& half, const std::string& path) {
    if (const Descriptor file(half, O_RDONLY | O_CLOEXEC); !file.opened() || !file.sync()) {
        return not_written(path, errno);
    }
    if (std::rename(half.c_str(), path.c_str()) != 0) {
        return not_written(path, errno);
    }
    const Descriptor folder(folder_of(path), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (!folder.opened() || !folder.sync()) {
        return not_written(path, errno);
    }
    return {};
}

Stored<void> write_whole_file(const std::string& path, std::string_view text) {
    return write_whole_file(
        path, std::span(reinterpret_cast<const std::uint8_t*>(text.data()), text.size()));
}

Stored<void> write_whole_file(const std::string& path, std::span<const std::uint8_t> bytes) {
    std::error_code none;
    const auto there = std::filesystem::symlink_status(path, none);
    if (std::filesystem::exists(there) && !std::filesystem::is_regular_file(there)) {
        const Descriptor as_it_is(path, O_WRONLY | O_CLOEXEC);
        return as_it_is.opened() && as_it_is.write(bytes) ? Stored<void>{}
                                                          : not_written(path, errno);
    }
    const std::string half = path + ".half";
    {
        const Descriptor file(half, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC);
        if (!file.opened() || !file.write(bytes)) {
            const int error = errno;
            ::unlink(half.c_str());
            return not_written(path, error);
        }
    }
    return put_in_place(half, path);
}

Stored<std::vector<std::uint8_t>> read_whole_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::vector<std::uint8_t> bytes{std::istreambuf_iterator<char>(file), {}};
    if (!file.is_open() || file.bad()) {
        return store_error(StoreErrorKind::not_found,
                           path + ": found no file that can be read here");
    }
    return bytes;
}

}  // namespace tracewright
