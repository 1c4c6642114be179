#include "intake/message_parts.hpp"

#include "intake/message_day.hpp"
#include "intake/message_kind.hpp"
#include "time/clock_words.hpp"

#include <algorithm>
#include <array>
#include <chrono>

namespace tracewright {

namespace {

// Reads the words of a message from left to right.
class PartReader {
  public:
    PartReader(std::string_view text, CivilDate today, WayOfWriting way)
        : text_(text), today_(today), way_(way), words_(message_words(text)) {}

    std::vector<MessagePart> read() {
        while (at_ < words_.size()) {
            if (!sign() && !joining() && !since() && !day() && !clock() && !slot() && !verb()) {
                content();
            }
        }
        finish();
        return std::move(parts_);
    }

  private:
    std::string_view text_;
    CivilDate today_;
    WayOfWriting way_;
    std::vector<MessageWord> words_;
    std::vector<std::size_t> places_;  // of the part's content among the words
    std::size_t at_ = 0;
    MessagePart part_;
    std::optional<std::size_t> from_;  // of the part in the text
    std::size_t to_ = 0;
    std::optional<CivilDate> day_;
    std::vector<MessagePart> parts_;

    std::string_view word(std::size_t ahead = 0) const {
        return at_ + ahead < words_.size() ? std::string_view(words_[at_ + ahead].text)
                                           : std::string_view();
    }
    std::string_view before() const {
        return at_ > 0 ? std::string_view(words_[at_ - 1].text) : std::string_view();
    }
    std::span<const MessageWord> rest(std::size_t ahead = 0) const {
        return std::span(words_).subspan(std::min(at_ + ahead, words_.size()));
    }
    bool has_content() const { return !part_.words.empty(); }

    // Moves on, the words being of the part though not of its content.
    void take(std::size_t words) {
        for (std::size_t i = 0; i < words && at_ < words_.size(); ++i, ++at_) {
            if (!from_) {
                from_ = words_[at_].from;
                part_.line = words_[at_].line;
            }
            to_ = words_[at_].to;
        }
    }
    void content() {
        const auto is_length = message_length(rest());
        const std::size_t words = is_length ? is_length->words : 1;
        if (is_length && !part_.length) {
            part_.length = is_length;
        }
        for (std::size_t i = 0; i < words; ++i) {
            part_.words.push_back(words_[at_ + i]);
            places_.push_back(at_ + i);
        }
        take(words);
    }

    // A part without content leaves its time, meal and day to the next one.
    void close(bool soft) {
        if (!has_content()) {
            part_.soft = part_.soft && soft;
            return;
        }
        put();
        part_ = {};
        part_.soft = soft;
    }
    void put() {
        part_.day = day_;
        part_.written = from_ ? std::string(text_.substr(*from_, to_ - *from_)) : "";
        part_.text = content_text();
        parts_.push_back(std::move(part_));
        places_.clear();
        from_.reset();
    }
    void finish() {
        if (has_content() || part_.clock || !part_.slot.empty()) {
            put();
        }
    }

    // The content as written, what was taken out of it left out.
    std::string content_text() const {
        std::string line;
        for (std::size_t i = 0; i < part_.words.size(); ++i) {
            const MessageWord& one = part_.words[i];
            if (i > 0 && places_[i] == places_[i - 1] + 1) {
                const std::size_t end = part_.words[i - 1].to;
                line += text_.substr(end, one.from - end);
            } else if (i > 0) {
                line += ' ';
            }
            line += text_.substr(one.from, one.to - one.from);
        }
        const std::size_t last = line.find_last_not_of(" -:,");
        const std::size_t first = line.find_first_not_of(" -:,");
        return first == std::string::npos ? line : line.substr(first, last + 1 - first);
    }

    bool sign() {
        if (!words_[at_].is_sign()) {
            return false;
        }
        const char c = words_[at_].text[0];
        if (c == '~' || c == '@') {
            return false;  // before a time
        }
        const bool abbreviated = c == '.' && (before() == "a.m" || before() == "p.m");
        if (c == '\n' || c == ';' || ((c == '.' || c == '!') && !abbreviated)) {
            ++at_;
            close(false);
        } else if (c == ',') {
            ++at_;
            close(true);
        } else if (has_content() && (c == '+' || c == '&' || c == '?' || c == '/' || c == '-')) {
            content();
        } else {
            ++at_;  // colons behind times, brackets, lists' dashes
        }
        return true;
    }

