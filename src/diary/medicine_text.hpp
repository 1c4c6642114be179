#pragma once

#include "diary/medicine_table.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What a text says is done with its medicines. `unclear` counts as taken.
enum class MedicineDoing { take, stopped, changed, unclear };

const char* name_of(MedicineDoing doing);

/// What was recognised in a free text about medicines.
struct MedicineText {
    std::string written;
    std::vector<const Medicine*> recognised;  ///< in order of first mention, each once
    /// Words that name, or may name, a medicine which the table does not hold: 'medicine not
    /// recognised: please ask'. Counts as able to cause lows and as an SGLT2 inhibitor.
    bool unrecognised = false;
    std::vector<std::string> unrecognised_words;
    bool says_none = false;  ///< "none", "no medicines": an answer, not a silence
    MedicineDoing doing = MedicineDoing::unclear;
};

/// Reads a coach's or client's note on medicines: "metformin/sitagliptin 1000/50 twice daily".
///
/// A name counts only when spelt as the tables spell it (case and accents of Latin letters aside):
/// a near miss is not guessed at, it is unrecognised. Any word that is neither a known name nor a
/// plain word of dose, time or occasion makes the text unrecognised, and so does a text in which no
/// name is found at all, unless it says that there is none. 'Stopped' is said only where one
/// medicine is named, all is recognised and nothing speaks of starting; else the doing is
/// `unclear`. An empty text is unrecognised too: silence is no answer.
MedicineText medicine_text(std::string_view written);

}  // namespace tracewright
