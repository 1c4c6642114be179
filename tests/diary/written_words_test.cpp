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
