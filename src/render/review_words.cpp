#include "render/review_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

bool urgent(const Finding& finding) {
    return finding.code == "very_low" || finding.code == "very_high" ||
           finding.code == "escalation";
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
