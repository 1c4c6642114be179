#include "coaching/reading_grade.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace tracewright {
namespace {

std::optional<double> grade_of(std::vector<std::string> texts) {
    return reading_grade(counts_of(texts));
}

// 6 words, 6 syllables, 1 sentence: 0.39 x 6 + 11.8 x 1 - 15.59, by hand.
TEST(ReadingGrade, of_one_syllable_words_is_by_hand) {
    EXPECT_NEAR(*grade_of({"The cat sat on the mat."}), -1.45, 1e-9);
}

// A sentence often shown with its counts, 13 words and 24 syllables (from memory, as an example of
// the sister formula with a reading ease of 37.5).
TEST(ReadingGrade, counts_a_known_sentence_as_its_source_does) {
    const std::vector<std::string> texts{
        "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."};
    const TextCounts counts = counts_of(texts);
    EXPECT_EQ(counts.words, 13);
    EXPECT_EQ(counts.syllables, 24);
    EXPECT_EQ(counts.sentences, 1);
    const double reading_ease = 206.835 - 1.015 * counts.words - 84.6 * counts.syllables / 13.0;
    EXPECT_NEAR(reading_ease, 37.5, 0.05);
    EXPECT_NEAR(*reading_grade(counts), 11.26, 0.01);
}

// Syllables as a dictionary parts them (from memory).
TEST(Syllables, of_words_of_our_papers) {
    const std::vector<std::pair<const char*, int>> words = {
        {"a", 1},          {"glucose", 2}, {"sensor", 2},    {"reading", 2},   {"clinic", 2},
        {"medicine", 3},   {"table", 2},   {"people", 2},    {"whole", 1},     {"walked", 1},
        {"needed", 2},     {"wanted", 2},  {"times", 1},     {"changes", 2},   {"diabetes", 4},
        {"prescriber", 3}, {"don't", 1},   {"emergency", 4}, {"maternity", 4}, {"diary", 3},
        {"breathe", 1},    {"agree", 2},   {"you", 1},       {"15", 2},        {"mmol/L", 3},
        {"device", 2},     {"once", 1},    {"finger", 2},    {"confused", 2},  {"ketones", 2},
        {"sweaty", 2},     {"minutes", 2}, {"repeat", 2},    {"swallow", 2},   {"alarm", 2}};
    for (const auto& [word, expected] : words) {
        EXPECT_EQ(syllables(word), expected) << word;
    }
}

TEST(TextCounts, ends_sentences_at_stops_and_not_within_numbers) {
    const std::vector<std::string> texts{"Below 4.0? Take sugar. Wait", "No stop here"};
    const TextCounts counts = counts_of(texts);
    EXPECT_EQ(counts.sentences, 4);
    EXPECT_EQ(counts.words, 8);
}

TEST(ReadingGrade, of_no_words_is_none) {
    EXPECT_FALSE(grade_of({}));
    EXPECT_FALSE(grade_of({" - ... "}));
}

}  // namespace
}  // namespace tracewright