    bool joining() {
        if (word() == "then" ||
            (word() == "and" && (word(1) == "then" || kind_begun_by(word(1))))) {
            at_ += word() == "and" && word(1) == "then" ? 2U : 1U;
            close(true);
            return true;
        }
        return false;
    }

    // "vomiting since yesterday" is told today: the moment behind "since" stays with its words, for
    // they tell how long it has lasted. Of a sensor or a meal it is when that was.
    bool since() {
        const std::size_t moment = word() == "since" ? words_of_a_moment(1) : 0;
        if (moment == 0 || !clause_tells_of_being_ill()) {
            return false;
        }
        for (std::size_t i = 0; i <= moment; ++i) {
            part_.words.push_back(words_[at_ + i]);
            places_.push_back(at_ + i);
        }
        take(1 + moment);
        return true;
    }
    std::size_t words_of_a_moment(std::size_t ahead) const {
        if ((word(ahead) == "last" && word(ahead + 1) == "night") ||
            (word(ahead) == "this" && word(ahead + 1) == "morning")) {
            return 2;
        }
        const auto clock = message_clock(rest(ahead));
        return word(ahead) == "yesterday" ? 1 : clock ? clock->words : 0;
    }
    // What was read of this part and what stands up to the next mark.
    bool clause_tells_of_being_ill() const {
        std::vector<MessageWord> clause = part_.words;
        for (const MessageWord& one : rest()) {
            const bool ends = one.text == "," || one.text == ";" || one.text == "." ||
                              one.text == "!" || one.text == "\n";
            if (ends) {
                break;
            }
            clause.push_back(one);
        }
        const auto kind = kind_of_words(clause);
        return kind == DiaryKind::illness || kind == DiaryKind::symptom;
    }

    bool day() {
        if (word() == "last" && word(1) == "night") {
            part_.last_night = true;
            take(2);
            return true;
        }
        if (word() == "this" && (word(1) == "morning" || word(1) == "evening")) {
            take(2);
            return true;
        }
        const auto named = message_day(rest(), today_, !has_content());
        if (!named) {
            return false;
        }
        if (has_content() && !named->by_today) {
            close(false);
        }
        day_ = named->date;
        if (!named->sure) {
            part_.doubts.push_back({DoubtAbout::day, "'" + std::string(word()) + "' is taken as " +
                                                         day_of_month(named->date, way_)});
        }
        take(named->words);
        return true;
    }

    bool sleeps_or_moves() const {
        const auto kind = part_.begun ? part_.begun : kind_of_words(part_.words);
        const auto next = kind_of_word(word(1));
        const auto last = part_.soft && !has_content() && !parts_.empty()
                              ? kind_of_words(parts_.back().words)
                              : std::nullopt;
        const auto is = [](const std::optional<DiaryKind>& one) {
            return one == DiaryKind::sleep || one == DiaryKind::movement;
        };
        return is(kind) || is(next) || is(last);
    }

    bool sleeps() const {
        return part_.begun == DiaryKind::sleep || kind_of_words(part_.words) == DiaryKind::sleep;
    }

    bool clock() {
        std::size_t ahead = 0;
        bool about = false;
        bool placed = false;
        const auto lead = [&](std::string_view one) {
            const bool vague = one == "about" || one == "around" || one == "ca" ||
                               one == "approx" || one == "~" || one == "roughly";
            about = about || vague;
            placed = placed || one == "at" || one == "@" || one == "from" || one == "until" ||
                     one == "till";
            return vague || one == "at" || one == "@" || one == "from";
        };
        while (lead(word(ahead))) {
            ++ahead;
        }
        const bool ends_it = word() == "until" || word() == "till";
        ahead += ends_it ? 1 : 0;
        auto clock = message_clock(rest(ahead));
        if (!clock && word() == "at" && ahead == 1) {
            clock = bare_hour(1);
        }
        if (!clock && ahead == 0 && sleeps() && range_end(1)) {
            clock = bare_hour(0);  // "slept 23-6:30"
        }
        if (!clock) {
            return false;
        }
        const bool ranges = range_end(ahead + clock->words).has_value();
        if (clock->doubtful_form && !ranges && !placed) {
            // "slept 6h30", "1.30 cups": no times; "8.10 porridge" is one.
            const bool first = !has_content() && !part_.clock;
            if (sleeps_or_moves() || !(first || ends_part(ahead + clock->words))) {
                return false;
            }
        }
        settle(*clock, ahead, placed || about, about, ends_it);
        return true;
    }

