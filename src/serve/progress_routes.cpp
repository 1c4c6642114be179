#include "coaching/offered_comparison.hpp"
#include "coaching/story_paper.hpp"
#include "coaching/wears_apart.hpp"
#include "findings/wording.hpp"
#include "render/before_after_json.hpp"
#include "render/story_json.hpp"
#include "serve/asked_record.hpp"
#include "serve/change_days.hpp"
#include "serve/paper_reply.hpp"
#include "serve/route.hpp"
#include "store/kept_trials.hpp"
#include "time/day_text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace tracewright {

namespace {

tl::unexpected<Reply> unfit(int status, std::string_view code, std::string_view detail) {
    return tl::make_unexpected(problem(status, code, "A value does not fit", detail));
}

// A day of the query; empty without one.
tl::expected<std::optional<CivilDate>, Reply> asked_day(const Asked& asked, const char* name) {
    const auto text = asked.target.asked(name);
    if (!text || text->empty()) {
        return std::optional<CivilDate>{};
    }
    const auto day = day_of_text(*text);
    if (!day) {
        return unfit(422, "not_a_day",
                     std::string(name) + ": found another text, expected a day such as 2026-03-02");
    }
    return day;
}

struct Told {
    Story story;
    ReviewInput input;
};

// ?diet_started=&surgery_on=: what remission waits for after either.
tl::expected<Told, Reply> story_told(Asked& asked) {
    auto record = asked_record_with_readings(asked);
    const auto diet = asked_day(asked, "diet_started");
    const auto surgery = asked_day(asked, "surgery_on");
    if (!record || !diet || !surgery) {
        return tl::make_unexpected(!record ? record.error()
                                   : !diet ? diet.error()
                                           : surgery.error());
    }
    const auto trials = kept_trials(asked.store, asked.client->id, record->input.zones);
    if (!trials) {
        return tl::make_unexpected(problem_of(trials.error()));
    }
    LabQuestion question{record->input, record->facts, *diet, *surgery, *trials};
    Story story = story_of(question);
    return Told{std::move(story), std::move(record->input)};
}

Json wears_of(const ReviewInput& input) {
    Json wears = Json::array();
    for (const Wear& wear : input.wears) {
        if (!wear.empty()) {
            wears.push_back({{"label", wear.label},
                             {"days", date_range(input.zones.date_at(wear.readings.front().at),
                                                 input.zones.date_at(wear.readings.back().at),
                                                 input.zones.writing())}});
        } else {
            wears.push_back({{"label", wear.label}, {"days", "no reading"}});
        }
    }
    return wears;
}

Reply story_reply(Asked& asked) {
    const auto told = story_told(asked);
    if (!told) {
        return told.error();
    }
    Json json = json_of_story(told->story, told->input);
    json["day_words"] = days_of_changes_in_words(asked.client->facts);
    json["next_lab_words"] = next_lab_words(told->story.next_lab, told->input.zones.writing());
    json["wears"] = wears_of(told->input);
    const auto last_two = last_two_apart(told->input.wears);
    json["last_two_wears"] =
        last_two ? Json::array({last_two->before + 1, last_two->after + 1}) : Json(nullptr);
    json["line"] = Json::array();
    for (const LineRow& row : told->story.labs.line) {
        json["line"].push_back({{"label", full_date(row.on, told->input.zones.writing())},
                                {"kind", row.kind},
                                {"words", row.words}});
    }
    json["last_reading"] = json_of_last_reading(told->input);
    return json_reply(json);
}

Reply story_page_reply(Asked& asked) {
    const auto told = story_told(asked);
    if (!told) {
        return told.error();
    }
    return page_of({"story",
                    story_paper(told->story, told->input.of_whom, told->input.zones.writing()),
                    {},
                    {}});
}

// ?before=1,2: wears by number, as indices. Empty without one.
tl::expected<std::vector<std::size_t>, Reply> asked_wears(const Asked& asked, const char* name,
                                                          std::size_t count) {
    std::vector<std::size_t> wears;
    std::string text = asked.target.asked(name).value_or("");
    for (const char* at = text.data(); at < text.data() + text.size();) {
        std::size_t number = 0;
        const char* end = text.data() + text.size();
        const auto read = std::from_chars(at, end, number);
        if (read.ec != std::errc{} || (read.ptr != end && *read.ptr != ',') || number < 1 ||
            number > count) {
            return unfit(422, "unfit_field",
                         std::string(name) + ": found another text, expected numbers of wears");
        }
        wears.push_back(number - 1);
        at = read.ptr == end ? end : read.ptr + 1;
    }
    return wears;
}

Reply before_after_reply(Asked& asked) {
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return record.error();
    }
    const std::size_t count = record->input.wears.size();
    auto before = asked_wears(asked, "before", count);
    auto after = asked_wears(asked, "after", count);
    if (!before || !after) {
        return before ? after.error() : before.error();
    }
    if (count < 2) {
        return problem(404, "one_wear", "There is nothing to compare",
                       "found one wear, expected two or more to compare");
    }
    const auto last_two = last_two_apart(record->input.wears);
    if (before->empty()) {
        before->push_back(last_two ? last_two->before : count - 2);
    }
    if (after->empty()) {
        after->push_back(last_two ? last_two->after : count - 1);
    }
    if (std::ranges::find_first_of(*before, *after) != before->end()) {
        return problem(422, "unfit_field", "A value does not fit",
                       "found a wear on both sides, expected each on one");
    }
    BeforeAfterSettings settings;
    settings.other_kind = asked.target.asked("other_kind") == "yes";
    const BeforeAfter found = offered_comparison(record->input, *before, *after, record->care(),
                                                 asked.coach.licence, settings);
    Json json = json_of_comparison(found, record->input);
    const auto hours = [](const std::optional<double>& value) {
        return value ? hours_and_minutes(std::chrono::seconds{std::llround(*value * 3600)})
                     : std::string("not told");
    };
    json["words"] = {{"before", hours(found.hours_before)},
                     {"after", hours(found.hours_after)},
                     {"before_of_all", hours(found.hours_before_of_all)},
                     {"after_of_all", hours(found.hours_after_of_all)}};
    return json_reply(json);
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/story", Asks::who_may_look, story_reply, Holds::never,
     "story_looked_at"},
    {Method::get, "/api/clients/{handle}/story/page", Asks::who_may_look, story_page_reply,
     Holds::never, "story_looked_at"},
    {Method::get, "/api/clients/{handle}/before-after", Asks::who_may_look, before_after_reply,
     Holds::never, "before_after_looked_at"},
};

}  // namespace

std::span<const Route> progress_routes() {
    return table;
}

}  // namespace tracewright
