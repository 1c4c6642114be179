#include "intake/client_message.hpp"

#include "diary/alarm_words.hpp"
#include "intake/loose_clock.hpp"
#include "intake/message_kind.hpp"
#include "intake/message_meaning.hpp"
#include "time/clock_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace tracewright {

namespace {

using std::chrono::days;
using std::chrono::minutes;
using namespace std::chrono_literals;

// Dashes of other lengths as "-", so that "23:00–6:30" parts.
std::string plain_dashes(std::string_view text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i, 3) == "\xE2\x80\x93" || text.substr(i, 3) == "\xE2\x80\x94") {
            plain += '-';
            i += 2;
        } else {
            plain += text[i];
        }
    }
    return plain;
}

class MessageReader {
  public:
    MessageReader(std::string text, const MessageOptions& options)
        : text_(std::move(text)), options_(options) {}

    std::vector<ProposedEntry> read() {
        const std::vector<MessagePart> parts =
            message_parts(text_, options_.day, options_.zones.writing());
        for (const MessagePart& part : parts) {
            half_told_somewhere_ = half_told_somewhere_ || written_half(part);
        }
        for (const MessagePart& part : parts) {
            take(part);
        }
        for (ProposedEntry& one : entries_) {
            if (one.entry.kind == DiaryKind::meal) {
                one.eaten = eaten_text(one.entry.text, options_.foods);
            }
        }
        drinks_apart();
        for (ProposedEntry& one : entries_) {
            place(one);
        }
        return std::move(entries_);
    }

  private:
    std::string text_;
    const MessageOptions& options_;
    bool half_told_somewhere_ = false;
    std::vector<ProposedEntry> entries_;
    CivilDate last_day_{};
    bool joined_ = false;     // the part was taken up by the entry before it
    minutes last_clock_{-1};  // of the entry before, on last_day_

    std::string words(minutes clock) const {
        return clock_words(clock % 24h, options_.zones.writing());
    }
    static bool written_half(const MessagePart& part) {
        return part.clock && part.clock->half_written;
    }
    CivilDate day_of(const MessagePart& part) const { return part.day.value_or(options_.day); }

    void take(const MessagePart& part) {
        if (tells_length_of_the_one_before(part)) {
            return;
        }
        if (joins_the_meal_before(part)) {
            ProposedEntry& meal = entries_.back();
            meal.entry.text += ", " + part.text;
            meal.written += ", " + part.written;
            set_carbohydrate(part, meal.entry);
            return;
        }
        ProposedEntry one;
        one.written = part.written;
        one.doubts = part.doubts;
        one.entry.text = part.text;
        one.entry.source = "pasted message";
        one.entry.source_line = static_cast<int>(part.line);
        one.entry.kind = kind_of_part(part, options_.unit, options_.foods, one.doubts);
        if (is_left_out(part) || part.text.empty()) {
            one.entry.text = part.written;
        }
        if (tells_an_alarm(part.written)) {
            one.entry.text = part.written;  // "had a fit": what the verb says belongs to it
        }
        if (!part.slot.empty() && one.entry.kind == DiaryKind::meal) {
            one.entry.slot = part.slot;
        }
        set_numbers(part, options_.unit, one.entry, one.doubts);
        joined_ = false;
        time_of(part, one);
        if (joined_) {
            return;
        }
        entries_.push_back(std::move(one));
    }

    // "slept badly, 6h30"
    bool tells_length_of_the_one_before(const MessagePart& part) {
        if (!part.soft || !part.length || part.words.size() != part.length->words || part.clock ||
            entries_.empty() || entries_.back().entry.number) {
            return false;
        }
        ProposedEntry& one = entries_.back();
        if (one.entry.kind != DiaryKind::sleep && one.entry.kind != DiaryKind::movement) {
            return false;
        }
        one.entry.text += ", " + part.text;
        one.written += ", " + part.written;
        std::erase_if(one.doubts,
                      [](const Doubt& doubt) { return doubt.about == DoubtAbout::amount; });
        set_length(part, one.entry, one.doubts);
        if (!one.entry.until && !one.entry.time_uncertain) {
            one.entry.until =
                Instant{} + std::chrono::seconds{std::lround(part.length->minutes * 60)};
        }
        return true;
    }

