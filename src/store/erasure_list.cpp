#include "store/erasure_list.hpp"

#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace tracewright {

namespace {

std::optional<ClientMark> mark_in(const std::string& line) {
    ClientMark mark{};
    if (line.size() != 2 * mark.size() ||
        line.find_first_not_of("0123456789abcdef") != std::string::npos) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < mark.size(); ++i) {
        mark[i] = static_cast<std::uint8_t>(std::stoi(line.substr(2 * i, 2), nullptr, 16));
    }
    return mark;
}

}  // namespace

Stored<std::vector<ClientMark>> ErasureList::marks() const {
    std::vector<ClientMark> marks;
    std::error_code error;
    if (!std::filesystem::exists(path_, error)) {
        return marks;
    }
    std::ifstream file(path_);
    std::string line;
    for (int number = 1; std::getline(file, line); ++number) {
        const auto mark = mark_in(line);
        if (!mark) {
            return store_error(
                StoreErrorKind::broken,
                fmt::format("{}:{}: found a line that is no mark, expected 32 hexadecimal digits",
                            path_, number));
        }
        marks.push_back(*mark);
    }
    if (file.bad() || !file.eof()) {
        return store_error(
            StoreErrorKind::broken,
            path_ + ": found no way to read it, expected the list of erased clients");
    }
    return marks;
}

Stored<void> ErasureList::add(std::span<const ClientMark> marks) const {
    auto listed = this->marks();
    if (!listed) {
        return tl::make_unexpected(listed.error());
    }
    for (const ClientMark& mark : marks) {
        if (std::ranges::find(*listed, mark) == listed->end()) {
            listed->push_back(mark);
        }
    }
    const std::string text = erasure_list_text(*listed);
    return write_whole_file(
        path_, std::span(reinterpret_cast<const std::uint8_t*>(text.data()), text.size()));
}

std::string erasure_list_text(std::span<const ClientMark> marks) {
    std::string text;
    for (const ClientMark& mark : marks) {
        text += fmt::format("{:02x}\n", fmt::join(mark, ""));
    }
    return text;
}

std::string erasure_list_path(const std::string& path) {
    return path + ".erased";
}

}  // namespace tracewright
