#pragma once

#include "findings/first_review.hpp"
#include "render/canvas.hpp"

#include <functional>
#include <string>
#include <vector>

namespace tracewright {

/// What one entry says, in the words of the lane it stands in. Never empty. With foods left off
/// (safety rule 12) of what was eaten or drunk only when: neither text nor grams.
std::string entry_words(const DiaryEntry& entry, bool foods_left_off);

/// "Ate", "Moved", "Slept", "Felt" or "Took"; empty for finger-pricks, which stand on the trace.
const char* lane_of(DiaryKind kind);

/// False for what needs no mark on a day sheet: sitting still, finger-pricks (they stand on the
/// trace).
bool worth_a_lane(const DiaryEntry& entry);

/// The lanes under a day's trace, aligned with it in time: Ate, Moved, Slept, Felt, Took. Labels
/// that would run into one another go to rows of their own, at most four a lane; what still finds
/// no room beside its mark is a tick on the lane's foot without words, as is one of many
/// entries without words (steps by the quarter hour). The figure's table has every entry whole.
class DiaryLanes {
  public:
    /// `x_of` gives a moment's place in the figure; the lanes lie from `left` to `right`.
    DiaryLanes(const FirstReview& review, const CivilDay& day,
               const std::function<double(Instant)>& x_of, double left, double right);

    double height() const { return height_; }
    void draw(Canvas& canvas, double top) const;

  private:
    struct Placed {
        double from = 0;  ///< where it began; a stroke if nothing lasts
        double to = 0;
        bool began_before = false;  ///< on an earlier day
        double label_x = 0;
        Anchor anchor = Anchor::start;
        std::string label;  ///< empty: a tick on the lane's foot
        std::size_t row = 0;
    };
    class Rows;
    struct Lane {
        const char* name;
        std::size_t rows = 1;
        double height = 0;
        std::vector<Placed> entries;
    };

    std::vector<Lane> lanes_;
    double left_;
    double right_;
    double height_ = 0;
};

}  // namespace tracewright