    // Food behind a comma, without a time or a verb of its own.
    bool joins_the_meal_before(const MessagePart& part) const {
        if (!part.soft || part.clock || !part.slot.empty() || entries_.empty() ||
            (part.begun && part.begun != DiaryKind::meal)) {
            return false;
        }
        const DiaryKind before = entries_.back().entry.kind;
        std::vector<Doubt> ignored;
        const DiaryKind kind = kind_of_part(part, options_.unit, options_.foods, ignored);
        return before == DiaryKind::meal &&
               (kind == DiaryKind::meal || is_carbohydrate_alone(part) || is_energy_alone(part));
    }

    // A drink with alcohol is an entry of its own; alone it is no meal.
    void drinks_apart() {
        std::vector<ProposedEntry> all;
        for (ProposedEntry& one : entries_) {
            const std::string drinks = one.eaten ? drinks_of(*one.eaten) : std::string();
            const bool food =
                one.eaten && std::any_of(one.eaten->foods.begin(), one.eaten->foods.end(),
                                         [](const EatenFood& eaten) {
                                             return !eaten.denied && !is_drink_with_alcohol(eaten);
                                         });
            if (!drinks.empty() && !food && !one.entry.slot) {
                one.entry.kind = DiaryKind::alcohol;
                one.eaten.reset();
            } else if (!drinks.empty()) {
                all.push_back(drink_beside(one, drinks));
            }
            all.push_back(std::move(one));
        }
        entries_ = std::move(all);
    }

    static bool is_drink_with_alcohol(const EatenFood& food) {
        const std::vector<MessageWord> words = message_words(food.written);
        return std::any_of(words.begin(), words.end(),
                           [](const MessageWord& word) { return is_alcohol(word.text); });
    }
    static std::string drinks_of(const EatenText& eaten) {
        std::string drinks;
        for (const EatenFood& food : eaten.foods) {
            if (!food.denied && is_drink_with_alcohol(food)) {
                drinks += (drinks.empty() ? "" : ", ") + food.written;
            }
        }
        return drinks;
    }
    static ProposedEntry drink_beside(const ProposedEntry& meal, const std::string& drinks) {
        ProposedEntry drink;
        drink.entry = meal.entry;
        drink.entry.kind = DiaryKind::alcohol;
        drink.entry.text = drinks;
        drink.entry.slot.reset();
        drink.entry.carbohydrate_g.reset();
        drink.written = meal.written;
        drink.time_missing = meal.time_missing;
        return drink;
    }

    void doubt_time(ProposedEntry& one, std::string sentence) const {
        one.entry.time_uncertain = true;
        one.doubts.push_back({DoubtAbout::time, std::move(sentence)});
    }

    // Sets entry.written; the moment is found when all is read.
    void time_of(const MessagePart& part, ProposedEntry& one) {
        if (one.entry.kind == DiaryKind::sleep) {
            sleep_time(part, one);
            return;
        }
        CivilDate day = day_of(part) - (part.last_night ? days{1} : days{0});
        if (!part.clock) {
            no_time(part, one, day);
            return;
        }
        if (!one.doubts.empty() && one.doubts.front().about == DoubtAbout::time) {
            one.entry.time_uncertain = true;  // "about 8"
        }
        const minutes clock = clock_of(part, one, day);
        one.entry.written = WallTime{day} + clock;
        if (part.until) {
            minutes until = part.until->clock;
            until += until < clock && !part.until->half_told && until + 12h > clock ? 12h : 0h;
            until += until <= clock ? 24h : 0h;
            one.entry.until = Instant{} + (until - clock);  // a length, until it is placed
        } else if (part.length && one.entry.kind == DiaryKind::movement) {
            one.entry.until =
                Instant{} + std::chrono::seconds{std::lround(part.length->minutes * 60)};
        }
        // What follows a night told behind its day goes on from that day.
        if (!told_behind_its_day(part, day)) {
            last_day_ = day;
            last_clock_ = clock;
        }
    }

