#include "serve/care_json.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/gates.hpp"
#include "findings/wording.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace tracewright {

namespace {

constexpr std::array<std::pair<Proposed, const char*>, 7> offers{
    {{Proposed::low_carbohydrate, "low carbohydrate"},
     {Proposed::fasting, "fasting"},
     {Proposed::meal_skipping, "skipping meals"},
     {Proposed::weight_loss, "weight loss"},
     {Proposed::food_change, "a change of food"},
     {Proposed::walking, "walking"},
     {Proposed::other, "any other change"}}};

std::string recognised_words(const MedicineText& text) {
    if (text.says_none) {
        return "no medicines";
    }
    if (text.recognised.empty() || text.unrecognised) {
        return "not recognised: please ask. It counts as one that can cause lows.";
    }
    std::string words;
    for (const Medicine* medicine : text.recognised) {
        words += (words.empty() ? "" : "; ") + medicine->name + ", " + medicine->medicine_class;
    }
    return words;
}

struct Closed {
    Gate gate;
    Json closes = Json::array();
};

}  // namespace

Json json_of_care(const ClientFacts& facts, Licence licence, Instant now) {
    const ZoneHistory clock = client_clock(facts);
    const MedicineTimeline medicines = client_medicines(facts, clock);
    Json told = Json::array();
    for (const MedicineLine& line : facts.medicines) {
        told.push_back(recognised_words(medicine_text(line.written)));
    }
    std::vector<Closed> closed;
    for (const auto& [proposed, words] : offers) {
        for (Gate& gate :
             gates_before_offer(proposed, "", {facts, {}, {}, medicines, clock, now})) {
            const auto same = [&](const Closed& one) {
                return one.gate.kind == gate.kind &&
                       one.gate.for_coach.record == gate.for_coach.record;
            };
            auto found = std::ranges::find_if(closed, same);
            if (found == closed.end()) {
                closed.push_back({std::move(gate)});
                found = std::prev(closed.end());
            }
            found->closes.push_back(words);
        }
    }
    Json gates = Json::array();
    for (Closed& one : closed) {
        gates.push_back({{"sentence", in_scope(one.gate.for_coach, licence)},
                         {"not_asked", one.gate.open_question},
                         {"closes", std::move(one.closes)}});
    }
    return {{"medicines", std::move(told)},
            {"medicines_asked_on", facts.medicines_asked_on
                                       ? Json(full_date(*facts.medicines_asked_on, clock.writing()))
                                       : Json()},
            {"to_ask", medicines.risks_at(now).to_ask},
            {"closed", std::move(gates)}};
}

}  // namespace tracewright
