#include "coaching/talk_sheet.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/eating_care.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace tracewright {

namespace {

constexpr std::size_t questions = 3;

const StandingEscalation* latest_very_low(const PaperClient& client) {
    const StandingEscalation* latest = nullptr;
    for (const StandingEscalation& one : client.escalations) {
        const bool here = client.review.trace.window.contains(one.escalation.at) &&
                          one.escalation.event.starts_with("very_low");
        if (here && (latest == nullptr || one.escalation.at > latest->escalation.at)) {
            latest = &one;
        }
    }
    return latest;
}

std::string about_a_low(const PaperClient& client) {
    const StandingEscalation* low = latest_very_low(client);
    const std::string when =
        low == nullptr ? "the very low stretch"
                       : day_and_time(client.review.input.zones.wall_time(low->escalation.at),
                                      client.review.input.zones.writing());
    return "Tell me about " + when +
           ". What did you feel, and what had you eaten, done and taken before it?";
}

// What a finding gives to ask. Empty: nothing that the client could tell better than the data.
std::string question_from(const PaperClient& client, const Finding& finding) {
    const std::string& code = finding.code;
    const bool said_yes = finding.answer == Answer::yes;
    if (code == "very_low") {
        return about_a_low(client);
    }
    if (code == "escalation") {
        return "How have you been, and how are you now?";
    }
    if (code == "very_high") {
        return "What were the days like on which your glucose went very high? Were you ill?";
    }
    if (code == "lows") {
        return said_yes ? "How do you notice when you go low, and what do you do then?" : "";
    }
    if (code == "medicines") {
        return said_yes ? "" : "Which medicines do you take, and since when?";
    }
    if (code == "when_high") {
        return said_yes ? "Which hours of your day are hardest, and what happens in them?" : "";
    }
    if (code == "single_day") {
        return said_yes ? client.review.one_thing_to_ask : "";
    }
    if (code == "agreed_change") {
        return goes_on_as_agreed(client.care())
                   ? "How did it go with \"" + client.facts.agreed_change->words +
                         "\"? What made it easy, what made it hard?"
                   : "";
    }
    if (code == "diary") {
        return said_yes || finding.evidence.used == 0 ? ""
                                                      : "What made it hard to write things down?";
    }
    return code == "in_range" ? "Which of these days would you like to have again? What made it so?"
                              : "";
}

void add_before_the_talk(const PaperClient& client, Paper& paper) {
    std::vector<std::string> lines;
    std::size_t open = 0;
    for (const StandingEscalation& one : client.escalations) {
        open += one.answer.empty() ? 1U : 0U;
        if (one.answer.empty() && lines.size() < 2 * questions) {
            lines.push_back(std::string(name_of(one.escalation.rung)) + ": " +
                            escalation_sentence(one.escalation, client.review.input.zones,
                                                one.first_seen, client.review.input.as_of));
        }
    }
    if (open > lines.size()) {
        lines.push_back(fmt::format("And {} more, not acknowledged either.", open - lines.size()));
    }
    if (!lines.empty()) {
        lines.emplace_back("Do this first; the letter to the prescriber is ready.");
        paper.blocks.emplace_back(PaperBox{"Before the talk", std::move(lines)});
    }
}

void add_care(const PaperClient& client, Paper& paper) {
    const auto care = std::ranges::find(client.review.findings, "care", &Finding::code);
    if (care != client.review.findings.end()) {
        paper.blocks.emplace_back(PaperHeading{"Be careful"});
        paper.blocks.emplace_back(PaperSentence{care->sentence});
    }
    if (numbers_turned_down(client.facts.cautions.eating)) {
        paper.blocks.emplace_back(
            PaperSentence{"Show the client no hours in range, foods, amounts or weight."});
    }
}

void add_the_change(const PaperClient& client, Paper& paper) {
    auto& blocks = paper.blocks;
    if (client.pregnant_or_may_be()) {
        blocks.emplace_back(PaperHeading{"No plan of ours"});
        blocks.emplace_back(
            PaperSentence{"The maternity or diabetes clinic leads: no goal and no plan is set."});
        return;
    }
    blocks.emplace_back(PaperHeading{"One change"});
    const auto& agreed = client.facts.agreed_change;
    const bool open = agreed && agreed->outcome == ChangeOutcome::open;
    const bool goes_on = goes_on_as_agreed(client.care());
    if (open && !goes_on) {
        blocks.emplace_back(PaperSentence{
            "Agreed last: \"" + agreed->words +
            "\". It does not go on: something that comes first has closed it. Tell the client."});
    }
    blocks.emplace_back(
        RoomToWrite{goes_on ? "Agreed last: \"" + agreed->words + "\". Kept, or what instead?"
                            : "In the client's words: what, when, where, how often?",
                    1});
    blocks.emplace_back(
        ZeroToTen{"How much does it matter to you?", "not at all", "more than anything"});
    blocks.emplace_back(
        ZeroToTen{"How sure are you that you will do it?", "not at all", "quite sure"});
    blocks.emplace_back(PaperSentence{"Below 7: make the change smaller, and ask again."});
    blocks.emplace_back(PaperHeading{"After a lapse"});
    blocks.emplace_back(RoomToWrite{"What made it hard?", 1});
}

}  // namespace

std::vector<TalkQuestion> talk_questions(const PaperClient& client) {
    std::vector<TalkQuestion> asked;
    std::set<std::string> told;
    for (const Finding& finding : client.review.findings) {
        const std::string question = question_from(client, finding);
        if (!question.empty() && asked.size() < questions && told.insert(question).second) {
            asked.push_back({question, finding.sentence});
        }
    }
    for (const char* opening :
         {"How were these days for you?", "What surprised you while you wore the sensor?",
          "What would you like to understand better?"}) {
        if (asked.size() < questions) {
            asked.push_back({opening, {}});
        }
    }
    return asked;
}

Paper talk_sheet(const PaperClient& client) {
    const FirstReview& review = client.review;
    Paper paper;
    paper.title =
        review.input.of_whom.empty() ? "Talk sheet" : "Talk sheet: " + review.input.of_whom;
    paper.reader = PaperReader::coach;
    paper.made = client.made();
    paper.may_go_on = true;
    paper.foot = paper.title + ". For the coach alone.";
    auto& blocks = paper.blocks;
    blocks.emplace_back(PaperSentence{
        "For the coach, " + full_date(client.today(), client.review.input.zones.writing()) + ". " +
        review.last_reading});
    add_before_the_talk(client, paper);
    blocks.emplace_back(PaperHeading{"Ask before showing anything"});
    for (const TalkQuestion& one : talk_questions(client)) {
        blocks.emplace_back(PaperSentence{one.question, true});
        if (!one.behind.empty()) {
            blocks.emplace_back(PaperSentence{"Not shown yet: " + one.behind});
        }
    }
    blocks.emplace_back(RoomToWrite{"Their own explanation, in their words:", 3});
    blocks.emplace_back(PaperHeading{"Then show one thing"});
    blocks.emplace_back(PaperSentence{numbers_turned_down(client.facts.cautions.eating)
                                          ? "The handout's picture and one sentence. Then wait."
                                          : "One picture and one sentence, then wait. Seen: " +
                                                review.one_thing_seen});
    blocks.emplace_back(
        RoomToWrite{"\"What will you tell at home about what we saw?\" In their words:", 2});
    add_the_change(client, paper);
    add_care(client, paper);
    blocks.emplace_back(PaperSentence{"To note until next time: " + review.one_thing_to_note});
    return paper;
}

}  // namespace tracewright
