#include "time/zone.hpp"

#include <date/tz.h>

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

namespace tracewright {

namespace {

// Outermost moments of `constant_offset_round`: well inside what the zone library can hold.
constexpr Instant beginning{std::chrono::sys_days{std::chrono::year{1} / 1 / 1}};
constexpr Instant ending{std::chrono::sys_days{std::chrono::year{9999} / 1 / 1}};

std::string fixed_name(std::chrono::seconds offset) {
    const auto minutes = std::chrono::abs(std::chrono::duration_cast<std::chrono::minutes>(offset));
    std::string text = offset.count() < 0 ? "UTC-" : "UTC+";
    for (const auto part : {minutes.count() / 60, minutes.count() % 60}) {
        text += part < 10 ? "0" : "";
        text += std::to_string(part) + ":";
    }
    text.pop_back();
    return text;
}

// The system's list of zones, whose first line bears the version and whose lines "L target link"
// name the links.
constexpr const char* zone_list = "/usr/share/zoneinfo/tzdata.zi";

std::map<std::string, std::string> links_of(const char* path) {
    std::map<std::string, std::string> target_of;
    std::ifstream file(path);
    std::string kind;
    std::string target;
    std::string link;
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with("L ") && std::istringstream(line) >> kind >> target >> link) {
            target_of.emplace(link, target);
        }
    }
    return target_of;
}

std::string canonical(const std::string& name) {
    // Read once, as the zone library reads its rules: a clock is made for each client looked at.
    static const std::map<std::string, std::string> target_of = links_of(zone_list);
    const auto found = target_of.find(name);
    return found == target_of.end() ? name : found->second;
}

}  // namespace

tl::expected<Zone, std::string> Zone::named(std::string_view iana_name) {
    // The system's zone folder also holds names such as "EST" that are abbreviations, not places.
    const bool place = iana_name.find('/') != std::string_view::npos || iana_name == "UTC";
    if (place) {
        try {
            const date::time_zone* rules = date::locate_zone(iana_name);
            return Zone(canonical(rules->name()), rules, {}, false);
        } catch (const std::runtime_error&) {
            // Falls through to the one error below: the library's own text names a file path.
        }
    }
    return tl::make_unexpected("found zone '" + std::string(iana_name) +
                               "', expected an IANA zone such as Europe/Berlin");
}

Zone Zone::floating() {
    return {"floating", nullptr, {}, true};
}

Zone Zone::fixed(std::chrono::seconds east_of_utc) {
    return {fixed_name(east_of_utc), nullptr, east_of_utc, false};
}

std::chrono::seconds Zone::offset_at(Instant at) const {
    return rules_ != nullptr ? rules_->get_info(at).offset : offset_;
}

WallTime Zone::wall_time(Instant at) const {
    return WallTime{(at + offset_at(at)).time_since_epoch()};
}

WallResolution Zone::resolve(WallTime wall) const {
    if (rules_ == nullptr) {
        const Instant at = Instant{wall.time_since_epoch()} - offset_;
        return {WallResolution::Kind::unique, at, at};
    }
    const auto info = rules_->get_info(date::local_seconds{wall.time_since_epoch()});
    const Instant as_utc{wall.time_since_epoch()};
    switch (info.result) {
        case date::local_info::ambiguous:
            return {WallResolution::Kind::repeated, as_utc - info.first.offset,
                    as_utc - info.second.offset};
        case date::local_info::nonexistent:
            return {WallResolution::Kind::skipped, info.first.end, info.first.end};
        default:
            return {WallResolution::Kind::unique, as_utc - info.first.offset,
                    as_utc - info.first.offset};
    }
}

Interval Zone::constant_offset_round(Instant at) const {
    if (rules_ == nullptr) {
        return {beginning, ending};
    }
    const auto info = rules_->get_info(at);
    return {info.begin, info.end};
}

std::string zone_data_version() {
    std::ifstream file(zone_list);
    std::string hash;
    std::string word;
    std::string version;
    file >> hash >> word >> version;
    return hash == "#" && word == "version" ? version : "unknown";
}

}  // namespace tracewright
