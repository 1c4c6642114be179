#include "serve/diary_json.hpp"

#include "diary/eaten_words.hpp"
#include "diary/meal_photo.hpp"
#include "diary/written_portion.hpp"
#include "diary/written_words.hpp"
#include "findings/finger_prick_words.hpp"
#include "findings/wording.hpp"
#include "render/diary_lanes.hpp"
#include "serve/diary_form.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

// Of a finger-prick: what was written is its kind and the level that was understood.
bool says_no_more(std::string text, const std::string& level) {
    if (const std::size_t at = text.find(level); at != std::string::npos) {
        text.erase(at, level.size());
    }
    std::erase_if(text, [](char c) { return c == ' ' || c == '-'; });
    return text.empty() || small_letters(text) == "fingerprick";
}

std::string words_of(const DiaryEntry& entry) {
    std::string words = entry_words(entry, false);
    if (entry.slot && words != *entry.slot) {
        words = *entry.slot + ": " + words;
    }
    if (entry.glucose) {
        words = finger_prick_level(entry, entry.glucose->unit);
        words += says_no_more(entry.text, words) ? "" : ", " + entry.text;
    }
    if (entry.until && !entry.number) {
        words += ", " + hours_and_minutes(*entry.until - entry.at);
    }
    return words;
}

Json doubts_of(std::span<const Doubt> doubts) {
    Json list = Json::array();
    for (const Doubt& doubt : doubts) {
        list.push_back({{"about", name_of(doubt.about)}, {"sentence", doubt.sentence}});
    }
    return list;
}

Json food_of(const EatenFood& food) {
    const bool found = food.confidence > 0 && !food.denied;
    Json json = {{"written", food.written},
                 {"said", said_of(food)},
                 {"eaten", !food.denied},
                 {"food", found ? Json(food.candidates.front().food.name) : Json()},
                 {"grams", found ? Json(fmt::format("{:.0f} g", food.portion.grams)) : Json()},
                 {"sure", food.denied || food.sure()},
                 {"others", Json::array()},
                 {"doubts", doubts_of(food.doubts)}};
    for (std::size_t i = found ? 1 : 0; i < food.candidates.size(); ++i) {
        json["others"].push_back(food.candidates[i].food.name);
    }
    return json;
}

Json sum_of(const EatenText& eaten) {
    if (!eaten.found_all() || !eaten.available) {
        return {};
    }
    return fmt::format("about {:.0f} g carbohydrate without fibre, give or take {:.0f}",
                       eaten.available->grams, eaten.available->half_width);
}

}  // namespace

std::string said_of(const EatenFood& food) {
    std::string said;
    for (const std::string& word : portion_and_name(eaten_words(food.written)).name) {
        said += (said.empty() ? "" : " ") + word;
    }
    return said;
}

Json json_of_diary_day(std::span<const DiaryRecord> entries, std::span<const MealPhotoLine> photos,
                       CivilDate day, const ZoneHistory& clock, Instant now) {
    const CivilDate today = clock.date_at(now);
    const std::chrono::days one{1};
    Json list = Json::array();
    for (const DiaryRecord& record : entries) {
        const DiaryEntry& entry = record.entry;
        Json shown = Json::array();
        for (const MealPhotoLine& photo : photos) {
            if (photo.entry == record.id) {
                shown.push_back(photo.id);
            }
        }
        list.push_back({{"id", record.id},
                        {"kind", name_of(entry.kind)},
                        {"time", clock_time(clock.wall_time(entry.at), clock.writing())},
                        {"time_uncertain", entry.time_uncertain},
                        {"words", words_of(entry)},
                        {"corrected", record.corrected},
                        {"photos", std::move(shown)},
                        {"form", json_of_diary_form(entry, clock)}});
    }
    return {{"date", day_text(day)},
            {"label", full_date(day, clock.writing())},
            {"before", day_text(day - one)},
            {"after", day < today ? Json(day_text(day + one)) : Json()},
            {"most_photos", most_photos_of_a_meal},
            {"entries", std::move(list)}};
}

Json json_of_message(std::span<const ProposedEntry> message, const ZoneHistory& clock, bool sums) {
    Json list = Json::array();
    for (const ProposedEntry& one : message) {
        Json foods = Json::array();
        if (one.eaten) {
            for (const EatenFood& food : one.eaten->foods) {
                foods.push_back(food_of(food));
            }
        }
        list.push_back({{"written", one.written},
                        {"kind", name_of(one.entry.kind)},
                        {"at", day_and_time(clock.wall_time(one.entry.at), clock.writing())},
                        {"time_uncertain", one.entry.time_uncertain},
                        {"words", words_of(one.entry)},
                        {"sure", one.sure()},
                        {"doubts", doubts_of(one.doubts)},
                        {"foods", std::move(foods)},
                        {"sum", sums && one.eaten ? sum_of(*one.eaten) : Json()}});
    }
    return list;
}

}  // namespace tracewright
