#include "cli/writing_command.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace tracewright {

namespace {

// The document's words are the option's, with a space for the hyphen.
std::string asked_for(const WritingOptions& options) {
    nlohmann::json document = nlohmann::json::object();
    const auto tell = [&](const char* key, std::string typed) {
        if (!typed.empty()) {
            std::ranges::replace(typed, '-', ' ');
            document[key] = typed;
        }
    };
    tell("dates", options.dates);
    tell("hours", options.hours);
    tell("glucose", options.glucose);
    return document.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::string words_of(const PracticeWriting& writing, Instant now) {
    const WallTime utc{now.time_since_epoch()};
    return fmt::format("Dates and times: {}, {}. Glucose of a client who was not asked: {}.\n",
                       full_date(std::chrono::floor<std::chrono::days>(utc), writing.way),
                       clock_time(utc, writing.way), name_of(writing.unit));
}

}  // namespace

Exit writing(const PracticeOptions& options, const WritingOptions& asked, const Streams& streams) {
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto before = practice->store->writing();
    if (!before) {
        return said(before.error(), streams);
    }
    const auto after = writing_changed(*before, asked_for(asked));
    if (!after) {
        streams.err << "tracewright: " << after.error() << "\n";
        return Exit::wrong_usage;
    }
    if (*after != *before) {
        if (const auto set = practice->store->set_writing(*after, practice->acting); !set) {
            return said(set.error(), streams);
        }
    }
    streams.out << words_of(*after, practice->acting.at);
    return Exit::done;
}

}  // namespace tracewright
