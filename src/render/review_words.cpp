#include "render/review_words.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

bool urgent(const Finding& finding) {
    return finding.code == "very_low" || finding.code == "very_high" ||
           finding.code == "escalation";
}

bool of_what_goes_with_it(const FirstReview& review, const Finding& finding) {
    return std::ranges::any_of(review.goes_with.leading, [&](const Finding& leading) {
        return leading.code == finding.code;
    });
}

std::vector<std::string> not_yet_said(const FirstReview& review) {
    const auto said = [&](const std::string& sentence) {
        return std::any_of(
            review.findings.begin(), review.findings.end(), [&](const Finding& finding) {
                return std::any_of(
                    finding.caveats.begin(), finding.caveats.end(),
                    [&](const Caveat& caveat) { return caveat.sentence == sentence; });
            });
    };
    std::vector<std::string> sentences = review.cannot_say;
    std::erase_if(sentences, said);
    return sentences;
}

std::vector<std::string> standing_lines(const FirstReview& review) {
    std::vector<std::string> lines;
    for (const StandingQuestion& question : review.goes_with.questions) {
        const Finding& finding = question.told.finding;
        std::string line = finding.sentence;
        if (finding.answer == Answer::yes) {
            line += amounts_to(question.hours_gained);
        } else if (!finding.next.sentence.empty()) {
            line += " " + finding.next.sentence;
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> standing_caveats(const FirstReview& review) {
    const auto& questions = review.goes_with.questions;
    std::vector<std::pair<std::string, std::vector<std::string>>> told;  // sentence, its questions
    for (const StandingQuestion& question : questions) {
        const Finding& finding = question.told.finding;
        for (const Caveat& caveat : finding.caveats) {
            auto found = std::ranges::find(
                told, caveat.sentence, &std::pair<std::string, std::vector<std::string>>::first);
            if (found == told.end()) {
                found = told.insert(told.end(), {caveat.sentence, {}});
            }
            found->second.push_back(finding.question);
        }
    }
    std::vector<std::string> lines;
    for (const auto& [sentence, of] : told) {
        std::string line;
        if (of.size() < questions.size()) {
            for (const std::string& question : of) {
                line += question + " ";
            }
        }
        lines.push_back(line + sentence);
    }
    return lines;
}

std::vector<std::string> meal_lines(const FirstReview& review) {
    std::vector<std::string> lines = review.goes_with.meal_sentences;
    std::erase_if(
        lines, [](const std::string& line) { return line.find("seen once") != std::string::npos; });
    return lines;
}

std::vector<std::string> rises_to_ask_about(const FirstReview& review) {
    constexpr std::size_t most = 10;
    std::vector<std::string> lines;
    if (!review.goes_with.meals) {
        return lines;
    }
    const GlucoseUnit unit = review.input.unit;
    const auto& rises = review.goes_with.meals->ask_about;
    for (std::size_t i = 0; i < std::min(rises.size(), most); ++i) {
        lines.push_back(fmt::format(
            "{}: up by {} within an hour.",
            day_and_time(review.input.zones.wall_time(rises[i].from), review.input.zones.writing()),
            glucose_words(converted(rises[i].rise, GlucoseUnit::mg_per_dl, unit), unit)));
    }
    if (rises.size() > most) {
        lines.push_back(fmt::format("And {} more.", rises.size() - most));
    }
    return lines;
}

std::string method_of(const Finding& finding) {
    const Evidence& evidence = finding.evidence;
    std::string text = "Method: " + (evidence.method.empty() ? "counting" : evidence.method) + ".";
    if (!evidence.used_what.empty()) {
        text += fmt::format(" Used: {} {}", evidence.used, evidence.used_what);
        if (evidence.left_out > 0) {
            text += fmt::format("; left out: {} ({})", evidence.left_out, evidence.left_out_why);
        }
        text += ".";
    }
    return text;
}

std::vector<std::string> methods_of(const FirstReview& review) {
    std::vector<std::string> lines;
    for (const Finding& finding : review.findings) {
        lines.push_back(finding.question + " " + method_of(finding));
    }
    return lines;
}

}  // namespace tracewright
