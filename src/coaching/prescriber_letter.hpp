#pragma once

#include "coaching/letter_reasons.hpp"
#include "coaching/paper.hpp"
#include "coaching/paper_client.hpp"

#include <span>

namespace tracewright {

/// Lows and highs of a letter are those of the review's days, and of so many up to the last reading
/// as far as a sensor saw them.
inline constexpr std::chrono::days letter_days{14};

/// What a letter lists raw: all wears and the diary, as far as they reach into its days.
struct LetterRecord {
    std::span<const Wear> wears;
    std::span<const DiaryEntry> diary;
};

/// The letter to the prescriber: the reason first, then what is asked, the lows and highs of
/// these days with their times (every very low; of the others the latest, with how many there
/// are), medicines as the client told them, what the coach agreed, how old the data are and what
/// they can't say. Advises on no medicine and names no diagnosis; says what the coach is licensed
/// for (safety rule 14). One sheet where it fits.
Paper prescriber_letter(const PaperClient& client, const LetterAbout& about,
                        const LetterRecord& record);

}  // namespace tracewright