    // "at 8", "to 7": an hour without minutes.
    std::optional<MessageClock> bare_hour(std::size_t ahead) const {
        const auto number = message_number(word(ahead));
        if (!number || word(ahead).size() > 2 || *number > 24 || message_length(rest(ahead))) {
            return std::nullopt;
        }
        MessageClock clock;
        clock.clock = std::chrono::minutes{60 * (static_cast<int>(*number) % 24)};
        clock.half_told = *number > 12 || *number == 0;
        clock.bare_hour = true;
        return clock;
    }
    bool ends_part(std::size_t ahead) const {
        const std::string_view next = word(ahead);
        return next.empty() || next == "," || next == ";" || next == "\n" || next == "." ||
               next == "!" || next == ")";
    }
    // The end of "8:10 - 9:00", "23:30 to 7", the sign or word being `ahead`.
    std::optional<MessageClock> range_end(std::size_t ahead) const {
        const std::string_view next = word(ahead);
        if (next != "-" && next != "to" && next != "until" && next != "till") {
            return std::nullopt;
        }
        const auto clock = message_clock(rest(ahead + 1));
        return clock ? clock : bare_hour(ahead + 1);
    }

    void settle(const MessageClock& clock, std::size_t ahead, bool placed, bool about,
                bool ends_it) {
        if (ends_it && has_content()) {
            part_.until = clock;
            take(ahead + clock.words);
            return;
        }
        // Behind the content a time is its own only with "at" or at the end, and only the first.
        const bool own = !has_content() || placed || ends_part(ahead + clock.words) ||
                         range_end(ahead + clock.words).has_value();
        if (part_.clock || (has_content() && !own)) {
            close(false);
            if (part_.clock) {
                put();  // two times in a row: the first is a part of its own
                part_ = {};
            }
        }
        part_.clock = clock;
        if (about) {
            part_.doubts.push_back({DoubtAbout::time, "the time is written as about"});
        }
        take(ahead + clock.words);
        if (const auto until = range_end(0)) {
            part_.until = until;
            take(1 + until->words);
        }
    }

    bool is_left_out() const { return has_content() && leaves_out(part_.words.back().text); }

    bool slot() {
        const bool names_it = word() == "for" && !slot_of_word(word(1)).empty();
        const std::string_view slot = slot_of_word(names_it ? word(1) : word());
        if (!slot.empty() && is_left_out()) {
            content();  // "no breakfast", "skipped lunch"
            return true;
        }
        if (slot.empty()) {
            if ((word() == "after" || word() == "before" || word() == "with") &&
                !slot_of_word(word(1)).empty()) {
                part_.beside = slot_of_word(word(1));
                content();
                content();
                return true;
            }
            return false;
        }
        if (has_content() && !names_it) {
            close(false);
        }
        part_.slot = slot;
        take(names_it ? 2 : 1);
        return true;
    }

    bool verb() {
        const auto begun = kind_begun_by(word());
        const bool must = word() == "had" && word(1) == "to";  // "my son had to help me"
        if (!begun || must) {
            return false;
        }
        if (has_content()) {
            close(true);
        }
        part_.begun = begun;
        const bool of_eating = begun == DiaryKind::meal;
        if (of_eating) {
            take(1);
        } else {
            content();
        }
        return true;
    }
};

}  // namespace

std::vector<MessagePart> message_parts(std::string_view text, CivilDate day, WayOfWriting way) {
    return PartReader(text, day, way).read();
}

}  // namespace tracewright