    bool told_behind_its_day(const MessagePart& part, CivilDate day) const {
        const minutes clock = part.clock->clock;
        return !part.clock->half_told && part.slot.empty() && clock < 6h && day == last_day_ &&
               clock < last_clock_ && says_waking(part);
    }

    minutes clock_of(const MessagePart& part, ProposedEntry& one, CivilDate day) {
        minutes clock = part.clock->clock;
        if (part.clock->half_told || clock >= 12h) {
            return clock;
        }
        const bool by_slot =
            (part.slot == "dinner" && clock < 12h) || (part.slot == "lunch" && clock < 6h);
        const bool by_order = day == last_day_ && clock < last_clock_ && clock + 12h >= last_clock_;
        if (told_behind_its_day(part, day)) {
            doubt_time(one, fmt::format("{} is taken: it speaks of the night, though it stands "
                                        "behind a later time; the day may be the next one",
                                        words(clock)));
        } else if (by_slot || by_order) {
            clock += 12h;
            doubt_time(one, fmt::format("{} is taken as {}: {}", words(clock - 12h), words(clock),
                                        by_slot ? "it is called " + part.slot
                                                : "it stands behind a later time"));
        } else if (half_told_somewhere_ || part.clock->bare_hour) {
            doubt_time(one, fmt::format("am or pm is not written: {} is taken", words(clock)));
        }
        return clock;
    }

    static bool says_waking(const MessagePart& part) {
        constexpr std::array<std::string_view, 7> of_the_night{
            "woke", "woken", "waking", "asleep", "dream", "dreams", "nightmare"};
        return std::any_of(part.words.begin(), part.words.end(), [&](const MessageWord& word) {
            return std::ranges::count(of_the_night, word.text) > 0;
        });
    }

    void no_time(const MessagePart& part, ProposedEntry& one, CivilDate day) {
        one.time_missing = true;
        minutes clock = 12h;
        std::string why;
        const ProposedEntry* meal = nullptr;
        for (const ProposedEntry& other : entries_) {
            const bool same_day = std::chrono::floor<days>(other.entry.written) == day;
            if (same_day && other.entry.slot && *other.entry.slot == part.beside) {
                meal = &other;
            }
        }
        if (!part.slot.empty()) {
            clock = middle_of(part.slot);
            why = "as it is called " + part.slot;
        } else if (meal != nullptr && !part.beside.empty()) {
            clock = std::chrono::duration_cast<minutes>(meal->entry.written - WallTime{day});
            why = "the time of the " + part.beside + " beside it";
        } else if (day == last_day_ && last_clock_ >= minutes{0}) {
            clock = last_clock_;
            why = "the time before it";
        }
        one.entry.written = WallTime{day} + clock;
        doubt_time(one, fmt::format("no time is written: {} is put{}, as not certain", words(clock),
                                    why.empty() ? "" : ", " + why));
    }

    void sleep_time(const MessagePart& part, ProposedEntry& one) {
        const CivilDate day = day_of(part);
        const bool wakes = std::any_of(part.words.begin(), part.words.end(),
                                       [](const MessageWord& word) { return word.text == "woke"; });
        const bool naps =
            std::any_of(part.words.begin(), part.words.end(),
                        [](const MessageWord& word) { return word.text.starts_with("nap"); });
        if (part.clock && part.until) {
            sleep_from_to(part, one, day, naps);
        } else if (part.clock && wakes && ends_the_sleep_before(part, one, day)) {
            return;
        } else if (part.clock && wakes) {
            one.entry.written = WallTime{day} + part.clock->clock;
            doubt_time(one, "when sleep began is not written: this is the waking");
        } else if (part.clock) {
            minutes clock = part.clock->clock;
            if (!part.clock->half_told && clock >= 7h && clock < 12h && !naps) {
                clock += 12h;
                doubt_time(one, fmt::format("{} is taken as {}", words(clock - 12h), words(clock)));
            }
            one.entry.written = WallTime{day} + clock;
            if (part.length) {
                one.entry.until =
                    Instant{} + std::chrono::seconds{std::lround(part.length->minutes * 60)};
            }
        } else {
            one.time_missing = true;
            one.entry.written = WallTime{day};
            doubt_time(one, naps
                                ? "no time is written"
                                : "no time is written: put at the midnight before this day, as not "
                                  "certain");
        }
    }

