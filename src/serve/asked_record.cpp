#include "serve/asked_record.hpp"

#include "coaching/client_clock.hpp"
#include "findings/since_words.hpp"
#include "findings/wording.hpp"
#include "render/review_figures.hpp"
#include "serve/asked_window.hpp"
#include "store/client_review_input.hpp"
#include "store/whole_client_input.hpp"

#include <algorithm>

namespace tracewright {

namespace {

Reply no_readings(const char* detail) {
    return problem(404, "no_readings", "There is nothing to look at", detail);
}

}  // namespace

tl::expected<AskedRecord, Reply> asked_record(Asked& asked) {
    const ClientRecord& client = *asked.client;
    auto input = whole_client_input(asked.store, client.id, client.facts);
    if (!input) {
        return tl::make_unexpected(problem_of(input.error()));
    }
    input->of_whom = client.name;
    input->as_of = asked.acting.at;
    MedicineTimeline medicines = client_medicines(client.facts, input->zones);
    return AskedRecord{std::move(*input), client.facts, std::move(medicines)};
}

tl::expected<AskedRecord, Reply> asked_record_with_readings(Asked& asked) {
    auto record = asked_record(asked);
    if (record && record->input.wears.empty()) {
        return tl::make_unexpected(no_readings("found no glucose reading of this client"));
    }
    return record;
}

tl::expected<ReviewInput, Reply> asked_review_input(Asked& asked) {
    const ClientFacts& facts = asked.client->facts;
    const auto window = asked_window(asked.target, client_clock(facts));
    if (!window) {
        return tl::make_unexpected(window.error());
    }
    auto input = client_review_input(asked.store, asked.client->id, facts, *window);
    if (!input) {
        return tl::make_unexpected(problem_of(input.error()));
    }
    if (input->wears.empty()) {
        return tl::make_unexpected(
            no_readings("found no glucose reading of this client in the window"));
    }
    input->as_of = asked.acting.at;
    return std::move(*input);
}

Json json_of_last_reading(const ReviewInput& input) {
    std::optional<Instant> last;
    for (const Wear& wear : input.wears) {
        if (!wear.empty()) {
            last = std::max(last.value_or(wear.readings.back().at), wear.readings.back().at);
        }
    }
    return last ? Json{{"label", day_and_time(input.zones.wall_time(*last), input.zones.writing())},
                       {"age", age_words(*last, input.as_of, input.zones)},
                       {"since", since_words(input.as_of - *last)}}
                : Json();
}

std::mutex& drawing() {
    static std::mutex mutex;
    return mutex;
}

Json json_of_figure(const std::string& id, const Figure& figure) {
    return {{"id", id},
            {"title", figure.title},
            {"alternative", figure.alternative},
            {"svg", svg_of(figure)},
            {"table", {{"columns", figure.columns}, {"rows", figure.rows}}}};
}

}  // namespace tracewright
