#pragma once

#include "coaching/paper.hpp"
#include "coaching/paper_client.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What the handout's one picture is: the hours of a day in each band; or an empty day to mark,
/// where no hours may be shown or there are none.
enum class HandoutPicture { hours_bar, day_to_mark };

struct HandoutWishes {
    /// Why the numbers that an open or positive eating screen turns down are shown all the same;
    /// empty: they stay off. Whoever gives a reason logs it.
    std::string numbers_because;
};

/// The client's own page, with what its coach is to be told beside it.
struct Handout {
    Paper paper;  ///< its one figure is `picture`
    HandoutPicture picture = HandoutPicture::hours_bar;
    bool fewer_numbers = false;  ///< safety rule 12
    int numbers = 0;             ///< in the message
    double grade = 0;            ///< of its running text (reading_grade)
    std::vector<std::string> for_coach;
};

/// One sheet: what leads, one good thing, one picture, the one change with how it is checked, when
/// to call whom, first aid and the sick-day line where they apply. Says what the coach's review
/// says. At most three numbers: where the client's own words hold more, ours go first, and the
/// coach is told what to say shorter. A change that a gate closes is left off, and the coach is
/// told why. The words come from handout_words.hpp.
Handout handout(const PaperClient& client, const HandoutWishes& wishes = {});

}  // namespace tracewright