    // "bed 11pm, woke 6:30": one night. What is left of the waking is dropped.
    bool ends_the_sleep_before(const MessagePart& part, ProposedEntry& one, CivilDate day) {
        if (entries_.empty() || entries_.back().entry.kind != DiaryKind::sleep ||
            entries_.back().entry.until || entries_.back().time_missing) {
            return false;
        }
        ProposedEntry& night = entries_.back();
        const minutes from = std::chrono::duration_cast<minutes>(
            night.entry.written - std::chrono::floor<days>(night.entry.written));
        const minutes to = part.clock->clock;
        const bool over_midnight = to <= from;
        const bool to_come = day == last_day_ && last_clock_ >= 16h;
        if (over_midnight && !to_come) {
            night.entry.written -= 24h;
        }
        if (over_midnight) {
            doubt_night(night, to_come);
        }
        night.entry.until = Instant{} + (to - from + (over_midnight ? 24h : 0h));
        night.entry.text += ", " + part.text;
        night.written += ", " + part.written;
        one.entry.text.clear();
        joined_ = true;
        return true;
    }

    static void doubt_night(ProposedEntry& one, bool to_come) {
        one.doubts.push_back({DoubtAbout::day, to_come ? "taken as the night after this day"
                                                       : "taken as the night that ended on the "
                                                         "morning of this day"});
    }

    void sleep_from_to(const MessagePart& part, ProposedEntry& one, CivilDate day, bool naps) {
        minutes from = part.clock->clock;
        minutes to = part.until->clock;
        if (!part.clock->half_told && from >= 7h && from < 12h && !naps) {
            from += 12h;
            doubt_time(one, fmt::format("{} is taken as {}", words(from - 12h), words(from)));
        }
        const bool over_midnight = to <= from;
        // Told behind the evening it is the night to come, else the one that ended that morning.
        const bool to_come = day == last_day_ && last_clock_ >= 16h && !part.last_night;
        CivilDate begins = day;
        if (over_midnight && !to_come) {
            begins = day - days{1};
        }
        if (over_midnight) {
            doubt_night(one, to_come);
        }
        one.entry.written = WallTime{begins} + from;
        one.entry.until = Instant{} + (to - from + (over_midnight ? 24h : 0h));
    }

    // From the client's clock to a moment.
    void place(ProposedEntry& one) const {
        const WallResolution found = options_.zones.resolve(one.entry.written);
        one.entry.at = found.first;
        if (found.kind == WallResolution::Kind::repeated) {
            doubt_time(one, "the clock showed this time twice: the first is taken");
        } else if (found.kind == WallResolution::Kind::skipped) {
            doubt_time(one, "the clock never showed this time");
        }
        if (one.entry.until) {
            one.entry.until = one.entry.at + one.entry.until->time_since_epoch();
        }
        if (options_.as_of && one.entry.at > *options_.as_of) {
            doubt_time(one, "this is later than now");
        }
    }
};

}  // namespace

bool ProposedEntry::sure() const {
    const bool foods =
        !eaten || std::all_of(eaten->foods.begin(), eaten->foods.end(),
                              [](const EatenFood& food) { return food.doubts.empty(); });
    return doubts.empty() && foods;
}

std::vector<ProposedEntry> client_message(std::string_view text, const MessageOptions& options) {
    if (text.size() > longest_message) {
        return {};
    }
    return MessageReader(plain_dashes(text), options).read();
}

}  // namespace tracewright
