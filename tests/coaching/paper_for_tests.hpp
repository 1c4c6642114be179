#pragma once

#include "care_for_tests.hpp"
#include "coaching/client_review.hpp"
#include "coaching/paper.hpp"
#include "coaching/paper_client.hpp"

#include <cctype>
#include <memory>
#include <string>
#include <vector>

namespace tracewright {

/// Papers about an invented client: the review of all that `care` has, and the ladder's escalations
/// as first seen now. A test sets answers and who coaches.
struct PaperCase {
    explicit PaperCase(Care of_care, std::string name = "Invented Alder")
        : care(std::move(of_care)) {
        escalations = care.ask([&](const CareInput& in) {
            LadderInput ladder{
                in.wears, in.diary,     in.medicines, in.clock, GlucoseUnit::mmol_per_l,
                {},       in.facts.labs};
            if (const auto& change = in.facts.agreed_change; change && change->agreed_on) {
                ladder.change_agreed = in.clock.day_of(*change->agreed_on).from;
            }
            std::vector<StandingEscalation> all;
            for (const Escalation& one : tracewright::escalations(ladder)) {
                all.push_back({one, in.as_of, {}, static_cast<std::int64_t>(all.size()) + 1});
            }
            return all;
        });
        ClientReviewInput input;
        input.name = std::move(name);
        input.facts = care.facts;
        input.review.wears = care.wears;
        input.review.diary = care.diary;
        input.review.zones = care.clock;
        input.review.unit = care.facts.unit;
        input.review.goals = goals_that_hold(care.facts);
        input.review.as_of = care.as_of;
        input.escalations = escalations;
        review = client_review(std::move(input));
    }

    PaperClient client() const { return {review, care.facts, escalations, coach, licence}; }

    Care care;
    std::vector<StandingEscalation> escalations;
    FirstReview review;
    std::string coach = "Invented Fern";
    Licence licence = Licence::none;
};

/// All words of a paper, telephone numbers, tables and scales too, a line each.
inline std::string all_words_of(const Paper& paper) {
    std::string text = paper.title + "\n" + paper.foot + "\n";
    for (const std::string& line : message_of(paper)) {
        text += line + "\n";
    }
    for (const PaperBlock& block : paper.blocks) {
        if (const auto* box = std::get_if<PaperBox>(&block); box != nullptr && box->first_aid) {
            text += box->title + "\n";
            for (const std::string& line : box->sentences) {
                text += line + "\n";
            }
        } else if (const auto* contact = std::get_if<PaperContact>(&block)) {
            text += contact->who + ": " + contact->telephone + "\n";
        } else if (const auto* scale = std::get_if<ZeroToTen>(&block)) {
            text += scale->question + " " + scale->at_0 + " " + scale->at_10 + "\n";
        } else if (const auto* table = std::get_if<PaperTable>(&block)) {
            for (const auto& row : table->rows) {
                for (const std::string& cell : row) {
                    text += cell + " ";
                }
                text += "\n";
            }
        }
    }
    return text;
}

/// Words that lull, blame, judge food or go beyond a coach's scope (safety rules 5 and 14), of
/// those in the text; a word counts where it stands alone.
inline std::vector<std::string> forbidden_words_in(const std::string& text) {
    std::string small = " ";
    for (const char c : text) {
        const auto letter = static_cast<unsigned char>(c);
        small +=
            std::isalpha(letter) != 0 || c == '\'' ? static_cast<char>(std::tolower(letter)) : ' ';
        if (small.ends_with("  ")) {
            small.pop_back();
        }
    }
    small += " ";
    std::vector<std::string> found;
    for (const char* word :
         {"no lows",     "safe",         "safely",       "fine",          "cured",
          "cure",        "blame",        "fault",        "guilty",        "lazy",
          "cheat",       "cheated",      "failed",       "failure",       "naughty",
          "good food",   "bad food",     "good foods",   "bad foods",     "junk",
          "should have", "bad",          "in remission", "diagnosis",     "diagnosed",
          "diagnose",    "dose",         "doses",        "dosage",        "reduce your",
          "stop taking", "titrate",      "ketoacidosis", "type 1",        "supplement a day",
          "perfect",     "normal range", "all clear",    "nothing wrong", "no need to worry"}) {
        if (small.find(" " + std::string(word) + " ") != std::string::npos) {
            found.emplace_back(word);
        }
    }
    return found;
}

/// One very low of 50 minutes on the night of Tue 10 February 02:40 (T9).
inline Care with_a_very_low_night(const std::string& medicine) {
    Care care;
    care.facts.unit = GlucoseUnit::mmol_per_l;
    care.takes(medicine);
    Care::set(care.wears[0], 8 * 288 + 32, 9, 45);
    Care::set(care.wears[0], 8 * 288 + 41, 1, 53);
    return care;
}

inline AgreedChange a_walk() {
    AgreedChange walk;
    walk.words = "a short walk after dinner";
    walk.agreed_on = care_day - std::chrono::days{3};
    walk.check_on = care_day + std::chrono::days{7};
    walk.when = "right after dinner";
    walk.where = "round the block";
    walk.how_often = "each day";
    walk.if_not = "walk up and down the stairs";
    walk.how_checked = "the sensor, after dinner";
    walk.stop_when = "your feet or chest hurt";
    walk.kind = Proposed::walking;
    return walk;
}

}  // namespace tracewright
