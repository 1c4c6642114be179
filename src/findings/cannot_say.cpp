#include "findings/review_findings.hpp"

#include <algorithm>

namespace tracewright {

std::vector<std::string> what_cannot_be_said(const FirstReview& review) {
    std::vector<std::string> sentences;
    for (const Sufficiency& answer : review.sufficiency) {
        if (!answer.enough) {
            sentences.push_back(answer.sentence);
        }
    }
    sentences.emplace_back(
        "Which medicines are taken isn't known here, so a dip at night can't be put down to "
        "pressure "
        "on the sensor, and every low counts.");
    const bool eats =
        std::any_of(review.input.diary.begin(), review.input.diary.end(),
                    [](const DiaryEntry& entry) { return entry.kind == DiaryKind::meal; });
    if (!eats) {
        sentences.emplace_back(
            "No meal is written down: there is no fasting value, and what food did can't be told.");
    }
    sentences.emplace_back(
        "What drives glucose, and whether a change would help, one look at a trace can't tell.");
    return sentences;
}

}  // namespace tracewright
