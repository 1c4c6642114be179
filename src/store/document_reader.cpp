#include "store/document_reader.hpp"

#include "time/day_text.hpp"

#include <date/date.h>

#include <limits>
#include <locale>
#include <sstream>

namespace tracewright {

namespace {

// Of any year: what was stored stays readable.
template <typename Duration>
bool parsed(const char* format, const std::string& written,
            std::chrono::time_point<std::chrono::local_t, Duration>& value) {
    std::istringstream stream(written);
    stream.imbue(std::locale::classic());
    date::local_time<Duration> time;
    stream >> date::parse(format, time);
    if (stream.fail() || stream.peek() != std::istringstream::traits_type::eof()) {
        return false;
    }
    value = std::chrono::time_point<std::chrono::local_t, Duration>{time.time_since_epoch()};
    return true;
}

}  // namespace

void unreadable(const std::string& key, const std::string& expected) {
    throw UnreadableDocument(
        fmt::format("key '{}': found another value, expected {}", key, expected));
}

DocumentReader::DocumentReader(const Json& object, std::string path, Held held)
    : object_(object), path_(std::move(path)), held_(held) {
    if (!object.is_object()) {
        unreadable(path_, "an object");
    }
}

const DocumentReader::Json* DocumentReader::at(const char* key) {
    met_.insert(key);
    const auto found = object_.find(key);
    return found == object_.end() || found->is_null() ? nullptr : &*found;
}

std::string DocumentReader::path(const std::string& key) const {
    return path_.empty() ? key : path_ + "." + key;
}

void DocumentReader::text(const char* key, std::string& value) {
    if (const Json* found = at(key)) {
        if (!found->is_string()) {
            unreadable(path(key), "a text");
        }
        value = found->get<std::string>();
    }
}

void DocumentReader::truth(const char* key, bool& value) {
    if (const Json* found = at(key)) {
        if (!found->is_boolean()) {
            unreadable(path(key), "true or false");
        }
        value = found->get<bool>();
    }
}

void DocumentReader::number(const char* key, int& value, int least, int most) {
    const Json* found = at(key);
    if (found == nullptr) {
        return;
    }
    if (!told()) {
        least = std::numeric_limits<int>::min();
        most = std::numeric_limits<int>::max();
    }
    // Beyond 32 bits a number would be cut to another one.
    if (!found->is_number_integer() || found->get<double>() < least ||
        found->get<double>() > most) {
        unreadable(path(key), told() ? fmt::format("a whole number from {} to {}", least, most)
                                     : "a whole number");
    }
    value = found->get<int>();
}

void DocumentReader::number(const char* key, std::optional<int>& value, int least, int most) {
    if (at(key) != nullptr) {
        number(key, value.emplace(), least, most);
    }
}

void DocumentReader::number(const char* key, double& value) {
    if (const Json* found = at(key)) {
        if (!found->is_number()) {
            unreadable(path(key), "a number");
        }
        value = found->get<double>();
    }
}

void DocumentReader::number(const char* key, std::optional<double>& value) {
    if (at(key) != nullptr) {
        number(key, value.emplace());
    }
}

void DocumentReader::date(const char* key, CivilDate& value) {
    std::string written;
    text(key, written);
    if (at(key) == nullptr) {
        return;
    }
    if (told()) {
        const auto day = day_of_text(written);
        if (!day) {
            unreadable(path(key), "a date such as 2026-03-02");
        }
        value = *day;
    } else if (!parsed("%F", written, value)) {
        unreadable(path(key), "a date such as 2026-03-02");
    }
}

void DocumentReader::date(const char* key, std::optional<CivilDate>& value) {
    if (at(key) != nullptr) {
        date(key, value.emplace());
    }
}

void DocumentReader::wall_time(const char* key, std::optional<WallTime>& value) {
    std::string written;
    text(key, written);
    if (at(key) == nullptr) {
        return;
    }
    const bool a_day = !told() || day_of_text(written.substr(0, written.find('T')));
    if (!a_day || !parsed("%FT%R", written, value.emplace())) {
        unreadable(path(key), "a wall time such as 2026-03-02T08:15");
    }
}

void DocumentReader::finish() const {
    for (const auto& [key, value] : object_.items()) {
        if (!met_.contains(key)) {
            throw UnreadableDocument(fmt::format(
                "key '{}': found a key of no meaning here, expected one of the schema's",
                path(key)));
        }
    }
}

}  // namespace tracewright
