#include "serve/request.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::size_t longest_target = 2048;

int digit_of(char c) {
    return c >= '0' && c <= '9'   ? c - '0'
           : c >= 'a' && c <= 'f' ? c - 'a' + 10
           : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                  : -1;
}

// Source: RFC 3629, 4: no overlong forms, no surrogates, nothing above U+10FFFF.
bool is_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = [&](std::size_t at) {
            return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U;
        };
        const unsigned first = byte(i);
        const auto within = [&](std::size_t at, unsigned low, unsigned high) {
            return byte(at) >= low && byte(at) <= high;
        };
        const auto more = [&](std::size_t at) { return within(at, 0x80, 0xBF); };
        if (first < 0x80) {
            i += 1;
        } else if (first >= 0xC2 && first <= 0xDF && more(i + 1)) {
            i += 2;
        } else if (first >= 0xE0 && first <= 0xEF &&
                   within(i + 1, first == 0xE0 ? 0xA0 : 0x80, first == 0xED ? 0x9F : 0xBF) &&
                   more(i + 2)) {
            i += 3;
        } else if (first >= 0xF0 && first <= 0xF4 &&
                   within(i + 1, first == 0xF0 ? 0x90 : 0x80, first == 0xF4 ? 0x8F : 0xBF) &&
                   more(i + 2) && more(i + 3)) {
            i += 4;
        } else {
            return false;
        }
    }
    return true;
}

std::optional<std::string> decoded(std::string_view text, bool plus_is_space) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        char c = text[i];
        if (c == '%') {
            const int high = i + 2 < text.size() ? digit_of(text[i + 1]) : -1;
            const int low = i + 2 < text.size() ? digit_of(text[i + 2]) : -1;
            if (high < 0 || low < 0) {
                return std::nullopt;
            }
            c = static_cast<char>(high * 16 + low);
            i += 2;
        } else if (c == '+' && plus_is_space) {
            c = ' ';
        }
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
            return std::nullopt;
        }
        result += c;
    }
    return is_utf8(result) ? std::optional(result) : std::nullopt;
}

template <typename Visit>
bool each_part(std::string_view text, char between, Visit visit) {
    for (;;) {
        const auto end = text.find(between);
        if (!visit(text.substr(0, end))) {
            return false;
        }
        if (end == std::string_view::npos) {
            return true;
        }
        text.remove_prefix(end + 1);
    }
}

}  // namespace

std::optional<std::string> RequestTarget::asked(std::string_view name) const {
    const auto found =
        std::ranges::find_if(query, [&](const auto& one) { return one.first == name; });
    return found == query.end() ? std::nullopt : std::optional(found->second);
}

std::string RequestTarget::path() const {
    std::string path;
    for (const std::string& segment : segments) {
        path += "/" + segment;
    }
    return path.empty() ? "/" : path;
}

std::optional<RequestTarget> target_of(std::string_view text) {
    if (text.empty() || text.front() != '/' || text.size() > longest_target ||
        text.find('#') != std::string_view::npos) {
        return std::nullopt;
    }
    RequestTarget target;
    const auto mark = text.find('?');
    const std::string_view path = text.substr(1, mark == std::string_view::npos ? mark : mark - 1);
    const bool whole_path =
        path.empty() || each_part(path, '/', [&](std::string_view part) {
            const auto segment = decoded(part, false);
            if (!segment || segment->find_first_of("/\\") != std::string::npos ||
                (!segment->empty() && segment->find_first_not_of('.') == std::string::npos)) {
                return false;
            }
            target.segments.push_back(*segment);
            return true;
        });
    if (!whole_path) {
        return std::nullopt;
    }
    if (mark != std::string_view::npos && mark + 1 < text.size()) {
        const bool whole_query = each_part(text.substr(mark + 1), '&', [&](std::string_view part) {
            const auto equals = part.find('=');
            const auto name = decoded(part.substr(0, equals), true);
            const auto value =
                decoded(equals == std::string_view::npos ? "" : part.substr(equals + 1), true);
            if (!name || !value) {
                return false;
            }
            target.query.emplace_back(*name, *value);
            return true;
        });
        if (!whole_query) {
            return std::nullopt;
        }
    }
    return target;
}

std::optional<std::string> cookie_called(std::string_view name, std::string_view header) {
    std::optional<std::string> found;
    bool twice = false;
    each_part(header, ';', [&](std::string_view part) {
        while (!part.empty() && (part.front() == ' ' || part.front() == '\t')) {
            part.remove_prefix(1);
        }
        while (!part.empty() && (part.back() == ' ' || part.back() == '\t')) {
            part.remove_suffix(1);
        }
        const auto equals = part.find('=');
        if (equals != std::string_view::npos && part.substr(0, equals) == name) {
            twice = twice || found;
            found = std::string(part.substr(equals + 1));
        }
        return true;
    });
    return twice ? std::nullopt : found;
}

}  // namespace tracewright
