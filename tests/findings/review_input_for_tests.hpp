#pragma once

#include "findings/first_review.hpp"
#include "trace/readings_for_tests.hpp"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace tracewright::testing {

/// An invented trace of `days` days: a wave from 100 to 160 mg/dL with its top at 18:00, a little
/// higher on every third day. Deterministic.
inline std::vector<Reading> waves(int days, std::chrono::seconds interval = std::chrono::minutes{5},
                                  Instant from = midnight) {
    std::vector<Reading> readings;
    for (Instant at = from; at < from + std::chrono::days{days}; at += interval) {
        const double hours = static_cast<double>((at - from).count()) / 3600;
        const double day = std::floor(hours / 24);
        const double wave = std::cos((hours - 18) / 24 * 2 * std::numbers::pi);
        const double wander = 6 * std::sin(day * 1.7) + 3 * std::sin(hours * 0.9 + day);
        readings.emplace_back(at, mg(130 + 30 * wave + wander), interval);
    }
    return readings;
}

/// Sets every reading in [from, from + length) to `value`.
inline void dip(std::vector<Reading>& readings, Instant from, std::chrono::seconds length,
                double value) {
    for (Reading& reading : readings) {
        if (from <= reading.at && reading.at < from + length) {
            reading = Reading{reading.at, mg(value), reading.interval()};
        }
    }
}

inline ReviewInput input_of(std::vector<Reading> readings) {
    ReviewInput input;
    input.as_of = readings.empty() ? midnight : readings.back().at + std::chrono::hours{1};
    input.wears = wears_of(std::move(readings), "invented.csv");
    return input;
}

inline const Finding* finding_of(const FirstReview& review, std::string_view code) {
    for (const Finding& finding : review.findings) {
        if (finding.code == code) {
            return &finding;
        }
    }
    return nullptr;
}

/// Every text a review bears.
inline std::vector<std::string> all_texts(const FirstReview& review) {
    std::vector<std::string> texts = review.cannot_say;
    texts.insert(texts.end(), review.cautions.begin(), review.cautions.end());
    for (const Finding& finding : review.findings) {
        texts.push_back(finding.question);
        texts.push_back(finding.sentence);
        texts.push_back(finding.client_sentence);
        texts.push_back(finding.next.sentence);
        for (const Caveat& caveat : finding.caveats) {
            texts.push_back(caveat.sentence);
        }
    }
    for (const ReviewDay& day : review.days) {
        texts.push_back(day.sentence);
    }
    texts.insert(texts.end(), {review.last_reading, review.one_thing_seen, review.one_thing_to_ask,
                               review.one_thing_to_note});
    return texts;
}

}  // namespace tracewright::testing
