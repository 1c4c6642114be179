#include "coaching/client_review.hpp"
#include "measures/episodes.hpp"
#include "render/measure_words.hpp"
#include "render/review_figures.hpp"
#include "render/review_json.hpp"
#include "render/review_pages.hpp"
#include "render/review_words.hpp"
#include "serve/asked_record.hpp"
#include "serve/route.hpp"
#include "store/standing_escalations.hpp"

#include <mutex>

namespace tracewright {

namespace {

tl::expected<FirstReview, Reply> review_of(Asked& asked) {
    auto input = asked_review_input(asked);
    if (!input) {
        return tl::make_unexpected(input.error());
    }
    const ClientRecord& client = *asked.client;
    if (const auto looked = record_escalations(asked.store, client.id, client.facts, asked.acting);
        !looked) {
        return tl::make_unexpected(problem_of(looked.error()));
    }
    auto standing = standing_escalations(asked.store, client.id, client.facts);
    if (!standing) {
        return tl::make_unexpected(problem_of(standing.error()));
    }
    return client_review({std::move(*input), client.name, client.facts, std::move(*standing)});
}

Json figures_of(const FirstReview& review) {
    const std::scoped_lock lock(drawing());
    Json figures = Json::array();
    figures.push_back(json_of_figure("hours_bar", hours_bar(review)));
    figures.push_back(json_of_figure("hours_bar_narrow", hours_bar(review, 300)));
    figures.push_back(json_of_figure("usual_day", usual_day_figure(review)));
    figures.push_back(json_of_figure("hours_seen", hours_seen(review)));
    figures.push_back(json_of_figure("intervals", intervals_figure(review)));
    if (review.goes_with.meals && !review.goes_with.meals->occasions.empty()) {
        figures.push_back(json_of_figure("meals_by_slot", meals_by_slot_figure(review)));
        if (const Figure foods = foods_figure(review); !foods.rows.empty()) {
            figures.push_back(json_of_figure("foods", foods));
        }
    }
    return figures;
}

Json measure_table(const std::string& name, const Measures& measures, const ReviewInput& input) {
    return {{"name", name},
            {"columns", measure_columns},
            {"rows", measure_rows(measures, input.goals, input.unit)}};
}

// In words, so that who shows them rounds nothing.
Json measure_tables_of(const FirstReview& review) {
    Json tables = Json::array();
    tables.push_back(measure_table("The whole window", review.measures, review.input));
    for (const auto& [name, measures] : review.parts) {
        tables.push_back(measure_table(name, measures, review.input));
    }
    return tables;
}

Json sufficiency_of(const FirstReview& review) {
    Json sentences = Json::array();
    for (const Sufficiency& answer : review.sufficiency) {
        sentences.push_back(answer.sentence);
    }
    return sentences;
}

Reply review_reply(Asked& asked) {
    const auto review = review_of(asked);
    if (!review) {
        return review.error();
    }
    Json json = json_of_review(*review);
    json["figures"] = figures_of(*review);
    json["measure_tables"] = measure_tables_of(*review);
    json["sufficiency"] = sufficiency_of(*review);
    json["rises_to_ask_about"] = rises_to_ask_about(*review);
    return json_reply(json);
}

Reply review_page_reply(Asked& asked) {
    const auto review = review_of(asked);
    if (!review) {
        return review.error();
    }
    const std::scoped_lock lock(drawing());
    std::string html = review_html(*review);
    std::string policy = document_policy(html);
    Reply reply = text_reply(std::move(html), "text/html; charset=utf-8");
    reply.policy = std::move(policy);
    return reply;
}

Reply review_print_reply(Asked& asked) {
    const auto review = review_of(asked);
    if (!review) {
        return review.error();
    }
    const std::scoped_lock lock(drawing());
    Reply reply = text_reply(review_pdf(*review), "application/pdf");
    reply.headers.emplace_back("Content-Disposition", "inline; filename=\"review.pdf\"");
    return reply;
}

Reply measures_reply(Asked& asked) {
    const auto input = asked_review_input(asked);
    if (!input) {
        return input.error();
    }
    const CountedTrace trace = counted_trace(input->wears);
    const Interval window = input->window.value_or(trace.window);
    const TraceView view = cut(trace.view(), window);
    const Fitness fitness = fitness_of(
        view, input->zones,
        input->window ? "of the window asked for" : "from the first to the last reading");
    const auto episodes = episodes_of(view);
    std::vector<Mark> marks;
    for (const Wear& wear : input->wears) {
        const auto found = suspect_stretches(wear, input->suspect);
        marks.insert(marks.end(), found.begin(), found.end());
    }
    return json_reply(
        {{"version", measures_json_version},
         {"window", json_of_window(fitness, window, input->zones)},
         {"measures", json_of(measures_of(view, input->zones, {input->unit, true, input->seed}))},
         {"episodes", json_of(std::span<const Episode>(episodes), input->zones, input->unit)},
         {"marks", json_of(std::span<const Mark>(marks), input->zones)}});
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/review", Asks::who_may_look, review_reply,
     Holds::for_the_minute, "review_made"},
    {Method::get, "/api/clients/{handle}/review.html", Asks::who_may_look, review_page_reply,
     Holds::for_the_minute, "review_made"},
    {Method::get, "/api/clients/{handle}/review.pdf", Asks::who_may_look, review_print_reply,
     Holds::for_the_minute, "review_made"},
    {Method::get, "/api/clients/{handle}/measures", Asks::who_may_look, measures_reply,
     Holds::while_unchanged, "measures_seen"},
};

}  // namespace

std::span<const Route> review_routes() {
    return table;
}

}  // namespace tracewright
