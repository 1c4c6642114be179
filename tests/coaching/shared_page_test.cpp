#include "coaching/shared_page.hpp"

#include "care_for_tests.hpp"
#include "coaching/amounts_in_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace tracewright {
namespace {

// Invented.
constexpr const char* with_amounts[] = {"only 800 calories",   "340 kcal",
                                        "weight 82.4 kg",      "82.4kg this morning",
                                        "lost a kilo",         "the scales said 82.4",
                                        "ate two portions",    "half a stone down",
                                        "under 1500 kJ today", "30 g carbs"};

SharedRecord record_of(const Care& care) {
    SharedRecord record;
    record.input.diary = care.diary;
    record.input.zones = care.clock;
    record.input.as_of = care.as_of;
    record.facts = care.facts;
    return record;
}

std::vector<std::string> lines_of(const Care& care, SharedKind kind) {
    Share share;
    share.kinds = SharedKinds{}.add(kind);
    share.until = care.as_of + std::chrono::days{1};
    std::vector<std::string> lines;
    for (const PaperBlock& block : shared_page(record_of(care), share, share.kinds).paper.blocks) {
        if (const auto* list = std::get_if<PaperList>(&block)) {
            lines.insert(lines.end(), list->items.begin(), list->items.end());
        }
    }
    return lines;
}

bool shown(Answered positive, DiaryKind kind, SharedKind under, const char* text) {
    Care care;
    care.facts.cautions.eating.positive = positive;
    care.entry(kind, care_at(-1, 10), text);
    const auto lines = lines_of(care, under);
    return lines.size() == 1 && lines[0].find(text) != std::string::npos;
}

TEST(AmountsInText, are_energy_weight_and_food_in_numbers) {
    for (const char* text : with_amounts) {
        EXPECT_TRUE(tells_amounts(text)) << text;
    }
    for (const char* text : {"", "walked 20 min", "slept 6h", "felt tired at 14:00", "gym, 3 sets",
                             "stressful day", "weighed down by work"}) {
        EXPECT_FALSE(tells_amounts(text)) << text;
    }
}

// Safety rule 12; and weight and amounts are kinds of their own.
TEST(SharedPage, tells_no_energy_weight_or_amount_in_what_was_written) {
    for (const Answered positive : {Answered::yes, Answered::not_yet, Answered::no}) {
        for (const char* text : with_amounts) {
            EXPECT_FALSE(shown(positive, DiaryKind::note, SharedKind::notes, text)) << text;
            EXPECT_FALSE(shown(positive, DiaryKind::mood, SharedKind::mood, text)) << text;
            EXPECT_FALSE(shown(positive, DiaryKind::meal, SharedKind::diary, text)) << text;
            EXPECT_FALSE(shown(positive, DiaryKind::movement, SharedKind::diary, text)) << text;
            EXPECT_FALSE(shown(positive, DiaryKind::sleep, SharedKind::diary, text)) << text;
        }
        EXPECT_TRUE(shown(positive, DiaryKind::movement, SharedKind::diary, "walked 20 min"));
        EXPECT_TRUE(shown(positive, DiaryKind::mood, SharedKind::mood, "felt tired"));
    }
    EXPECT_TRUE(shown(Answered::no, DiaryKind::note, SharedKind::notes, "bus at 14:00"));
}

TEST(SharedPage, tells_no_bare_number_while_the_eating_screen_is_positive_or_open) {
    for (const Answered positive : {Answered::yes, Answered::not_yet}) {
        EXPECT_FALSE(shown(positive, DiaryKind::note, SharedKind::notes, "only 800 today"));
        EXPECT_FALSE(shown(positive, DiaryKind::mood, SharedKind::mood, "82.4, sad"));
    }
}

}  // namespace
}  // namespace tracewright
