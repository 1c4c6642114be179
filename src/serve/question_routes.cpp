#include "coaching/trial_offers.hpp"
#include "findings/question_sentences.hpp"
#include "render/ask_json.hpp"
#include "serve/asked_record.hpp"
#include "serve/route.hpp"

#include <algorithm>

namespace tracewright {

namespace {

tl::unexpected<Reply> unfit(std::string_view detail) {
    return tl::make_unexpected(problem(422, "unfit_field", "A value does not fit", detail));
}

// What can be asked, in words: each outcome with the causes that can come before it.
Reply questions_reply(Asked& /*asked*/) {
    Json outcomes = Json::array();
    for (const OutcomeFacts& outcome : all_outcomes()) {
        Json causes = Json::array();
        for (const CauseFacts& cause : all_causes()) {
            if (can_be_asked(outcome.outcome, cause.cause)) {
                causes.push_back({{"code", cause.code},
                                  {"words", cause.words},
                                  {"change", cause.change},
                                  {"means", cause.means},
                                  {"to_note", cause.to_note}});
            }
        }
        outcomes.push_back({{"code", outcome.code},
                            {"words", outcome.words},
                            {"means", outcome.means},
                            {"causes", std::move(causes)}});
    }
    return json_reply({{"outcomes", std::move(outcomes)}});
}

// ?because=sleep,dinner-time
tl::expected<std::vector<Cause>, Reply> asked_causes(const Asked& asked, Outcome outcome) {
    std::vector<Cause> causes;
    const std::string text = asked.target.asked("because").value_or("");
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(',', at), text.size());
        const auto cause = cause_called(text.substr(at, end - at));
        if (!cause || !can_be_asked(outcome, *cause)) {
            return unfit("because: found another text, expected causes that can come before it");
        }
        if (std::ranges::find(causes, *cause) == causes.end()) {
            causes.push_back(*cause);
        }
        at = end + 1;
    }
    return causes;
}

Json in_words(const QuestionAnswers& answers, const ReviewInput& input) {
    Json json = json_of_answers(answers, input);
    for (std::size_t i = 0; i < answers.findings.size(); ++i) {
        const QuestionFinding& told = answers.findings[i];
        Json& finding = json["findings"][i];
        finding["others_words"] = Json::array();
        for (const PublishedEffect& effect : told.others.rows) {
            finding["others_words"].push_back(effect.sentence());
        }
        finding["both_words"] =
            told.both ? Json(difference_words(told.both->mean, answers.outcome, input.unit))
                      : Json(nullptr);
    }
    return json;
}

Reply ask_reply(Asked& asked) {
    const auto outcome = outcome_called(asked.target.asked("about").value_or(""));
    if (!outcome) {
        return problem(422, "unfit_field", "A value does not fit",
                       "about: found another text, expected what a question can be about");
    }
    const auto causes = asked_causes(asked, *outcome);
    if (!causes) {
        return causes.error();
    }
    const bool scan = asked.target.asked("scan") == "yes";
    if (causes->empty() && !scan) {
        return problem(422, "unfit_field", "A value does not fit",
                       "found no cause, expected at least one in because, or scan=yes");
    }
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return record.error();
    }
    QuestionAnswers answers = scan ? scan_causes(record->input, *outcome)
                                   : answer_questions(record->input, *outcome, *causes);
    withhold_trials(answers, record->care(), asked.coach.licence);
    Json json = in_words(answers, record->input);
    json["rows_called"] = rows_called(*outcome, answers.rows);
    return json_reply(json);
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/questions", Asks::who_may_look, questions_reply},
    {Method::get, "/api/clients/{handle}/ask", Asks::who_may_look, ask_reply, Holds::never,
     "question_asked"},
};

}  // namespace

std::span<const Route> question_routes() {
    return table;
}

}  // namespace tracewright
