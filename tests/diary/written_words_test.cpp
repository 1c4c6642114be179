#include "diary/written_words.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

TEST(WrittenWords, are_met_whatever_their_letters_and_apostrophes) {
    DiaryEntry entry;
    entry.text =
        "CAN\xE2\x80\x99T keep fluids \xC3\x84"
        "down";
    EXPECT_EQ(small_letters(entry.text),
              "can't keep fluids \xC3\x84"
              "down");
    EXPECT_TRUE(speaks_of(entry, {"can't keep fluids"}));
    EXPECT_FALSE(speaks_of(entry, {"vomit"}));
    EXPECT_FALSE(speaks_of(DiaryEntry{}, {"vomit"}));
}

TEST(WrittenWords, that_are_denied_count_where_they_are_not_denied_as_well) {
    const auto undenied = [](const char* text) {
        DiaryEntry entry;
        entry.text = text;
        EXPECT_TRUE(speaks_of(entry, {"steroid", "fever"})) << text;
        return speaks_of_undenied(entry, {"steroid", "fever"});
    };
    for (const char* text : {"steroid injection", "No breakfast. Steroid injection",
                             "no steroid yesterday, steroids today", "knot of steroid", "fever"}) {
        EXPECT_TRUE(undenied(text)) << text;
    }
    for (const char* text :
         {"no steroid injection", "NOT ON  STEROIDS", "no longer on any steroids",
          "walked without fever", "never had a fever"}) {
        EXPECT_FALSE(undenied(text)) << text;
    }
    EXPECT_FALSE(denies_what_follows(""));
    EXPECT_FALSE(denies_what_follows("on any "));
}

TEST(WrittenWords, are_read_in_what_people_say_of_themselves) {
    DiaryEntry entry;
    for (const DiaryKind kind :
         {DiaryKind::symptom, DiaryKind::illness, DiaryKind::mood, DiaryKind::note}) {
        entry.kind = kind;
        EXPECT_TRUE(tells_how_they_are(entry));
    }
    for (const DiaryKind kind : {DiaryKind::meal, DiaryKind::lab, DiaryKind::sensor}) {
        entry.kind = kind;
        EXPECT_FALSE(tells_how_they_are(entry));
    }
}

}  // namespace
}  // namespace tracewright
