#pragma once

#include "client_files.hpp"
#include "client_life.hpp"

#include "findings/review_input.hpp"
#include "intake/bring_in.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tracewright::testing {

inline const ClientStory& story(const std::string& key) {
    static const std::vector<ClientStory> stories = client_stories();
    return *std::find_if(stories.begin(), stories.end(),
                         [&](const ClientStory& one) { return one.key == key; });
}

/// What the files of a life give, as of the practice's own today.
inline ReviewInput input_of(const ClientStory& of, std::uint64_t seed) {
    const ClientLife life = client_life(of, seed);
    ReviewInput input;
    input.zones = life.zones;
    IntakeOptions options;
    options.zones = life.zones;
    for (const ClientFile& file : client_files(life)) {
        Intake intake = bring_in_bytes(file.bytes(), file.name, options);
        EXPECT_FALSE(intake.error) << file.name;
        for (Wear& wear : wears_of(std::move(intake.readings), file.name)) {
            input.wears.push_back(std::move(wear));
        }
        input.diary.insert(input.diary.end(), intake.diary.begin(), intake.diary.end());
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    input.as_of = life.zones.resolve(story_today).first;
    return input;
}

}  // namespace tracewright::testing
